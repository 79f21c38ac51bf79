package levelback.player.desk;

import java.util.Optional;
import levelback.player.shell.SystemLibraries;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;

final class DeskCondition implements ExecutionCondition {
    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
        Optional<String> missing = SystemLibraries.missing();
        if (missing.isPresent()) {
            // Aloud: a skipped page test must be seen in the build's own output.
            System.out.println("SKIPPED " + context.getDisplayName() + ": " + missing.get());
            return ConditionEvaluationResult.disabled(missing.get());
        }
        return ConditionEvaluationResult.enabled("system libraries are there");
    }
}

package levelback.store.exchange;

import java.util.Optional;

/** Holds a table to one pass: rows of others are left out where one is asked for, and refused where none is. */
final class OnePass {

    private final Optional<String> wanted;
    private Optional<String> seen = Optional.empty();

    OnePass(Optional<String> wanted) {
        this.wanted = wanted;
    }

    /** Whether a row belongs to the pass. */
    boolean takes(TableRow row) {
        String pass = row.text("pass");
        if (wanted.isPresent()) {
            return pass.equals(wanted.get());
        }
        if (seen.isEmpty()) {
            seen = Optional.of(pass);
        } else if (!pass.equals(seen.get())) {
            throw row.wrong(
                    "pass",
                    "has \"" + pass + "\" after \"" + seen.get() + "\"; one pass is measured at a time, say which with"
                            + " --pass.");
        }
        return true;
    }
}

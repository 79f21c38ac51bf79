package levelback.player;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The arrows between modules and packages: design, section 3. */
@AnalyzeClasses(packages = "levelback", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

    @ArchTest
    static final ArchRule scoringKnowsNobody = noClasses()
            .that()
            .resideInAPackage("levelback.scoring..")
            .should()
            .dependOnClassesThat()
            .resideOutsideOfPackages(
                    "levelback.scoring..",
                    "java.lang..",
                    "java.util..",
                    "java.math..",
                    "java.time..",
                    "java.text..",
                    "org.apache.commons.statistics..",
                    "org.apache.commons.numbers..",
                    "org.apache.commons.rng..",
                    "org.hipparchus..",
                    "org.jspecify..")
            .because(
                    "a statistician must be able to read and test the arithmetic without files, SQL, video or a screen");

    @ArchTest
    static final ArchRule clipsKnowsOnlyTheValueTypes = noClasses()
            .that()
            .resideInAPackage("levelback.clips..")
            .should()
            .dependOnClassesThat(JavaClass.Predicates.resideInAnyPackage("levelback..")
                    .and(DescribedPredicate.not(
                            JavaClass.Predicates.resideInAnyPackage("levelback.clips..", "levelback.scoring.value.."))))
            .because("pictures know no book and no screen; only times, lengths and points are shared, so that units are"
                    + " never mapped by hand");

    @ArchTest
    static final ArchRule storeKnowsOnlyScoring = noClasses()
            .that()
            .resideInAPackage("levelback.store..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("levelback.clips..", "levelback.player..")
            .because("the book and the decoder never meet; the player brings them together");

    @ArchTest
    static final ArchRule nobodyKnowsThePlayer = noClasses()
            .that()
            .resideInAnyPackage("levelback.scoring..", "levelback.clips..", "levelback.store..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("levelback.player..")
            .because("the desk stands on top of everything");

    @ArchTest
    static final ArchRule onlyThePlayerHasAScreen = noClasses()
            .that()
            .resideOutsideOfPackage("levelback.player..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("javafx..", "java.awt..", "javax.swing..", "javax.imageio..")
            .because("arithmetic, pictures and the book must run on a machine without a screen or its libraries");

    @ArchTest
    static final ArchRule onlyClipsDecodes = noClasses()
            .that()
            .resideOutsideOfPackage("levelback.clips..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.bytedeco..")
            .because("native memory has one owner");

    @ArchTest
    static final ArchRule onlyTheStoreSpeaksSql = noClasses()
            .that()
            .resideOutsideOfPackage("levelback.store..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.sql..", "javax.sql..", "org.jdbi..", "org.sqlite..")
            .because("every write to the book goes through its one writer");

    @ArchTest
    static final ArchRule stepsHaveNoScreen = noClasses()
            .that()
            .resideInAPackage("levelback.player.work..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "javafx..",
                    "levelback.player.app..",
                    "levelback.player.cli..",
                    "levelback.player.desk..",
                    "levelback.player.theme..",
                    "levelback.player.stage..",
                    "levelback.player.score..",
                    "levelback.player.trim..",
                    "levelback.player.proof..")
            .because("the desk, the commands and the demo call the same steps, so a batch and a click can't differ");

    @ArchTest
    static final ArchRule onlyTheCommandLineSpeaksOnTheTerminal = ArchRuleDefinition.noClasses()
            .that()
            .resideOutsideOfPackage("levelback.player.cli..")
            .should(useTheStandardStreams())
            .because(
                    "one place decides what a script reads on standard output and what a person reads on standard error");

    @ArchTest
    static final ArchRule noCircles = slices().assignedFrom(new PartOfTheTrade())
            .should()
            .beFreeOfCycles()
            .ignoreDependency(
                    DescribedPredicate.alwaysTrue(),
                    // An identity is a bare UUID with a name; a pass names its cow and a score its pass.
                    JavaClass.Predicates.simpleNameEndingWith("Id")
                            .and(JavaClass.Predicates.resideInAPackage("levelback.store..")))
            .because("a package that is about one part of the trade can be read without the ones that use it");

    /** A package is a slice, except that opening, indexing and decoding a recording are one piece of work. */
    private static final class PartOfTheTrade implements SliceAssignment {
        private static final Pattern PACKAGE = Pattern.compile("levelback\\.(\\w+)\\.(\\w+).*");

        @Override
        public SliceIdentifier getIdentifierOf(JavaClass type) {
            Matcher name = PACKAGE.matcher(type.getPackageName());
            if (!name.matches()) {
                return SliceIdentifier.ignore();
            }
            boolean reading = name.group(1).equals("clips") && name.group(2).matches("open|index|decode");
            return SliceIdentifier.of(name.group(1), reading ? "reading" : name.group(2));
        }

        @Override
        public String getDescription() {
            return "parts of the trade";
        }
    }

    private static ArchCondition<JavaClass> useTheStandardStreams() {
        return new ArchCondition<>("use System.out, System.err or printStackTrace()") {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                for (JavaAccess<?> access : type.getAccessesFromSelf()) {
                    boolean stream = access.getTargetOwner().isEquivalentTo(System.class)
                            && (access.getName().equals("out")
                                    || access.getName().equals("err"));
                    boolean trace = access.getName().equals("printStackTrace")
                            && access.getTargetOwner().isAssignableTo(Throwable.class)
                            && access.getDescription().contains("printStackTrace()>");
                    if (stream || trace) {
                        events.add(SimpleConditionEvent.satisfied(type, access.getDescription()));
                    }
                }
            }
        };
    }
}

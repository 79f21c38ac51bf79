package levelback.player.proof;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.text.Text;
import levelback.player.cli.CommandLineRoot;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import levelback.player.desk.PageId;
import levelback.player.proof.ProofViewModel.State;
import levelback.player.shell.Snapshot;
import levelback.player.theme.Theme;
import levelback.scoring.foot.Claw;
import levelback.scoring.proof.Observation;
import levelback.scoring.value.Leg;
import levelback.scoring.value.MediaTime;
import levelback.scoring.value.TimeBase;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.ScoreId;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;
import levelback.store.lane.Recording;
import levelback.store.lane.RecordingId;
import levelback.store.trim.Finding;
import levelback.store.trim.FindingId;
import levelback.store.trim.Foot;
import levelback.store.trim.FootId;
import levelback.store.trim.Lift;
import levelback.store.trim.LiftId;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@NeedsDesk
@Timeout(90)
class ProofPageTest {

    private static final LocalDate FIRST = LocalDate.of(2026, 1, 6);
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 30);

    @TempDir
    Path folder;

    private final Person anna = new Person(PersonId.fresh(), "Anna", "A");
    private final ExecutorService background = Executors.newSingleThreadExecutor();
    private Book book;
    private Herd herd;
    private ProofDesk desk;
    private ProofPage page;
    private Scene scene;
    private final PassId filmed = PassId.fresh();

    @BeforeEach
    void open() throws Exception {
        book = Books.create(folder.resolve("t.levelback"));
        herd = new Herd(HerdId.fresh(), "Wobblegate", ZoneId.of("Europe/London"), "mobility-0-3", OptionalInt.empty());
        book.herd().put(herd);
        book.herd().put(anna);
        desk = new ProofDesk(book, Optional.of(herd), anna, background, Platform::runLater);
        page = Fx.get(() ->
                new ProofPage(desk, Clock.fixed(TODAY.atTime(12, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC)));
        scene = Fx.get(() -> {
            Scene made = new Scene((Parent) page.view(), 1440, 808);
            Theme.apply(made, false);
            return made;
        });
    }

    @AfterEach
    void close() throws Exception {
        Fx.run(page::close);
        background.shutdownNow();
        book.close();
    }

    @Test
    void anEmptyBookSaysWhatIsMissing() throws Exception {
        shown();
        assertThat(texts()).contains("Nothing to prove yet.");
        picture("empty", 1440, 808);
        desk.herd = Optional.empty();
        shown();
        assertThat(texts()).contains("Nothing to prove yet.");
    }

    /** The figures on the screen are those that the command prints for the same book. */
    @Test
    void figuresOnTheScreenEqualTheCommands() throws Exception {
        fill(120, 8, 0.12);
        shown();
        Map<String, String> json = command("--cut", "2");
        for (String name : List.of("sensitivity", "specificity", "ppv", "npv", "auc")) {
            for (String side : List.of("observed", "corrected")) {
                double value = Double.parseDouble(json.getOrDefault(side + "." + name + ".value", ""));
                double low = Double.parseDouble(json.getOrDefault(side + "." + name + ".low", ""));
                assertThat(label("proof-" + name + "-" + side)).isEqualTo(two(value));
                assertThat(label("proof-" + name + "-" + side + "-interval"))
                        .startsWith(two(low) + " to ")
                        .contains("n "
                                + json.getOrDefault(side + "." + name + ".n", "")
                                        .replaceAll("(\\d)(\\d{3})$", "$1,$2"));
            }
        }
        for (String cell : List.of("tp", "fp", "fn", "tn")) {
            assertThat(label("proof-" + cell)).isEqualTo(json.get("counts." + cell));
        }
        picture("light", 1440, 808);
        desk.dark = true;
        Fx.run(() -> {
            Theme.apply(scene, true);
            page.themeChanged();
        });
        picture("dark", 1440, 808);
        desk.dark = false;
        Fx.run(() -> {
            Theme.apply(scene, false);
            page.themeChanged();
        });
        picture("1280x720", 1280, 628);
    }

    @Test
    void theKeysMoveTheCutAndANumberOpensItsCowsAndACowHerClip() throws Exception {
        fill(60, 4, 0.2);
        shown();
        key(KeyCode.UP);
        Map<String, String> json = command("--cut", "3");
        assertThat(label("proof-tp")).isEqualTo(json.get("counts.tp"));
        key(KeyCode.DOWN);
        long tp = Long.parseLong(label("proof-tp"));
        Fx.run(() -> lookup("proof-tp").getOnMouseClicked().handle(null));
        settle();
        ListView<?> list = (ListView<?>) lookup("proof-list");
        assertThat(list.getItems()).hasSize((int) tp);
        picture("list", 1440, 808);
        Observation first = (Observation) list.getItems().get(0);
        assertThat(first.hasLesion()).isTrue();
        assertThat(first.score()).isGreaterThanOrEqualTo(2);
        assertThat(key(KeyCode.ESCAPE)).isTrue();
        assertThat(lookupIfThere("proof-list")).isEmpty();
        key(KeyCode.M);
        assertThat(label("proof-flow-scored")).isEqualTo(json.get("counts.scored"));
        picture("method", 1440, 808);
        key(KeyCode.ESCAPE);
    }

    @Test
    void aCowWithoutFilmSaysSoAndAFilmedOneOpensHerPass() throws Exception {
        fill(20, 2, 0.5);
        ProofViewModel model = Fx.get(() ->
                new ProofViewModel(desk, Clock.fixed(TODAY.atTime(12, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC)));
        Fx.run(model::reload);
        settle();
        State.Answer answer = (State.Answer) Fx.get(() -> model.stateProperty().get());
        Observation last = answer.result().observations().stream()
                .filter(o -> o.date().equals(FIRST.plusDays(14))
                        && new ProofViewModel.CowLine("100", "")
                                .equals(answer.cows().get(o.cow())))
                .findFirst()
                .orElseThrow();
        Observation unfilmed = answer.result().observations().stream()
                .filter(o -> o.date().equals(FIRST))
                .findFirst()
                .orElseThrow();
        Fx.run(() -> model.openClip(last));
        Fx.run(() -> model.openClip(unfilmed));
        settle();
        assertThat(desk.opened).containsExactly(filmed.uuid() + " 150");
        assertThat(desk.messages).singleElement().asString().contains("was not filmed");
    }

    @Test
    void tooFewSoundCowsLiftedIsSaidWhereTheCorrectedFiguresWouldBe() throws Exception {
        fill(40, 2, 0);
        shown();
        assertThat(lookup("proof-not-corrected").getAccessibleText()).contains("5 needed. Draw control lifts.");
        picture("cannot", 1440, 808);
    }

    /** By lesion, by leg, days to the lift and every cut: each number of the command's, where the page shows it. */
    @Test
    void listsOnTheScreenEqualTheCommands() throws Exception {
        fill(120, 8, 0.12);
        shown();
        Map<String, String> json = command("--cut", "2");
        int lesions = 0;
        for (; json.containsKey("byLesion." + lesions + ".lesion"); lesions++) {
            String at = "byLesion." + lesions + ".";
            long n = Long.parseLong(said(json, at + "n"));
            long lame = Math.round(n * Double.parseDouble(said(json, at + "sensitivity")));
            assertThat(label("proof-lesion-" + said(json, at + "lesion"))).isEqualTo(lame + " of " + n);
        }
        assertThat(lesions).isEqualTo(5);
        long pairs = 0;
        long onPage = 0;
        for (int i = 0; json.containsKey("byLeg." + i + ".n"); i++) {
            String at = "byLeg." + i + ".";
            assertThat(label("proof-leg-" + said(json, at + "scored") + "-" + said(json, at + "found")))
                    .isEqualTo(said(json, at + "n"));
            pairs += Long.parseLong(said(json, at + "n"));
        }
        for (String scored : List.of("LF", "RF", "LH", "RH")) {
            for (String found : List.of("LF", "RF", "LH", "RH")) {
                onPage += Long.parseLong(label("proof-leg-" + scored + "-" + found));
            }
        }
        assertThat(onPage).isEqualTo(pairs).isPositive();
        StringBuilder lags = new StringBuilder("Score to lift");
        for (int i = 0; json.containsKey("lagDays." + i + ".n"); i++) {
            lags.append("; after ").append(said(json, "lagDays." + i + ".days")).append(" days ");
            lags.append(said(json, "lagDays." + i + ".n"));
        }
        assertThat(Fx.get(() -> lookup("proof-lag").getAccessibleText()))
                .isEqualTo(lags.toString())
                .contains("after 5 days");
        StringBuilder cuts = new StringBuilder("Each cut, before and after");
        for (int i = 0; json.containsKey("cuts." + i + ".cut"); i++) {
            String at = "cuts." + i + ".";
            cuts.append("; cut ").append((int) Double.parseDouble(said(json, at + "cut")));
            cuts.append(": sensitivity ").append(share(json, at + "sensitivity"));
            cuts.append(", specificity ").append(share(json, at + "specificity"));
            cuts.append("; corrected ").append(share(json, at + "correctedSensitivity"));
            cuts.append(", ").append(share(json, at + "correctedSpecificity"));
        }
        assertThat(Fx.get(() -> lookup("proof-cuts").getAccessibleText()))
                .isEqualTo(cuts.toString())
                .contains("cut 1", "cut 2", "cut 3");
    }

    private static String said(Map<String, String> json, String key) {
        return Objects.requireNonNull(json.get(key), key);
    }

    private static String share(Map<String, String> json, String key) {
        return two(Double.parseDouble(said(json, key)));
    }

    /** Looking for the cows behind a number takes long in a big herd; meanwhile the page answers. */
    @Test
    void thePageAnswersWhileTheCowsBehindANumberAreLookedFor() throws Exception {
        fill(20, 2, 0.5);
        ProofViewModel model = Fx.get(() ->
                new ProofViewModel(desk, Clock.fixed(TODAY.atTime(12, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC)));
        Fx.run(model::reload);
        settle();
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch go = new CountDownLatch(1);
        AtomicBoolean onPageThread = new AtomicBoolean();
        Fx.run(() -> model.open("slow", o -> {
            onPageThread.compareAndSet(false, Platform.isFxApplicationThread());
            begun.countDown();
            try {
                return !onPageThread.get() && go.await(60, TimeUnit.SECONDS);
            } catch (InterruptedException stopped) {
                return false;
            }
        }));
        assertThat(begun.await(60, TimeUnit.SECONDS)).isTrue();
        assertThat(onPageThread).isFalse();
        State meanwhile = Fx.get(() -> model.stateProperty().get());
        assertThat(((State.Answer) meanwhile).open()).isEmpty();
        go.countDown();
        settle();
        State.Answer then = (State.Answer) Fx.get(() -> model.stateProperty().get());
        assertThat(then.open().orElseThrow().observations()).hasSize(40);
        Fx.run(() -> {
            model.open("overtaken", o -> true);
            model.closeList();
        });
        settle();
        State.Answer closed = (State.Answer) Fx.get(() -> model.stateProperty().get());
        assertThat(closed.open()).isEmpty();
    }

    /** The table adds up to the observations themselves, one by one. */
    @Test
    void theTableCountsTheObservations() throws Exception {
        fill(120, 8, 0.12);
        shown();
        Fx.run(() -> lookup("proof-nn").getOnMouseClicked().handle(null));
        settle();
        ListView<?> never = (ListView<?>) lookup("proof-list");
        assertThat(never.getItems())
                .hasSize(Integer.parseInt(label("proof-nn").replace(",", "")))
                .allSatisfy(o -> assertThat(((Observation) o).score()).isLessThan(2))
                .allSatisfy(o -> assertThat(((Observation) o).isLifted()).isFalse());
    }

    /** The smallest screen the desk is made for leaves the page 1280 by 628; compared with the text as laid out. */
    @Test
    void nothingIsCutShortOnTheSmallestScreen() throws Exception {
        fill(120, 9, 0.12);
        shown();
        settleSize(1280, 628);
        assertThat(cutShort()).isEmpty();
        assertThat(desk.gates.get(PageId.PROOF)).isEqualTo("visits 1–9");
        settleSize(1440, 808);
        assertThat(cutShort()).isEmpty();
    }

    // Helpers

    private List<String> cutShort() throws Exception {
        return Fx.get(() -> {
            List<String> cut = new ArrayList<>();
            int seen = 0;
            List<Node> all = new ArrayList<>(scene.getRoot().lookupAll(".label"));
            all.addAll(scene.getRoot().lookupAll(".button"));
            for (Node node : all) {
                if (node instanceof Labeled said && !said.getText().isEmpty()) {
                    for (Node part : said.getChildrenUnmodifiable()) {
                        if (part instanceof Text laid) {
                            seen++;
                            if (!laid.getText().equals(said.getText())) {
                                cut.add(said.getText() + " shows as " + laid.getText());
                            }
                        }
                    }
                }
            }
            assertThat(seen).isGreaterThan(60);
            return cut;
        });
    }

    private void fill(int cows, int visits, double chance) {
        Random random = new Random(7);
        book.step("A", "filled", open -> {
            Visit last = null;
            for (int v = 0; v < visits; v++) {
                LocalDate day = FIRST.plusDays(14L * v);
                Visit visit = open.herd().visitOn(herd.id(), day);
                last = visit;
                for (int c = 0; c < cows; c++) {
                    if (v == 0) {
                        open.herd()
                                .put(
                                        new Cow(
                                                new CowId(new java.util.UUID(1, c)),
                                                herd.id(),
                                                String.valueOf(100 + c),
                                                Optional.empty(),
                                                Optional.empty(),
                                                Optional.empty(),
                                                Optional.empty(),
                                                Optional.empty(),
                                                OptionalInt.empty(),
                                                ""),
                                        FIRST.minusDays(1));
                    }
                    one(open, visit, new CowId(new java.util.UUID(1, c)), random, chance);
                }
            }
            film(open, Objects.requireNonNull(last), new CowId(new java.util.UUID(1, 0)));
            return true;
        });
    }

    private void one(Book open, Visit visit, CowId cow, Random random, double chance) {
        double draw = random.nextDouble();
        int level = draw < .45 ? 0 : draw < .75 ? 1 : draw < .93 ? 2 : 3;
        Leg leg = List.of(Leg.LF, Leg.RF, Leg.LH, Leg.RH).get(random.nextInt(4));
        open.herd()
                .put(new Score(
                        ScoreId.fresh(),
                        cow,
                        visit.id(),
                        Optional.empty(),
                        anna.id(),
                        level >= 2 ? Optional.of(leg) : Optional.empty(),
                        "mobility-0-3",
                        level,
                        Instant.EPOCH,
                        false));
        boolean drawn = level < 2 && random.nextDouble() < chance;
        if (drawn || (level >= 2 && random.nextDouble() < .85)) {
            Lift lift = new Lift(
                    LiftId.fresh(),
                    cow,
                    visit.date().plusDays(random.nextInt(6)),
                    anna.id(),
                    drawn ? OptionalDouble.of(chance) : OptionalDouble.empty(),
                    false,
                    true);
            open.trim().put(lift);
            boolean sick = random.nextDouble() < new double[] {.06, .2, .6, .85}[level];
            Foot foot = new Foot(FootId.fresh(), lift.id(), leg, !sick);
            open.trim().put(foot);
            if (sick) {
                String code = List.of("SU", "WLA", "DD", "SU", "HHE", "SHC").get(random.nextInt(6));
                open.trim()
                        .put(new Finding(
                                FindingId.fresh(),
                                foot.id(),
                                Claw.LATERAL,
                                OptionalInt.of(4),
                                true,
                                code,
                                OptionalInt.of(2),
                                "",
                                ""));
            }
        }
    }

    private void film(Book open, Visit visit, CowId cow) {
        Recording recording = new Recording(
                RecordingId.fresh(),
                visit.id(),
                folder.resolve("exit.mp4"),
                "f",
                "mpeg4",
                960,
                540,
                0,
                new TimeBase(1, 25),
                500,
                0,
                20_000_000,
                Optional.empty());
        open.lane().put(recording);
        open.lane()
                .put(new Pass(
                        filmed,
                        recording.id(),
                        100,
                        200,
                        MediaTime.ofMicros(4_000_000),
                        MediaTime.ofMicros(8_000_000),
                        Pass.Direction.LEFT_TO_RIGHT,
                        Optional.of(cow)));
    }

    private Map<String, String> command(String... more) throws Exception {
        List<String> args = new java.util.ArrayList<>(
                List.of("proof", "--json", "--book", book.file().toString(), "--until", TODAY.toString()));
        args.addAll(List.of(more));
        java.io.StringWriter out = new java.io.StringWriter();
        java.io.StringWriter err = new java.io.StringWriter();
        int status = CommandLineRoot.run(
                new java.io.PrintWriter(out), new java.io.PrintWriter(err), args.toArray(String[]::new));
        assertThat(err.toString()).isEmpty();
        assertThat(status).isZero();
        Map<String, String> flat = new HashMap<>();
        try (JsonParser parser = new JsonFactory().createParser(out.toString())) {
            parser.nextToken();
            walk(parser, "", flat);
        }
        return flat;
    }

    private static void walk(JsonParser parser, String at, Map<String, String> into) throws Exception {
        if (parser.currentToken() == JsonToken.START_OBJECT) {
            while (parser.nextToken() != JsonToken.END_OBJECT) {
                String key = parser.currentName();
                parser.nextToken();
                walk(parser, at.isEmpty() ? key : at + "." + key, into);
            }
        } else if (parser.currentToken() == JsonToken.START_ARRAY) {
            int at0 = 0;
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                walk(parser, at + "." + at0++, into);
            }
        } else {
            into.put(at, parser.getText());
        }
    }

    private static String two(double value) {
        String text = String.format(Locale.getDefault(), "%.2f", value);
        return text.startsWith("0") ? text.substring(1) : text;
    }

    private void shown() throws Exception {
        Fx.run(page::shown);
        settle();
    }

    private boolean key(KeyCode code) throws Exception {
        boolean used =
                Fx.get(() -> page.key(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false)));
        settle();
        return used;
    }

    /** Three rounds: read, answer, shown. */
    private void settle() throws Exception {
        for (int i = 0; i < 3; i++) {
            background.submit(() -> {}).get(60, TimeUnit.SECONDS);
            Fx.run(() -> {});
        }
        Fx.run(() -> {
            scene.getRoot().applyCss();
            scene.getRoot().layout();
        });
    }

    private Node lookup(String id) {
        return lookupIfThere(id).orElseThrow(() -> new AssertionError("not on the page: " + id));
    }

    private Optional<Node> lookupIfThere(String id) {
        return Optional.ofNullable(scene.getRoot().lookup("#" + id));
    }

    private String label(String id) throws Exception {
        return Fx.get(() -> ((Label) lookup(id)).getText());
    }

    private String texts() throws Exception {
        return Fx.get(() -> {
            StringBuilder all = new StringBuilder();
            scene.getRoot().lookupAll(".label").forEach(n -> {
                if (n instanceof Label label) {
                    all.append(label.getText()).append('\n');
                }
            });
            return all.toString();
        });
    }

    /** Pictures for a person to judge, where {@code levelback.pictures} names a folder. */
    private void picture(String name, int wide, int high) throws Exception {
        String to = System.getProperty("levelback.pictures", "");
        if (to.isEmpty()) {
            return;
        }
        Fx.run(() -> {
            javafx.scene.layout.Region root = (javafx.scene.layout.Region) scene.getRoot();
            root.resize(wide, high);
            root.applyCss();
            root.layout();
            root.layout();
        });
        settleSize(wide, high);
        byte[] png = Fx.get(
                () -> Snapshot.png(scene.getRoot().snapshot(null, new javafx.scene.image.WritableImage(wide, high))));
        Files.createDirectories(Path.of(to));
        Files.write(Path.of(to).resolve("proof-" + name + ".png"), png);
    }

    private void settleSize(int wide, int high) throws Exception {
        for (int i = 0; i < 3; i++) {
            Fx.run(() -> {
                javafx.scene.layout.Region root = (javafx.scene.layout.Region) scene.getRoot();
                root.resize(wide, high);
                root.applyCss();
                root.layout();
            });
        }
    }
}

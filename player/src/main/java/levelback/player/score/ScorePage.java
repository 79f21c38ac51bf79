package levelback.player.score;

import java.io.File;
import java.nio.file.Path;
import java.text.NumberFormat;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;
import javafx.animation.PauseTransition;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.player.desk.Desk;
import levelback.player.desk.Page;
import levelback.player.desk.PageId;
import levelback.player.score.ScoreViewModel.Film;
import levelback.player.score.ScoreViewModel.State;
import levelback.player.stage.Beside;
import levelback.player.stage.PictureAids;
import levelback.player.stage.PicturePlayer;
import levelback.player.stage.PictureView;
import levelback.player.stage.Place;
import levelback.player.stage.Stance;
import levelback.player.stage.Strides;
import levelback.player.stage.Strip;
import levelback.player.stage.StripContent;
import levelback.player.theme.EmptyState;
import levelback.player.theme.ErrorBar;
import levelback.player.theme.Keys;
import levelback.player.theme.Style;
import levelback.player.work.OpenRecording;
import levelback.player.work.VerifyInBackground;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.GaitScales;
import levelback.scoring.value.Leg;
import levelback.store.herd.Herd;
import levelback.store.herd.Tag;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;
import org.jspecify.annotations.Nullable;

/**
 * See, judge, next: the picture with its strip, the queue in milking order, the score keys, signs and foot findings. Until a
 * score is in, nothing of earlier scores is on the page. On a recording without passes it marks them.
 */
public final class ScorePage implements Page {

    /** Heights and widths under which rows tighten (look.md, Sizes). */
    private static final double LOW = 760;

    private static final double NARROW = 1400;
    private static final double MICROS = 1e6;
    private static final int BIG_STEP = 10;

    private final Desk desk;
    private final VerifyInBackground verifying = new VerifyInBackground();
    private final ExecutorService films;
    private final ScoreViewModel model;
    private final KeySet keySet = KeySet.of(Locale.getDefault());

    private final PictureView picture = new PictureView();
    private final PicturePlayer player = new PicturePlayer(picture);
    private final HBox pictures = new HBox(4, picture);
    private final Strip strip = new Strip();
    private final Beside beside = new Beside(player);
    private final PictureAids aids = new PictureAids(picture, beside.view(), new AidMoves());
    private final TransportBar transport = new TransportBar(player, this::toggleLoop, aids);
    private final HeadLine head;
    private final QueuePanel queue;
    private final JudgePanel judge;
    private final MarkPanel mark;
    private final VBox notices = new VBox();
    private final StackPane root = new StackPane();
    private final BorderPane work = new BorderPane();
    private final ScoreKeyboard keyboard;

    private final TreeSet<Integer> unreadable = new TreeSet<>();
    private @Nullable Clip clip;
    private int first;
    private int last;
    private OptionalInt loopStart = OptionalInt.empty();

    /** On the published scales. */
    public ScorePage(Desk desk) {
        this(desk, GaitScales::byId);
    }

    /** @param scales finds a scale by its id */
    ScorePage(Desk desk, Function<String, Optional<GaitScale>> scales) {
        this.desk = desk;
        this.films = Executors.newSingleThreadExecutor(task -> {
            Thread thread = new Thread(task, "films of Score");
            thread.setDaemon(true);
            return thread;
        });
        this.model =
                new ScoreViewModel(desk, films, OpenRecording::once, Clock.systemUTC(), ScorePage::afterAWhile, scales);
        model.verifyWith(verifying::verify);
        this.head = new HeadLine(model);
        this.queue = new QueuePanel(model, this::addRecordings);
        this.judge = new JudgePanel(model, keySet, player::shownFrame, this::show);
        this.mark = new MarkPanel(model, player::shownFrame, this::show);
        this.keyboard = new ScoreKeyboard(this, model, player, transport, judge, keySet, aids);
        build();
    }

    private static void afterAWhile(Duration wait, Runnable then) {
        PauseTransition pause = new PauseTransition(javafx.util.Duration.millis(wait.toMillis() + 20.0));
        pause.setOnFinished(e -> then.run());
        pause.play();
    }

    private void build() {
        picture.setFocusTraversable(true);
        picture.setAccessibleText(Words.of("picture.accessible"));
        VBox.setVgrow(pictures, Priority.ALWAYS);
        HBox.setHgrow(picture, Priority.ALWAYS);
        pictures.setMinSize(0, 0);
        picture.setPrefWidth(1);
        beside.view().setPrefWidth(1);
        VBox middle = new VBox(head, pictures, notices, aids, transport, strip);
        middle.getStyleClass().add(Style.SHEET);
        work.setLeft(queue);
        work.setCenter(middle);
        work.setRight(judge);
        root.getStyleClass().add(Style.SHEET);
        root.setId("score-page");
        // The window says how wide the page is, never a row of it: a long file name must not push the right column out.
        for (Region part : List.of(middle, work, root)) {
            part.setMinSize(0, 0);
        }
        root.widthProperty().addListener((o, was, is) -> fit());
        root.heightProperty().addListener((o, was, is) -> fit());
        fit();
        player.setOnFrame(this::frameShown);
        player.setOnStand(transport::refresh);
        player.setOnUnreadable(broken -> {
            unreadable.add(broken.frame());
            notices();
        });
        strip.setOnTime(timeUs -> {
            if (clip != null) {
                show(clip.index().frameAt(timeUs));
            }
        });
        strip.setOnFrame(this::show);
        root.setOnDragOver(e -> {
            if (e.getDragboard().hasFiles()) {
                e.acceptTransferModes(TransferMode.COPY, TransferMode.LINK);
            }
            e.consume();
        });
        root.setOnDragDropped(e -> {
            boolean files = e.getDragboard().hasFiles();
            if (files) {
                takeFiles(e.getDragboard().getFiles().stream().map(File::toPath).toList());
            }
            e.setDropCompleted(files);
            e.consume();
        });
        model.stateProperty().addListener((o, was, is) -> render(is));
        model.filmProperty().addListener((o, was, is) -> render(is));
        render(model.stateProperty().get());
    }

    private void fit() {
        boolean low = root.getHeight() > 0 && root.getHeight() < LOW;
        boolean narrow = root.getWidth() > 0 && root.getWidth() < NARROW;
        double left = narrow ? 140 : 174;
        double right = narrow ? 340 : 362;
        queue.setMinWidth(left);
        queue.setPrefWidth(left);
        queue.setMaxWidth(left);
        for (VBox column : List.of(judge, mark)) {
            column.setMinWidth(right);
            column.setPrefWidth(right);
            column.setMaxWidth(right);
        }
        double stripHigh = low ? 224 : Math.max(246, Math.min(320, root.getHeight() * 0.3));
        strip.setMinHeight(stripHigh);
        strip.setPrefHeight(stripHigh);
        strip.setMaxHeight(stripHigh);
        queue.setNarrow(narrow);
        judge.setLow(low);
    }

    // What the state says.

    private void render(State state) {
        if (state instanceof State.OnPass on) {
            head.show(on, zone());
            queue.show(on.queue(), Optional.of(on.sheet().pass().id()), Optional.empty());
            judge.show(on);
            work.setRight(judge);
            root.getChildren().setAll(work);
            stripContent();
        } else if (state instanceof State.Marking m) {
            head.show(m);
            queue.show(
                    m.queue(),
                    Optional.empty(),
                    Optional.of(m.sheet().recording().id()));
            mark.show(m);
            work.setRight(mark);
            root.getChildren().setAll(work);
            stripContent();
            markBracket(m);
        } else {
            root.getChildren().setAll(empty(state));
        }
    }

    private Node empty(State state) {
        EmptyState part;
        if (state instanceof State.NoHerd) {
            part = new EmptyState(Words.of("empty.noHerd"), Words.of("empty.noHerd.how"));
        } else if (state instanceof State.NoPasses none
                && !none.queue().recordings().isEmpty()) {
            part = new EmptyState(
                    Words.of("empty.noPasses"),
                    Words.of("empty.mark"),
                    Parts.mainKey(Words.of("mark.open"), "W", model::toggleMarking),
                    Parts.quiet(Keys.button(Words.of("add.recordings"), "Ctrl O"), this::addRecordings));
        } else if (state instanceof State.NoPasses) {
            part = new EmptyState(
                    Words.of("empty.noPasses"),
                    Words.of("empty.add"),
                    Parts.mainKey(Words.of("add.recordings"), "Ctrl O", this::addRecordings));
        } else {
            part = new EmptyState(Words.of("empty.reading"), "");
        }
        part.setMaxSize(560, Region.USE_PREF_SIZE);
        StackPane.setMargin(part, new Insets(24));
        return part;
    }

    private void render(Film film) {
        if (film instanceof Film.Ready ready) {
            boolean other = ready.clip() != clip;
            clip = ready.clip();
            first = ready.first();
            last = ready.last();
            if (other) {
                unreadable.clear();
            }
            loopStart = OptionalInt.empty();
            strip.setLoop(0, 0);
            beside.part();
            player.open(ready.clip(), first, last, ready.at(), model.nextSpan());
            frameText(ready.at());
            stripContent();
            if (model.stateProperty().get() instanceof State.Marking m) {
                markBracket(m);
            }
        } else {
            clip = null;
            unreadable.clear();
            player.close();
            strip.show(null);
            transport.where("", "", "");
        }
        transport.refresh();
        aidsState();
        notices();
    }

    private void notices() {
        notices.getChildren().clear();
        Film film = model.filmProperty().get();
        if (film instanceof Film.Broken broken) {
            notices.getChildren().add(new ErrorBar(broken.sentence()));
        } else if (film instanceof Film.Opening opening) {
            notices.getChildren().add(Parts.label(Words.of("film.opening", opening.fileName()), Style.SECOND));
        } else {
            damage().forEach(sentence -> notices.getChildren().add(new ErrorBar(sentence)));
        }
    }

    private List<String> damage() {
        return clip == null
                ? List.of()
                : DamageLines.of(clip.index().frames(), clip.facts().damage(), unreadable, first, last, base());
    }

    /** What is taken off a recording's frame number for showing: a pass counts its own frames from 1. */
    private int base() {
        return model.stateProperty().get() instanceof State.OnPass ? first - 1 : 0;
    }

    private void frameShown(int frame) {
        verifying.touch();
        beside.follow(frame);
        frameText(frame);
        if (clip != null) {
            strip.setPlayhead(clip.index().frames().get(frame).timeUs());
        }
        if (model.stateProperty().get() instanceof State.Marking m) {
            markBracket(m);
        }
        transport.refresh();
    }

    private void frameText(int frame) {
        if (clip == null) {
            return;
        }
        List<IndexedFrame> frames = clip.index().frames();
        NumberFormat seconds = NumberFormat.getNumberInstance();
        seconds.setMinimumFractionDigits(3);
        seconds.setMaximumFractionDigits(3);
        String at =
                seconds.format((frames.get(frame).timeUs() - frames.get(first).timeUs()) / MICROS);
        boolean onPass = model.stateProperty().get() instanceof State.OnPass;
        String number = Words.of("frame.n", Integer.toString(frame - base()));
        transport.where(
                player.isByFields() ? Words.of("frame.field", number, player.shownField() + 1) : number,
                Words.of(
                        onPass ? "frame.of" : "frame.ofWhole",
                        Integer.toString(onPass ? last - first + 1 : frames.size() - 1),
                        at),
                onPass
                        ? Words.of(
                                "frame.own",
                                Integer.toString(frame),
                                String.valueOf(clip.facts().file().getFileName()))
                        : "");
    }

    private void stripContent() {
        if (clip == null) {
            strip.show(null);
            return;
        }
        List<StripContent.Remark> remarks = new ArrayList<>();
        State state = model.stateProperty().get();
        if (state instanceof State.OnPass on) {
            for (Tag tag : on.sheet().tags()) {
                remarks.add(new StripContent.Remark(
                        tag.time().timeUs(), tag.recordingFrame(), tag.leg(), ScoreViewModel.tagText(tag)));
            }
        } else if (state instanceof State.Marking m) {
            for (Pass pass : m.sheet().passes()) {
                String name = m.sheet().numbers().getOrDefault(pass.id(), Words.of("queue.unknown"));
                remarks.add(new StripContent.Remark(pass.from().timeUs(), pass.fromFrame(), Optional.empty(), name));
            }
        }
        List<IndexedFrame> frames = clip.index().frames();
        long fromUs = frames.get(Math.min(first, frames.size() - 1)).timeUs();
        long toUs = Math.max(
                fromUs + 1_000, frames.get(Math.min(last, frames.size() - 1)).timeUs());
        List<StripContent.Damaged> damage = clip.facts().damage().stream()
                .map(span -> new StripContent.Damaged(span.fromUs(), span.toUs(), span.what()))
                .toList();
        strip.show(new StripContent(fromUs, toUs, stances(), List.of(), remarks, damage));
    }

    /** Footfalls of the pass, as far as the book has them. */
    private List<Stance> stances() {
        return List.of();
    }

    private void markBracket(State.Marking m) {
        if (clip == null || m.first().isEmpty()) {
            strip.setLoop(0, 0);
            return;
        }
        int to = m.last().orElse(player.shownFrame());
        strip.setLoop(
                timeUs(m.first().getAsInt()), timeUs(Math.max(to, m.first().getAsInt())));
    }

    private long timeUs(int frame) {
        return clip == null ? 0 : clip.index().frames().get(frame).timeUs();
    }

    private ZoneId zone() {
        return desk.herd().map(Herd::zone).orElse(ZoneOffset.UTC);
    }

    // What the keys and the mouse do.

    private void show(int frame) {
        transport.forwards();
        player.show(frame);
        transport.refresh();
    }

    /** Steps some frames on or back. */
    void step(int frames, boolean big) {
        player.step(big ? frames * BIG_STEP : frames);
        transport.refresh();
    }

    /** Goes some seconds on, or back, by the recording's own times. */
    void second(int seconds) {
        transport.forwards();
        player.stepTime((long) (seconds * MICROS));
        transport.refresh();
    }

    /** Goes to the remark before or after this moment: a tag of the pass, or where a pass was marked. */
    void toTag(boolean after) {
        TreeSet<Integer> moments = new TreeSet<>();
        State state = model.stateProperty().get();
        if (state instanceof State.OnPass on) {
            on.sheet().tags().forEach(tag -> moments.add(tag.recordingFrame()));
        } else if (state instanceof State.Marking m) {
            m.sheet().passes().forEach(pass -> moments.add(pass.fromFrame()));
        }
        go(moments, after, "tags.none");
    }

    /** Goes to a place as it was typed. */
    void goTo(Place place) {
        if (clip == null) {
            return;
        }
        if (place instanceof Place.Frame frame) {
            goToFrame(frame.number() + base(), frame.number());
        } else if (place instanceof Place.OwnFrame own) {
            goToFrame(own.number(), own.number());
        } else if (place instanceof Place.Time time) {
            goToFrame(clip.index().frameAt(timeUs(first) + time.us()), 0);
        }
    }

    private void aidsState() {
        aids.show(clip != null && clip.facts().interlaced(), player.isByFields(), beside.isOpen());
    }

    private void goToFrame(int frame, int typed) {
        if (frame < first || frame > last) {
            desk.message(Words.of(
                    "goTo.outside",
                    Integer.toString(typed),
                    Integer.toString(first),
                    Integer.toString(last),
                    Integer.toString(first - base()),
                    Integer.toString(last - base())));
        } else {
            show(frame);
        }
    }

    /** What the picture's aids do on this page. */
    private final class AidMoves implements PictureAids.Moves {
        @Override
        public void second(int seconds) {
            ScorePage.this.second(seconds);
        }

        @Override
        public void toTag(boolean after) {
            ScorePage.this.toTag(after);
        }

        @Override
        public void goTo(Place place) {
            ScorePage.this.goTo(place);
        }

        @Override
        public void backwards() {
            transport.backwards();
        }

        @Override
        public void loopEnd() {
            ScorePage.this.loopEnd();
        }

        @Override
        public void say(String sentence) {
            desk.message(sentence);
        }

        @Override
        public void fields() {
            boolean interlaced = clip != null && clip.facts().interlaced();
            if (interlaced) {
                player.setByFields(!player.isByFields());
            }
            desk.message(aids.fieldsSay(interlaced, player.isByFields()));
            aidsState();
        }

        @Override
        public void beside() {
            if (clip == null) {
                return;
            }
            if (!beside.isOpen()) {
                beside.hold(first, last);
                HBox.setHgrow(beside.view(), Priority.ALWAYS);
                pictures.getChildren().setAll(beside.view(), picture);
                desk.message(aids.heldSays(player.shownFrame() - base()));
            } else if (!beside.isJoined()) {
                beside.join();
                desk.message(aids.joinedSays());
            } else {
                beside.close();
                pictures.getChildren().setAll(picture);
                desk.message(aids.awaySays());
            }
            aidsState();
        }

        @Override
        public void backToPicture() {
            picture.requestFocus();
        }
    }

    /** Goes to the footfall before or after this moment; on a pass without footfalls, to the tag. */
    void toMoment(boolean after) {
        if (clip == null) {
            return;
        }
        TreeSet<Integer> moments = new TreeSet<>();
        for (Stance stance : stances()) {
            moments.add(clip.index().frameAt(stance.downUs()));
            moments.add(clip.index().frameAt(stance.upUs()));
        }
        if (moments.isEmpty() && model.stateProperty().get() instanceof State.OnPass on) {
            on.sheet().tags().forEach(tag -> moments.add(tag.recordingFrame()));
        }
        go(moments, after, "moment.none");
    }

    private void go(NavigableSet<Integer> moments, boolean after, String none) {
        int here = player.wantedFrame();
        Integer to = after ? moments.higher(here) : moments.lower(here);
        if (to == null) {
            desk.message(Words.of(moments.isEmpty() ? none : "moment.noMore"));
        } else {
            show(to);
        }
    }

    /** Loops the stride of the chosen leg, or ends the loop. */
    void toggleLoop() {
        if (player.loop().isPresent()) {
            player.setLoop(null, null);
            strip.setLoop(0, 0);
        } else if (clip != null) {
            Leg leg = model.stateProperty().get() instanceof State.OnPass on
                    ? on.leg().orElse(Leg.LH)
                    : Leg.LH;
            Optional<Strides.Stride> stride = Strides.at(stances(), leg, timeUs(player.shownFrame()));
            if (stride.isPresent()) {
                loop(
                        clip.index().frameAt(stride.get().fromUs()),
                        clip.index().frameAt(stride.get().toUs()));
            } else {
                loopEnd();
            }
        }
        transport.refresh();
    }

    /** The first time the loop's beginning, the second time its end. */
    void loopEnd() {
        int here = player.shownFrame();
        if (loopStart.isEmpty() || here <= loopStart.getAsInt()) {
            loopStart = OptionalInt.of(here);
            desk.message(Words.of("loop.begins"));
        } else {
            loop(loopStart.getAsInt(), here);
            loopStart = OptionalInt.empty();
        }
        transport.refresh();
    }

    private void loop(int from, int to) {
        player.setLoop(from, to);
        strip.setLoop(timeUs(from), timeUs(to));
        if (!player.isWalking()) {
            player.walk();
        }
    }

    private void addRecordings() {
        desk.chooseRecordings();
    }

    @Override
    public void takeFiles(List<Path> files) {
        model.bringIn(files);
    }

    @Override
    public void openPass(PassId pass, int recordingFrame) {
        model.openPass(pass, OptionalInt.of(recordingFrame));
    }

    // Page.

    @Override
    public PageId id() {
        return PageId.SCORE;
    }

    @Override
    public Node view() {
        return root;
    }

    @Override
    public void shown() {
        model.load();
    }

    @Override
    public void bookChanged() {
        model.load();
    }

    @Override
    public boolean key(KeyEvent event) {
        return keyboard.key(event);
    }

    @Override
    public void close() {
        model.close();
        beside.close();
        player.close();
        verifying.close();
        films.shutdownNow();
    }

    /** For tests and other pages of the desk: what is decided, and what is on the screen. */
    ScoreViewModel model() {
        return model;
    }

    PicturePlayer player() {
        return player;
    }

    PictureView picture() {
        return picture;
    }

    Beside beside() {
        return beside;
    }
}

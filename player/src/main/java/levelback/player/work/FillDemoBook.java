package levelback.player.work;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;
import levelback.clips.drawn.RecordingPlan;
import levelback.clips.drawn.herd.HerdCow;
import levelback.clips.drawn.herd.HerdFinding;
import levelback.clips.drawn.herd.HerdFoot;
import levelback.clips.drawn.herd.HerdLift;
import levelback.clips.drawn.herd.HerdMedicine;
import levelback.clips.drawn.herd.HerdPlan;
import levelback.clips.drawn.herd.HerdScore;
import levelback.clips.drawn.herd.HerdState;
import levelback.clips.drawn.herd.HerdVisit;
import levelback.clips.drawn.truth.PassTruth;
import levelback.clips.drawn.truth.RecordingTruth;
import levelback.clips.open.Clip;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.FootAction;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.GaitScales;
import levelback.scoring.scale.Sign;
import levelback.store.book.Book;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;
import levelback.store.lane.Recording;
import levelback.store.trim.MedicineNote;

/**
 * Fills a book with the invented herd by the very steps that the desk uses; one step of the book for each visit, so that
 * nine visits by two scorers cost nine commits. Passes come from the drawn film's own truth.
 */
final class FillDemoBook {

    static final String SCALE = "mobility-0-3";
    /** Scorer A of the plan. */
    static final Person ADA = new Person(PersonId.fresh(), "Ada Fenn", "AF");
    /** Scorer B of the plan. */
    static final Person BRAM = new Person(PersonId.fresh(), "Bram Tolle", "BT");
    /** Who trims. */
    static final Person ODA = new Person(PersonId.fresh(), "Oda Marl", "OM");

    private final Book book;
    private final HerdPlan plan;
    private final Herd herd;
    private final GaitScale scale;
    private final Map<String, CowId> cows = new HashMap<>();

    FillDemoBook(Book book, HerdPlan plan) {
        this.book = book;
        this.plan = plan;
        this.scale = GaitScales.byId(SCALE).orElseThrow();
        this.herd = new Herd(
                HerdId.fresh(),
                plan.farm(),
                plan.zone(),
                SCALE,
                OptionalInt.of(plan.cows().size()));
    }

    /**
     * A film of the visit as it was drawn and read again.
     *
     * @param clip the film, opened like any other
     */
    record Film(RecordingPlan plan, RecordingTruth truth, Clip clip) {}

    Herd herd() {
        return herd;
    }

    /** Names the herd, its people and its cows. */
    void people() {
        LocalDate from = plan.visits().get(0).date().minusYears(1);
        book.step(ADA.initials(), "Brought in the herd of " + plan.farm(), inside -> {
            inside.herd().put(herd);
            Stream.of(ADA, BRAM, ODA).forEach(inside.herd()::put);
            for (HerdCow cow : plan.cows()) {
                CowId id = CowId.fresh();
                cows.put(cow.number(), id);
                inside.herd()
                        .put(
                                new Cow(
                                        id,
                                        herd.id(),
                                        cow.number(),
                                        Optional.of(cow.name()),
                                        Optional.empty(),
                                        Optional.of(cow.tag()),
                                        Optional.of(cow.birth()),
                                        Optional.of(cow.calving()),
                                        OptionalInt.of(cow.parity()),
                                        ""),
                                from);
            }
            return herd;
        });
    }

    /** Brings in a visit: its films and passes, gate reads, both scorers' scores and signs, and the cards after it. */
    void visit(HerdVisit drawn, List<Film> films) {
        book.step(ADA.initials(), "Visit " + drawn.ordinal() + " of the drawn herd", inside -> {
            Visit visit = inside.herd().visitOn(herd.id(), drawn.date());
            Map<String, PassOf> passes = new HashMap<>();
            for (Film film : films) {
                passes.putAll(film(inside, visit, film));
            }
            scores(inside, visit, drawn, passes);
            for (HerdLift lift : drawn.lifts()) {
                new WriteCard(inside).write(new Chute(cow(lift.cow()), lift.date(), ODA.id()), card(lift));
            }
            return visit;
        });
    }

    private record PassOf(Pass pass, Clip clip) {}

    private Map<String, PassOf> film(Book inside, Visit visit, Film film) {
        Recording recording =
                new BringIn(inside).keep(film.clip(), herd, Optional.of(visit)).recording();
        Map<String, PassOf> passes = new HashMap<>();
        for (PassTruth seen : film.truth().passes()) {
            if (!seen.seen()) {
                continue;
            }
            String number = seen.walk().traits().cowNumber();
            Pass pass = new MarkPass(inside)
                    .mark(
                            herd,
                            recording,
                            film.clip(),
                            seen.fromFrame(),
                            seen.toFrame(),
                            seen.walk().direction().sign() > 0
                                    ? Pass.Direction.LEFT_TO_RIGHT
                                    : Pass.Direction.RIGHT_TO_LEFT,
                            Optional.of(number));
            passes.put(number, new PassOf(pass, film.clip()));
        }
        film.plan()
                .gate()
                .ifPresent(gate -> gate.reads().stream()
                        .filter(read -> !read.mark().equals("missed"))
                        .forEach(read -> inside.lane().putRead(visit.id(), read.at(), read.tag(), "parlour exit")));
        return passes;
    }

    private void scores(Book inside, Visit visit, HerdVisit drawn, Map<String, PassOf> passes) {
        Instant milking =
                drawn.date().atTime(LocalTime.of(6, 10)).atZone(plan.zone()).toInstant();
        int entered = 0;
        for (HerdScore score : drawn.scores()) {
            Person scorer = score.scorer().equals("A") ? ADA : BRAM;
            Optional<PassId> pass = Optional.ofNullable(passes.get(score.cow()))
                    .map(p -> p.pass().id());
            Instant at = milking.plusSeconds(25L * entered++);
            new GiveScore(inside)
                    .give(new GiveScore.Judgement(
                            cow(score.cow()),
                            visit.id(),
                            pass,
                            scorer.id(),
                            score.leg(),
                            scale,
                            score.level(),
                            at,
                            false));
            PassOf filmed = passes.get(score.cow());
            if (filmed != null && scorer.equals(ADA)) {
                signs(inside, filmed, state(drawn, score.cow()), score, at);
            }
        }
    }

    /** What scorer A tags on a filmed pass: by how she truly walks, at the middle of the pass. */
    private void signs(Book inside, PassOf filmed, HerdState state, HerdScore score, Instant at) {
        int middle = (filmed.pass().fromFrame() + filmed.pass().toFrame()) / 2;
        SetTag tags = new SetTag(inside);
        List<Sign> seen = new ArrayList<>();
        if (state.severity() >= 2.6) {
            seen.add(Sign.ARCHED_BACK);
        }
        if (state.severity() >= 3.2) {
            seen.add(Sign.HEAD_BOB);
        }
        if (score.leg().isPresent()) {
            seen.add(score.level() >= 3 ? Sign.SPARES_LEG : Sign.SHORT_STRIDE);
        }
        for (int i = 0; i < seen.size(); i++) {
            int frame = Math.min(filmed.pass().toFrame(), middle + 6 * i);
            tags.sign(
                    new SetTag.Moment(filmed.pass().id(), ADA.id(), frame, FrameTime.of(filmed.clip(), frame), at),
                    seen.get(i),
                    score.leg());
        }
    }

    private static CardDraft card(HerdLift lift) {
        List<CardDraft.FootDraft> feet = new ArrayList<>();
        for (HerdFoot foot : lift.feet()) {
            Set<FootAction> actions = EnumSet.noneOf(FootAction.class);
            for (FootAction action : FootAction.values()) {
                if (foot.actions().contains(action.key())) {
                    actions.add(action);
                }
            }
            feet.add(new CardDraft.FootDraft(
                    foot.leg(),
                    foot.findings().stream().map(FillDemoBook::finding).toList(),
                    foot.examined() && foot.findings().isEmpty(),
                    actions));
        }
        return new CardDraft(
                lift.chance(), lift.refused(), feet, lift.medicine().map(FillDemoBook::note), lift.lookAgainOn());
    }

    private static FindingDraft finding(HerdFinding finding) {
        return new FindingDraft(
                Optional.of(Claw.valueOf(finding.claw().toUpperCase(Locale.ROOT))),
                OptionalInt.of(finding.zone()),
                finding.code(),
                finding.severity(),
                finding.stage(),
                "");
    }

    private static MedicineNote note(HerdMedicine note) {
        return new MedicineNote(
                note.product(),
                note.givenBy(),
                note.milkWithheldUntil(),
                note.meatWithheldUntil(),
                note.batch(),
                note.givenAt(),
                note.doseAsGiven(),
                note.prescribedBy());
    }

    private static HerdState state(HerdVisit visit, String cow) {
        return visit.states().stream()
                .filter(s -> s.cow().equals(cow))
                .findFirst()
                .orElseThrow();
    }

    private CowId cow(String number) {
        return java.util.Objects.requireNonNull(cows.get(number), number);
    }
}

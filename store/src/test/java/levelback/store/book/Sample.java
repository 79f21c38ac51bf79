package levelback.store.book;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import levelback.scoring.foot.Claw;
import levelback.scoring.value.Leg;
import levelback.scoring.value.MediaTime;
import levelback.scoring.value.TimeBase;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.ScoreId;
import levelback.store.herd.Tag;
import levelback.store.herd.TagId;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
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

/** Invented rows for tests of the book. */
public final class Sample {

    public static final LocalDate DAY = LocalDate.of(2026, 3, 14);
    public static final Instant AT = Instant.parse("2026-03-14T06:12:30.123456Z");

    private Sample() {}

    public static Herd herd(String name) {
        return new Herd(HerdId.fresh(), name, ZoneId.of("Europe/Berlin"), "mobility-0-3", OptionalInt.of(60));
    }

    public static Person person(String name) {
        return new Person(PersonId.fresh(), name, name.substring(0, 2));
    }

    public static Cow cow(HerdId herd, String number) {
        return new Cow(
                CowId.fresh(),
                herd,
                number,
                Optional.of("Name of " + number),
                Optional.empty(),
                Optional.of("276000000" + number),
                Optional.of(LocalDate.of(2021, 5, 1)),
                Optional.empty(),
                OptionalInt.of(2),
                "");
    }

    public static Score score(Cow cow, Visit visit, Person scorer, double level) {
        return score(cow.id(), visit.id(), scorer.id(), Optional.empty(), level);
    }

    public static Score score(CowId cow, VisitId visit, PersonId scorer, Optional<Leg> leg, double level) {
        return new Score(ScoreId.fresh(), cow, visit, Optional.empty(), scorer, leg, "mobility-0-3", level, AT, false);
    }

    public static Recording recording(VisitId visit, String name) {
        return new Recording(
                RecordingId.fresh(),
                visit,
                Path.of("/films", name),
                "1234-" + name,
                "h264",
                1920,
                1080,
                90,
                new TimeBase(1, 90_000),
                1500,
                -33_000,
                60_000_000,
                Optional.of(AT));
    }

    public static Pass pass(Recording recording, int from, int to, Optional<CowId> cow) {
        return new Pass(
                PassId.fresh(),
                recording.id(),
                from,
                to,
                new MediaTime(from * 3600L, recording.timeBase()),
                new MediaTime(to * 3600L, recording.timeBase()),
                Pass.Direction.RIGHT_TO_LEFT,
                cow);
    }

    public static Tag tag(Pass pass, Person by, int frame) {
        return new Tag(
                TagId.fresh(),
                pass.id(),
                by.id(),
                Tag.Kind.SIGN,
                "short-stride",
                Optional.of(Leg.LH),
                frame,
                new MediaTime(frame * 3600L, new TimeBase(1, 90_000)),
                "",
                AT);
    }

    public static Lift lift(Cow cow, LocalDate day, Person trimmer) {
        return new Lift(LiftId.fresh(), cow.id(), day, trimmer.id(), OptionalDouble.empty(), false, false);
    }

    public static Foot foot(Lift lift, Leg leg) {
        return new Foot(FootId.fresh(), lift.id(), leg, false);
    }

    public static Finding finding(Foot foot, String lesion) {
        return new Finding(
                FindingId.fresh(), foot.id(), Claw.LATERAL, OptionalInt.of(4), true, lesion, OptionalInt.of(2), "", "");
    }
}

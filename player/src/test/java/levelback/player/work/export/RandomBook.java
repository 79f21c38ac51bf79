package levelback.player.work.export;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;
import levelback.scoring.value.MediaTime;
import levelback.scoring.value.TimeBase;
import levelback.store.book.Book;
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
import levelback.store.trim.MedicineNote;

/** Books of invented rows, awkward ones among them, the same for the same seed apart from identities. */
final class RandomBook {

    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    private static final Instant AT = Instant.parse("2026-03-14T06:12:30.123456Z");
    private static final TimeBase BASE = new TimeBase(1, 90_000);
    private static final String[] NAMES = {"Anna Ö", "Ben, the \"second\"", "=cmd|' /C calc'!A0", "anna ö", "李"};
    private static final String[] LESIONS = {"SU", "WLA", "DD", "IH", "SH", "X9"};

    private final Random random;
    private final Book book;

    RandomBook(Book book, long seed) {
        this.book = book;
        this.random = new Random(seed);
    }

    Herd fill(String name) {
        Herd herd = new Herd(HerdId.fresh(), name, ZoneId.of("Europe/Berlin"), "mobility-0-3", OptionalInt.of(60));
        book.herd().put(herd);
        List<Person> people = new ArrayList<>();
        for (String person : NAMES) {
            people.add(new Person(PersonId.fresh(), person, "X"));
            book.herd().put(people.get(people.size() - 1));
        }
        List<Cow> cows = cows(herd);
        for (int v = 0; v < 3; v++) {
            visit(herd, DAY.plusDays(14L * v), cows, people);
        }
        return herd;
    }

    private List<Cow> cows(Herd herd) {
        List<Cow> cows = new ArrayList<>();
        for (int i = 0; i < 25; i++) {
            Cow cow = new Cow(
                    CowId.fresh(),
                    herd.id(),
                    (i % 5 == 0 ? "0" : "") + (400 + i),
                    maybe("=Bella; \"" + i + "\""),
                    maybe("DE09876543" + (10 + i)),
                    maybe("2760000000" + (10000 + i)),
                    random.nextBoolean() ? Optional.of(LocalDate.of(2020, 1, 1).plusDays(i)) : Optional.empty(),
                    random.nextBoolean() ? Optional.of(LocalDate.of(2025, 12, 1).plusDays(i)) : Optional.empty(),
                    random.nextBoolean() ? OptionalInt.of(1 + i % 6) : OptionalInt.empty(),
                    i == 3 ? "kicks" : "");
            book.herd().put(cow, DAY.minusDays(30));
            cows.add(cow);
        }
        // One changed her number, and another carries it now.
        Cow old = cows.get(1);
        book.herd().put(renumbered(old, "901"), DAY.plusDays(7));
        Cow heir = Cow.numbered(herd.id(), old.number());
        book.herd().put(heir, DAY.plusDays(8));
        cows.add(heir);
        // One left, and her number went to another.
        Cow gone = cows.get(2);
        book.herd().endNumber(gone.id(), DAY.plusDays(9));
        Cow next = Cow.numbered(herd.id(), gone.number());
        book.herd().put(next, DAY.plusDays(10));
        cows.add(next);
        return cows;
    }

    private static Cow renumbered(Cow cow, String number) {
        return new Cow(
                cow.id(),
                cow.herd(),
                number,
                cow.name(),
                cow.officialId(),
                cow.tag(),
                cow.birth(),
                cow.calving(),
                cow.parity(),
                cow.note());
    }

    private Optional<String> maybe(String text) {
        return random.nextInt(3) > 0 ? Optional.of(text) : Optional.empty();
    }

    private void visit(Herd herd, LocalDate day, List<Cow> cows, List<Person> people) {
        Visit visit = book.herd().visitOn(herd.id(), day);
        Recording recording = new Recording(
                RecordingId.fresh(),
                visit.id(),
                Path.of("/films", "lane-" + day + ".mp4"),
                "f" + day,
                "h264",
                1920,
                1080,
                0,
                BASE,
                90_000,
                1_000_000,
                3_600_000_000L,
                Optional.of(AT));
        book.lane().put(recording);
        for (int i = 0; i < cows.size(); i++) {
            Cow cow = cows.get(i);
            long from = 90_000L * (1 + 10L * i);
            Pass pass = new Pass(
                    PassId.fresh(),
                    recording.id(),
                    250 * i,
                    250 * i + 100,
                    new MediaTime(from, BASE),
                    new MediaTime(from + 4 * 90_000, BASE),
                    Pass.Direction.LEFT_TO_RIGHT,
                    i % 7 == 6 ? Optional.empty() : Optional.of(cow.id()));
            book.lane().put(pass);
            for (Person person : people.subList(0, 1 + random.nextInt(3))) {
                book.herd()
                        .put(new Score(
                                ScoreId.fresh(),
                                cow.id(),
                                visit.id(),
                                i % 3 == 0 ? Optional.of(pass.id()) : Optional.empty(),
                                person.id(),
                                random.nextInt(5) == 0 ? Optional.of(leg()) : Optional.empty(),
                                "mobility-0-3",
                                random.nextInt(4),
                                AT,
                                false));
            }
            if (i % 4 == 0) {
                book.herd()
                        .put(new Tag(
                                TagId.fresh(),
                                pass.id(),
                                people.get(0).id(),
                                Tag.Kind.SIGN,
                                "short-stride",
                                Optional.of(leg()),
                                250 * i + 20,
                                new MediaTime(from + 90_000, BASE),
                                "a --> b & <c>",
                                AT));
            }
            if (random.nextInt(3) > 0) {
                card(cow, day.plusDays(1 + random.nextInt(6)), people.get(3));
            }
        }
    }

    private Leg leg() {
        return List.of(Leg.values()).get(random.nextInt(4));
    }

    private void card(Cow cow, LocalDate day, Person trimmer) {
        boolean refused = random.nextInt(12) == 0;
        Lift lift = new Lift(
                LiftId.fresh(),
                cow.id(),
                day,
                trimmer.id(),
                random.nextInt(4) == 0 ? OptionalDouble.of(0.125) : OptionalDouble.empty(),
                refused,
                true);
        book.trim().put(lift);
        if (refused) {
            return;
        }
        for (Leg leg : Leg.values()) {
            int what = random.nextInt(4);
            if (what == 0) {
                continue;
            }
            Foot foot = new Foot(FootId.fresh(), lift.id(), leg, what == 1);
            book.trim().put(foot);
            for (int f = 0; f < what - 1; f++) {
                String lesion = LESIONS[random.nextInt(LESIONS.length)];
                boolean dd = lesion.equals("DD");
                book.trim()
                        .put(new Finding(
                                FindingId.fresh(),
                                foot.id(),
                                List.of(Claw.values()).get(random.nextInt(4)),
                                random.nextBoolean() ? OptionalInt.of(random.nextInt(13)) : OptionalInt.empty(),
                                true,
                                lesion,
                                dd ? OptionalInt.empty() : OptionalInt.of(1 + random.nextInt(3)),
                                dd ? "M4.1" : "",
                                ""));
            }
            book.trim().putActions(foot.id(), Set.of(FootAction.TRIMMED));
        }
        if (random.nextInt(6) == 0) {
            book.trim()
                    .putMedicine(
                            lift.id(),
                            new MedicineNote("Product P", "vet", "2026-03-20", "", "L-7", "", "10 ml", "Dr V"));
        }
    }
}

package levelback.store.book;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;
import levelback.store.lane.Recording;
import levelback.store.trim.Foot;
import levelback.store.trim.Lift;
import levelback.store.trim.MedicineNote;

/**
 * Wrote the book behind {@code schema-1.sql}, once, when schema 1 was released: {@code sqlite3 FILE .dump}, with
 * {@code PRAGMA application_id} and {@code PRAGMA user_version} added. A released fixture is never made again.
 */
final class FixtureMaker {

    private FixtureMaker() {}

    public static void main(String[] args) {
        try (Book book = Books.create(Path.of(args[0]))) {
            Herd herd = new Herd(
                    HerdId.fresh(), "Fixture Farm", java.time.ZoneId.of("UTC"), "mobility-0-3", OptionalInt.of(2));
            Person anna = Sample.person("Anna");
            Cow cow = Sample.cow(herd.id(), "0412");
            book.herd().put(herd);
            book.herd().put(anna);
            for (Cow each : List.of(cow, Sample.cow(herd.id(), "0500"))) {
                book.herd().put(each, Sample.DAY);
            }
            Visit visit = book.herd().visitOn(herd.id(), Sample.DAY);
            Recording recording = Sample.recording(visit.id(), "a.mp4");
            book.lane().put(recording);
            Pass pass = Sample.pass(recording, 10, 90, Optional.of(cow.id()));
            book.lane().put(pass);
            book.lane().putRead(visit.id(), Sample.AT, "2760000000412", "exit");
            book.herd().put(Sample.tag(pass, anna, 20));
            book.herd().put(Sample.score(cow, visit, anna, 2));
            book.herd().put(Sample.score(cow, visit, anna, 3));
            Lift lift = Sample.lift(cow, Sample.DAY, anna);
            Foot foot = Sample.foot(lift, Leg.LH);
            book.trim().put(lift);
            book.trim().put(foot);
            book.trim().put(Sample.finding(foot, "SU"));
            book.trim().putActions(foot.id(), Set.of(FootAction.BLOCK_INNER, FootAction.TRIMMED));
            book.trim().putMedicine(lift.id(), new MedicineNote("p", "g", "", "", "", "", "", ""));
            book.trim().putLookAgain(lift.id(), Optional.of(Sample.DAY.plusDays(7)));
            book.trim().putPhoto(foot.id(), Path.of("foot.jpg"));
        }
    }
}

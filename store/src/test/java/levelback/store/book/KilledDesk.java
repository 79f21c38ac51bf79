package levelback.store.book;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;
import levelback.store.lane.Recording;
import levelback.store.trim.Finding;
import levelback.store.trim.Foot;
import levelback.store.trim.Lift;

/**
 * A desk without a screen that works on a book until it is killed, and prints each entry once the book has taken it:
 * {@code kind uuid}, or {@code undo words} and {@code redo words}.
 */
public final class KilledDesk {

    private KilledDesk() {}

    /** @param args the book and a seed */
    public static void main(String[] args) {
        Random random = new Random(Long.parseLong(args[1]));
        try (Book book = Books.openOrCreate(Path.of(args[0]))) {
            Herd herd = Sample.herd("Herd of " + args[1]);
            Person anna = Sample.person("Anna");
            book.herd().put(herd);
            book.herd().put(anna);
            Visit visit = book.herd().visitOn(herd.id(), Sample.DAY);
            Recording recording = Sample.recording(visit.id(), "a");
            book.lane().put(recording);
            say("recording", recording.id().uuid().toString());
            for (int i = 0; ; i++) {
                Cow cow = Sample.cow(herd.id(), "" + i);
                book.herd().put(cow, Sample.DAY);
                say("cow", cow.id().uuid().toString());
                Pass pass = Sample.pass(recording, i * 10, i * 10 + 9, Optional.of(cow.id()));
                book.lane().put(pass);
                say("pass", pass.id().uuid().toString());
                Score score = book.step(
                        "Anna", "Score of " + i, b -> b.herd().put(Sample.score(cow, visit, anna, random.nextInt(4))));
                say("score", score.id().uuid().toString());
                Tag tag = Sample.tag(pass, anna, i * 10 + 3);
                book.herd().put(tag);
                say("tag", tag.id().uuid().toString());
                if (random.nextInt(3) == 0) {
                    Score again = book.herd().put(Sample.score(cow, visit, anna, random.nextInt(4)));
                    say("score", again.id().uuid().toString());
                }
                if (random.nextInt(3) == 0) {
                    Lift lift = Sample.lift(cow, Sample.DAY, anna);
                    Foot foot = Sample.foot(lift, Leg.RH);
                    Finding finding = Sample.finding(foot, "WLA");
                    book.step("Anna", "Card of " + i, b -> {
                        b.trim().put(lift);
                        b.trim().put(foot);
                        b.trim().put(finding);
                        b.trim().putActions(foot.id(), Set.of(FootAction.BLOCK_INNER));
                        return true;
                    });
                    say("finding", finding.id().uuid().toString());
                }
                if (random.nextInt(5) == 0) {
                    String undone = book.undo("Anna").orElseThrow();
                    say("undo", undone);
                    say("redo", book.redo("Anna").orElseThrow());
                }
            }
        }
    }

    private static void say(String kind, String what) {
        System.out.println(kind + " " + what);
        System.out.flush();
    }
}

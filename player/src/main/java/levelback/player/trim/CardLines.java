package levelback.player.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import levelback.player.work.ChuteCow;
import levelback.scoring.value.Leg;
import levelback.store.trim.Finding;
import levelback.store.trim.FootCard;
import levelback.store.trim.LiftCard;

/** Says what stands on a card, in few words. */
final class CardLines {

    private CardLines() {}

    /**
     * How a foot stands on today's card.
     *
     * @param status one or two words
     * @param detail what follows in small type
     */
    record FootStatus(String status, String detail) {}

    static FootStatus status(TrimState.InChute now, Leg leg, TrimWords words) {
        Optional<FootCard> foot = now.cow().foot(leg);
        boolean inHand = now.entry().leg() == leg;
        String detail = foot.map(f -> written(f, words)).orElse(words.text("foot.notLifted"));
        if (inHand) {
            return new FootStatus(words.text("foot.inHand"), foot.isPresent() ? detail : words.text("foot.nothingYet"));
        }
        if (foot.isPresent()) {
            return new FootStatus(words.text("foot.done"), detail);
        }
        boolean named =
                now.row().flatMap(row -> row.firstFoot()).filter(leg::equals).isPresent();
        return named ? new FootStatus(words.text("foot.toDo"), words.text("foot.named")) : new FootStatus("–", detail);
    }

    private static String written(FootCard foot, TrimWords words) {
        if (foot.foot().noLesion()) {
            return words.text("foot.noLesion");
        }
        int lines = foot.findings().size();
        if (lines == 0) {
            return words.text("foot.noWord");
        }
        return lines == 1 ? words.text("foot.oneLine") : words.text("foot.lines", lines);
    }

    /**
     * One earlier day of a foot.
     *
     * @param found the findings, or that none was found
     * @param done what was done
     */
    record Earlier(LiftCard card, String day, String found, String done) {}

    static List<Earlier> earlier(ChuteCow cow, Leg leg, TrimWords words) {
        List<Earlier> all = new ArrayList<>();
        for (LiftCard card : cow.earlier()) {
            ChuteCow.footOf(card, leg).ifPresent(foot -> {
                List<String> found = new ArrayList<>();
                for (Finding finding : foot.findings()) {
                    found.add(words.code(finding) + " "
                            + words.place(finding.claw(), finding.zone(), finding.zoneConfirmed()));
                }
                String said = !found.isEmpty()
                        ? String.join("; ", found)
                        : words.text(foot.foot().noLesion() ? "before.none" : "before.noWord");
                all.add(new Earlier(
                        card, words.dayInRow(card.lift().date(), cow.day()), said, words.actions(foot.actions())));
            });
        }
        return all;
    }
}

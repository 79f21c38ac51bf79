package levelback.player.trim;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import levelback.player.theme.Caution;
import levelback.player.work.ChuteCow;
import levelback.store.trim.Block;
import levelback.store.trim.MedicineNote;

/** What must be known before the foot is touched. These stand first and cannot be closed. */
final class Cautions {

    /** How long before and after calving the page says so; our choice, a reminder and no rule. */
    static final int CALVING_DAYS = 42;

    private Cautions() {}

    /** A caution: what to see first, and the rest. */
    record Words(String strong, String rest) {
        Caution drawn() {
            return new Caution(strong, rest);
        }
    }

    static List<Words> of(ChuteCow cow, TrimWords words) {
        List<Words> all = new ArrayList<>();
        LocalDate day = cow.day();
        for (Block block : cow.blocks()) {
            long days = ChronoUnit.DAYS.between(block.on(), day);
            String claw = words.claw(block.claw());
            all.add(
                    days == 0
                            ? new Words(
                                    words.text("caution.block", block.leg(), claw), words.text("caution.blockToday"))
                            : new Words(
                                    words.text("caution.block", block.leg(), claw),
                                    words.text("caution.blockSince", words.dayInRow(block.on(), day), days)));
        }
        cow.withheld().ifPresent(withheld -> {
            MedicineNote note = withheld.note();
            String typed = words.text("caution.typed", words.dayInRow(withheld.typedOn(), day));
            if (!note.milkWithheldUntil().isBlank()) {
                all.add(new Words(words.text("caution.milk", note.milkWithheldUntil()), typed));
            }
            if (!note.meatWithheldUntil().isBlank()) {
                all.add(new Words(words.text("caution.meat", note.meatWithheldUntil()), typed));
            }
        });
        if (!cow.cow().note().isBlank()) {
            all.add(new Words(cow.cow().note(), ""));
        }
        cow.cow().calving().ifPresent(calving -> {
            long days = ChronoUnit.DAYS.between(calving, day);
            if (days < 0 && days >= -CALVING_DAYS) {
                all.add(new Words(
                        words.text("caution.calves", words.dayInRow(calving, day)), words.text("caution.calvesRest")));
            } else if (days >= 0 && days <= CALVING_DAYS) {
                all.add(new Words(
                        words.text("caution.calved", words.dayInRow(calving, day)),
                        words.text("caution.calvedRest", days)));
            }
        });
        return all;
    }
}

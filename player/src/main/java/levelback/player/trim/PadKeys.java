package levelback.player.trim;

import java.util.Map;
import java.util.Optional;
import levelback.scoring.foot.FootAction;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;
import levelback.scoring.value.Leg;

/**
 * The number pad: digits serve the step in force. After {@code *} the corners are the feet, as she stands seen from above;
 * zones 1 to 9 are one key, {@code 0} opens 10, 11 and 12 (keys 1 2 3) and {@code 00} is zone 0; lesion keys lie as on the
 * pad; then how bad, then what follows.
 */
final class PadKeys {

    private static final Map<Integer, Leg> CORNERS = Map.of(7, Leg.LF, 9, Leg.RF, 1, Leg.LH, 3, Leg.RH);

    private final TrimViewModel model;

    PadKeys(TrimViewModel model) {
        this.model = model;
    }

    /** A digit of the pad. */
    void digit(int digit) {
        Optional<TrimState.InChute> chute = model.chute();
        if (chute.isEmpty()) {
            return;
        }
        TrimState.InChute now = chute.get();
        Entry entry = now.entry();
        if (entry.footNext()) {
            model.setEntry(e -> e.footNext(false));
            Optional.ofNullable(CORNERS.get(digit)).ifPresent(model::foot);
            return;
        }
        switch (entry.step()) {
            case WHERE -> where(entry, digit);
            case WHAT -> what(entry, digit);
            case HOW_BAD -> model.howBad(digit);
            case THEN -> then(now, digit);
        }
    }

    private void where(Entry entry, int digit) {
        if (entry.padZero()) {
            model.setEntry(e -> e.padZero(false));
            if (digit <= 3) {
                model.zone(ClawZone.of(entry.claw(), digit == 0 ? 0 : 9 + digit));
            }
        } else if (digit == 0) {
            model.setEntry(e -> e.padZero(true));
        } else {
            model.zone(ClawZone.of(entry.claw(), digit));
        }
    }

    private void what(Entry entry, int digit) {
        if (digit == 0) {
            model.more((entry.more() + 1) % LesionKeys.PAD.size());
        } else {
            LesionKeys.onPad(entry.more(), digit).ifPresent(model::code);
        }
    }

    private void then(TrimState.InChute now, int digit) {
        switch (digit) {
            case 0 -> model.setEntry(Entry::another);
            case 1 -> model.action(model.blockOnSound(now));
            case 2 -> model.action(FootAction.BLOCK_OFF);
            case 3 -> model.action(FootAction.BANDAGE);
            case 4 -> model.lookAgainUsual();
            default -> {
                // Keys 5 to 9 have no meaning in this step.
            }
        }
    }

    /** How many keys the third step has for a line. */
    static int howBadKeys(Entry entry) {
        boolean staged = entry.line()
                .flatMap(line -> Lesions.byCode(line.lesion()))
                .map(Lesion::staged)
                .orElse(false);
        return staged ? TrimViewModel.STAGES.size() : 3;
    }
}

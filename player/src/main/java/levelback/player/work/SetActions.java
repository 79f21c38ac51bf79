package levelback.player.work;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.FootAction;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.trim.Finding;
import levelback.store.trim.FootCard;

/** Sets what was done to a foot. A block goes on the sound claw; on an injured one only if it was asked and meant. */
public final class SetActions {

    private final Book book;

    public SetActions(Book book) {
        this.book = book;
    }

    /**
     * Sets what was done to a foot. Where a block goes on and no day to look again is written yet, the usual one is.
     *
     * @param blockMeant that a block on a claw with an injury was asked about and is meant
     * @throws CardRefused if a block goes on a claw with an injury and that was not meant
     */
    public void set(Chute chute, Leg leg, Set<FootAction> actions, boolean blockMeant) {
        Card card = new Card(book, chute);
        Set<FootAction> before = card.foot(leg).map(FootCard::actions).orElse(Set.of());
        if (!blockMeant) {
            List<Finding> findings = card.foot(leg).map(FootCard::findings).orElse(List.of());
            for (FootAction action : actions) {
                Optional<Claw> claw = blockedClaw(action);
                if (claw.isPresent() && !before.contains(action)) {
                    List<String> injuries = injuriesOf(findings, claw.get());
                    if (!injuries.isEmpty()) {
                        throw new CardRefused("The " + (claw.get() == Claw.MEDIAL ? "inner" : "outer") + " claw of "
                                + leg + " carries " + String.join(", ", injuries)
                                + ": a block goes on the sound claw, so say first that this one is meant.");
                    }
                }
            }
        }
        FootCard foot = card.liftedFoot(leg);
        book.trim().putActions(foot.foot().id(), actions);
        boolean blockGoesOn =
                actions.stream().anyMatch(action -> blockedClaw(action).isPresent() && !before.contains(action));
        if (blockGoesOn && card.read().flatMap(c -> c.lookAgainOn()).isEmpty()) {
            new LookAgain(book).on(chute, Optional.of(LookAgain.usualDay(chute.day())));
        }
    }

    /** Adds one thing done, or takes it away if it was there. */
    public void toggle(Chute chute, Leg leg, FootAction action, boolean blockMeant) {
        Set<FootAction> now = EnumSet.noneOf(FootAction.class);
        new Card(book, chute).foot(leg).ifPresent(foot -> now.addAll(foot.actions()));
        if (!now.remove(action)) {
            now.add(action);
        }
        set(chute, leg, now, blockMeant);
    }

    /** The claw that an action puts a block on. */
    public static Optional<Claw> blockedClaw(FootAction action) {
        return switch (action) {
            case BLOCK_INNER -> Optional.of(Claw.MEDIAL);
            case BLOCK_OUTER -> Optional.of(Claw.LATERAL);
            default -> Optional.empty();
        };
    }

    /**
     * Codes on a claw that speak against a block on it: lesions of the horn, and whatever is on the list of painful ones
     * (trade rule: the block goes on the sound claw; AHDB).
     */
    public static List<String> injuriesOf(List<Finding> findings, Claw claw) {
        return findings.stream()
                .filter(finding -> finding.claw() == claw || finding.claw() == Claw.BOTH)
                .flatMap(finding -> Lesions.byCode(finding.lesion()).stream()
                        .filter(lesion -> lesion.group() == Lesion.Group.HORN || lesion.alarm())
                        .flatMap(lesion -> Stream.of(lesion.code())))
                .distinct()
                .toList();
    }
}

package levelback.player.trim;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import levelback.player.work.ChuteCow;
import levelback.scoring.foot.Claw;
import levelback.scoring.value.Leg;
import levelback.store.trim.Block;
import levelback.store.trim.Finding;

/** Works out what the foot map shows. */
final class MapPictures {

    private MapPictures() {}

    static FootMapView.Picture of(TrimState.InChute now) {
        Entry entry = now.entry();
        Leg leg = entry.leg();
        Map<ClawZone, Integer> found = new HashMap<>();
        Set<ClawZone> unconfirmed = new HashSet<>();
        List<Finding> lines = now.cow().foot(leg).map(foot -> foot.findings()).orElse(List.of());
        for (Finding finding : lines) {
            zones(finding).forEach(zone -> {
                found.merge(zone, howBad(finding), Math::max);
                if (!finding.zoneConfirmed()) {
                    unconfirmed.add(zone);
                }
            });
        }
        Set<ClawZone> earlier = new HashSet<>();
        now.cow().earlier().stream()
                .flatMap(card -> ChuteCow.footOf(card, leg).stream())
                .flatMap(foot -> foot.findings().stream())
                .flatMap(MapPictures::zones)
                .forEach(earlier::add);
        Set<Claw> blocked = EnumSet.noneOf(Claw.class);
        now.cow().blocks().stream()
                .filter(block -> block.leg() == leg)
                .sorted(Comparator.comparing(Block::on))
                .forEach(block -> blocked.add(block.claw()));
        return new FootMapView.Picture(leg, entry.toesUp(), entry.chosen(), found, unconfirmed, earlier, blocked);
    }

    /** A finding on both claws is drawn on both; one without a zone is drawn nowhere. */
    private static Stream<ClawZone> zones(Finding finding) {
        if (finding.zone().isEmpty()) {
            return Stream.empty();
        }
        int zone = finding.zone().getAsInt();
        if (finding.claw() == Claw.BOTH) {
            return Stream.of(Claw.LATERAL, Claw.MEDIAL)
                    .map(claw -> ClawZone.of(claw, zone))
                    .distinct();
        }
        return Optional.of(ClawZone.of(finding.claw(), zone)).stream();
    }

    /** Ink of a finding: its severity; a stage has the middle ink, because stages are kinds and not degrees. */
    private static int howBad(Finding finding) {
        return finding.severity().orElse(finding.stage().isEmpty() ? 0 : 2);
    }
}

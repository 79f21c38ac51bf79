package levelback.scoring.gait;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import levelback.scoring.value.Leg;

/**
 * The measures of one pass.
 *
 * @param strides in order of their first down
 * @param all over all strides
 * @param byLeg the same by leg; every leg has an entry
 * @param cadencePerMin 60 / mean stride time
 * @param stepTimeS fore, hind
 * @param stepLengthM fore, hind
 * @param broken intervals in which a footfall is missing
 * @param strideLengthSymmetry fore, hind
 * @param stanceTimeSymmetry fore, hind
 * @param trackingUpLeftM hind print minus the fore print that it follows, + is ahead
 * @param trackingUpRightM the same on the right
 * @param support feet on the floor
 * @param phases of LF, RH, RF
 * @param backArch empty without marks
 * @param headBob empty without marks
 * @param turnedRound whether x fell as she walked and the lengths were turned round
 * @param warnings what a person should look at; no figure is altered by it
 */
public record GaitResult(
        List<Stride> strides,
        Means all,
        Map<Leg, Means> byLeg,
        GaitFigure cadencePerMin,
        Pair stepTimeS,
        Pair stepLengthM,
        int broken,
        Pair strideLengthSymmetry,
        Pair stanceTimeSymmetry,
        GaitFigure trackingUpLeftM,
        GaitFigure trackingUpRightM,
        SupportSequence support,
        List<FootPhase> phases,
        Optional<BackArch> backArch,
        Optional<HeadBob> headBob,
        boolean turnedRound,
        List<String> warnings) {

    /** Means over strides. */
    public record Means(
            GaitFigure strideTimeS,
            GaitFigure stanceTimeS,
            GaitFigure swingTimeS,
            GaitFigure dutyFactor,
            GaitFigure strideLengthM,
            GaitFigure speedMPerS) {}

    /** The symmetry of the fore legs and that of the hind legs. */
    public record Pair(Symmetry fore, Symmetry hind) {}

    public GaitResult {
        strides = List.copyOf(strides);
        byLeg = Map.copyOf(byLeg);
        phases = List.copyOf(phases);
        warnings = List.copyOf(warnings);
    }
}

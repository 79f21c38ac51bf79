package levelback.scoring.severity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Held against check-values/agreement: clmm of R's ordinal 2022.11-16, nAGQ = 15. */
class CumulativeLinkModelTest {

    @ParameterizedTest
    @ValueSource(strings = {"panel-complete", "panel-missing"})
    void isTheMaximumLikelihoodOfTheReference(String name) {
        LatentPanel fit = CumulativeLinkModel.fit(PanelFiles.panel(name));
        assertThat(fit.why()).isEmpty();
        close(fit.thresholds(), PanelFiles.figures(name, "/clmm/adaptiveGaussHermite15/thresholds"));
        close(fit.scorers(), PanelFiles.figures(name, "/clmm/adaptiveGaussHermite15/latent"));
        close(fit.standardErrors(), PanelFiles.figures(name, "/clmm/adaptiveGaussHermite15/se"));
        close(List.of(fit.clipSd()), PanelFiles.figures(name, "/clmm/adaptiveGaussHermite15/clipSd"));
        close(List.of(fit.logLik()), PanelFiles.figures(name, "/clmm/adaptiveGaussHermite15/logLik"));
    }

    /** Clips of sd 7: 15 nodes do not do. clmm of R's ordinal 2022.11-16 with nAGQ = 45, gradTol = 1e-7, on the same file. */
    @Test
    void takesMoreNodesWhereClipsDifferWidely() {
        LatentPanel fit = CumulativeLinkModel.fit(PanelFiles.panel("krippendorff-12x4"));
        assertThat(fit.why()).isEmpty();
        close(fit.scorers(), List.of(-1.1699060073, -.5363956663, 1.3404655362, .3658361374));
        close(fit.standardErrors().subList(0, 3), List.of(.8194969, .7273102, .7684146));
        close(List.of(fit.clipSd(), fit.logLik()), List.of(6.9795758164, -39.2939543802));
    }

    @ParameterizedTest
    @ValueSource(strings = {"perfect", "one-level", "one-scorer", "no-overlap"})
    void saysWhyThereIsNoAnswer(String name) {
        assertThat(Severity.of(PanelFiles.panel(name), 0.95)).isNotEmpty().allSatisfy(severity -> {
            assertThat(severity.latent().value()).isEmpty();
            assertThat(severity.latent().why().orElseThrow()).endsWith(".");
        });
    }

    @Test
    void turnsRoundWithTheScaleAndKeepsToTheOrderOfLevelsOnly() {
        Panel panel = PanelFiles.panel("panel-halves");
        LatentPanel fit = CumulativeLinkModel.fit(panel);
        LatentPanel stretched =
                CumulativeLinkModel.fit(relabelled(panel, List.of(0., 1., 4., 9., 16., 17., 30., 99., 100.), false));
        LatentPanel turned = CumulativeLinkModel.fit(relabelled(panel, panel.levels(), true));
        assertThat(fit.why()).isEmpty();
        assertThat(stretched).isEqualTo(fit);
        for (int s = 0; s < 3; s++) {
            assertThat(turned.scorers().get(s)).isCloseTo(-fit.scorers().get(s), within(1e-6));
        }
    }

    @Test
    void saysThatALevelPartsAScorerFromTheOthers() {
        Panel panel = new Panel(
                List.of("low", "high"),
                List.of(0., 1., 2.),
                3,
                new int[] {0, 1, 2, 0, 1, 2},
                new int[] {0, 0, 0, 1, 1, 1},
                new int[] {0, 1, 0, 2, 1, 2});
        assertThat(CumulativeLinkModel.fit(panel).why().orElseThrow()).contains("parted by a level");
    }

    private static Panel relabelled(Panel panel, List<Double> levels, boolean turned) {
        return new Panel(
                panel.scorers(),
                levels,
                panel.clips(),
                IntStream.range(0, panel.size()).map(panel::clip).toArray(),
                IntStream.range(0, panel.size()).map(panel::scorer).toArray(),
                IntStream.range(0, panel.size())
                        .map(i -> turned ? levels.size() - 1 - panel.level(i) : panel.level(i))
                        .toArray());
    }

    private static void close(List<Double> figures, List<Double> expected) {
        assertThat(figures).hasSameSizeAs(expected);
        for (int i = 0; i < figures.size(); i++) {
            assertThat(figures.get(i)).isCloseTo(expected.get(i), within(5e-4));
        }
    }
}

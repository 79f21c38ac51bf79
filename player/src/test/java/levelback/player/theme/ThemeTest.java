package levelback.player.theme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.scene.paint.Color;
import levelback.player.desk.NeedsDesk;
import org.junit.jupiter.api.Test;

class ThemeTest {

    private static final Map<String, Role> BY_TOKEN =
            Stream.of(Role.values()).collect(Collectors.toMap(Role::token, role -> role));

    /** The figures printed in tokens.css, against the contrast ratio of WCAG 2.2 written out here a second time. */
    @Test
    void tokensHaveTheContrastThatTheyPrint() {
        String tokens = Theme.tokens();
        int darkAt = tokens.indexOf("/* dark */");
        int checked = 0;
        Matcher line = Pattern.compile("(?m)^   (\\w+) +on (\\w+) +([0-9.]+)$").matcher(tokens);
        while (line.find()) {
            boolean dark = line.start() > darkAt;
            Color text = Theme.colour(role(line.group(1)), dark);
            Color ground = Theme.colour(role(line.group(2)), dark);
            assertThat(wcag(text, ground))
                    .as("%s on %s, %s", line.group(1), line.group(2), dark ? "dark" : "light")
                    .isCloseTo(Double.parseDouble(line.group(3)), within(0.006));
            checked++;
        }
        assertThat(checked).isEqualTo(78);
    }

    /** WCAG 2.2, 1.4.3: 4.5 for text; 1.4.11: 3 for outlines of controls. */
    @Test
    void textAndOutlinesAreReadableInBothThemes() {
        for (boolean dark : new boolean[] {false, true}) {
            for (Role ground : new Role[] {Role.SHEET, Role.GROUND, Role.INSET, Role.GATE_WASH}) {
                for (Role text : new Role[] {Role.INK, Role.INK2, Role.INK3}) {
                    assertThat(wcag(Theme.colour(text, dark), Theme.colour(ground, dark)))
                            .as("%s on %s", text, ground)
                            .isGreaterThanOrEqualTo(4.5);
                }
                assertThat(wcag(Theme.colour(Role.EDGE, dark), Theme.colour(ground, dark)))
                        .isGreaterThanOrEqualTo(3);
            }
        }
    }

    @Test
    void everyStepOfTheScoreRampCarriesAReadableDigit() {
        for (boolean dark : new boolean[] {false, true}) {
            String css = Theme.colourSheet(dark);
            Matcher ramp = Pattern.compile("-lb-ramp-(\\S+): (#\\S+);").matcher(css);
            int steps = 0;
            while (ramp.find()) {
                Matcher digit = Pattern.compile("-lb-digit-" + ramp.group(1) + ": (#\\S+);")
                        .matcher(css);
                assertThat(digit.find()).isTrue();
                assertThat(wcag(Color.web(digit.group(1)), Color.web(ramp.group(2))))
                        .as("step %s, dark %s", ramp.group(1), dark)
                        .isGreaterThanOrEqualTo(4.5);
                steps++;
            }
            assertThat(steps).isEqualTo(13 + 17 + 25);
        }
    }

    /** Values of CSS Color 4, sample code of section "OKLab": red is (0.62796, 0.22486, 0.12585). */
    @Test
    void oklabOfRedIsAsPublished() {
        assertThat(Oklab.toLab(Color.RED)).containsExactly(new double[] {0.62796, 0.22486, 0.12585}, within(2e-4));
        assertThat(Oklab.toLab(Oklab.mix(Color.RED, Color.BLUE, 0.5))[0])
                .isCloseTo((0.62796 + 0.45201) / 2, within(0.002));
    }

    @Test
    @NeedsDesk
    void digitsOfTheFaceAreEquallyWide() {
        javafx.scene.text.Text ones = new javafx.scene.text.Text("1111111111");
        javafx.scene.text.Text zeros = new javafx.scene.text.Text("0000000000");
        for (Theme.Weight weight : Theme.Weight.values()) {
            ones.setFont(Theme.font(weight, 20));
            zeros.setFont(Theme.font(weight, 20));
            assertThat(ones.getFont().getFamily()).startsWith("Levelback Sans");
            assertThat(ones.getLayoutBounds().getWidth())
                    .isCloseTo(zeros.getLayoutBounds().getWidth(), within(0.01));
        }
    }

    private static Role role(String token) {
        return java.util.Objects.requireNonNull(BY_TOKEN.get(token.toLowerCase(Locale.ROOT)), token);
    }

    private static double wcag(Color one, Color other) {
        double a = luminance(one) + 0.05;
        double b = luminance(other) + 0.05;
        return a > b ? a / b : b / a;
    }

    private static double luminance(Color c) {
        double sum = 0;
        double[] weights = {0.2126, 0.7152, 0.0722};
        double[] parts = {c.getRed(), c.getGreen(), c.getBlue()};
        for (int i = 0; i < 3; i++) {
            // 0.03928 is the threshold as WCAG prints it; no 8-bit value lies between it and sRGB's 0.04045.
            sum += weights[i] * (parts[i] <= 0.03928 ? parts[i] / 12.92 : Math.pow((parts[i] + 0.055) / 1.055, 2.4));
        }
        return sum;
    }
}

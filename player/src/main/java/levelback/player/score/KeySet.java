package levelback.player.score;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import levelback.scoring.scale.Sign;
import levelback.scoring.value.Leg;

/**
 * Letters go by their place on the board: E R over D F are the four feet seen from above, the row below is signs. Digits go
 * by key or character. Three boards are known; the locale chooses.
 */
enum KeySet {
    QWERTY("Z X C V B N M COMMA", "ZXCVBNM,"),
    QWERTZ("Y X C V B N M COMMA", "YXCVBNM,"),
    AZERTY("W X C V B N COMMA SEMICOLON", "WXCVBN,;");

    private static final List<Leg> LEGS = List.of(Leg.LF, Leg.RF, Leg.LH, Leg.RH);
    private static final List<KeyCode> LEG_CODES = List.of(KeyCode.E, KeyCode.R, KeyCode.D, KeyCode.F);

    /** Names of key codes in the order of the signs, and what is printed on them. */
    private final String signCodes;

    private final String signCaps;

    KeySet(String signCodes, String signCaps) {
        this.signCodes = signCodes;
        this.signCaps = signCaps;
    }

    static KeySet of(Locale locale) {
        String country = locale.getCountry();
        return switch (locale.getLanguage()) {
            case "de", "cs", "sk", "hu", "sl", "hr" -> QWERTZ;
            case "fr" -> country.equals("CA") ? QWERTY : country.equals("CH") ? QWERTZ : AZERTY;
            default -> QWERTY;
        };
    }

    Optional<Sign> sign(KeyCode code) {
        int at = List.of(signCodes.split(" ", -1)).indexOf(code.name());
        return at < 0 ? Optional.empty() : Optional.of(ScoreViewModel.signs().get(at));
    }

    String cap(Sign sign) {
        int at = ScoreViewModel.signs().indexOf(sign);
        return signCaps.substring(at, at + 1);
    }

    static Optional<Leg> leg(KeyCode code) {
        int at = LEG_CODES.indexOf(code);
        return at < 0 ? Optional.empty() : Optional.of(LEGS.get(at));
    }

    static String cap(Leg leg) {
        return LEG_CODES.get(LEGS.indexOf(leg)).getName();
    }

    /** The digit of a key, by the key or by the character on it. */
    static OptionalInt digit(KeyEvent event) {
        if (event.getCode().isDigitKey()) {
            String name = event.getCode().getName();
            return OptionalInt.of(name.charAt(name.length() - 1) - '0');
        }
        String text = event.getText();
        return text.length() == 1 && text.charAt(0) >= '0' && text.charAt(0) <= '9'
                ? OptionalInt.of(text.charAt(0) - '0')
                : OptionalInt.empty();
    }
}

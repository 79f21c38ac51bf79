package levelback.scoring.foot;

import java.util.Locale;
import java.util.Optional;

/**
 * Stages of digital dermatitis, in our own words.
 *
 * <p>References: Döpfer et al. 1997; Berry et al. 2012; the set of painful stages as in the table of a transmission
 * model in Vet Res 2020.
 */
public enum DdStage {
    M0("M0", "normal skin", false),
    M1("M1", "early, under 2 cm, moist, red and grey", true),
    M2("M2", "ulcer, active, usually over 2 cm, painful", true),
    M3("M3", "healing, dry dark scab after treatment", false),
    M4("M4", "chronic, thick or proliferating skin", false),
    M4_1("M4.1", "chronic, with a small active spot in it", true);

    private final String key;
    private final String meaning;
    private final boolean active;

    DdStage(String key, String meaning, boolean active) {
        this.key = key;
        this.meaning = meaning;
        this.active = active;
    }

    /** The name in files, such as {@code M4.1}. */
    public String key() {
        return key;
    }

    /** What it looks like, in a few words. */
    public String meaning() {
        return meaning;
    }

    /** Whether it is active and painful: M1, M2 and M4.1. */
    public boolean isActive() {
        return active;
    }

    /** Reads a stage as people write it, {@code m4.1} or {@code M4,1} included; empty where it is none. */
    public static Optional<DdStage> of(String text) {
        String wanted = text.strip().toUpperCase(Locale.ROOT).replace(',', '.');
        for (DdStage stage : values()) {
            if (stage.key.equals(wanted)) {
                return Optional.of(stage);
            }
        }
        return Optional.empty();
    }
}

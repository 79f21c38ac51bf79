package levelback.scoring.identity;

import java.time.Instant;

/**
 * A pass as the camera's clock has it.
 *
 * @param pass its name
 * @param from when any part of her came into the picture
 * @param to when the last part of her left it, not before {@code from}
 */
public record PassSpan(String pass, Instant from, Instant to) {

    /** @throws IllegalArgumentException if it ends before it begins */
    public PassSpan {
        if (to.isBefore(from)) {
            throw new IllegalArgumentException("pass " + pass + " ends before it begins: " + from + " to " + to);
        }
    }
}

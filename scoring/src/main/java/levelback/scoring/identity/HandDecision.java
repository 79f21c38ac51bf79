package levelback.scoring.identity;

import java.util.Optional;

/**
 * What a hand has settled about one pass.
 *
 * @param pass its name
 * @param tag whose it is; empty where she walked past unread
 */
public record HandDecision(String pass, Optional<String> tag) {}

package levelback.store.book.internal;

import java.util.List;
import java.util.Optional;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.ScaleLevel;

/** The published scales that a book can use before it holds them. */
final class PublishedScales {

    private PublishedScales() {}

    static Optional<GaitScale> byId(String id) {
        return switch (id) {
            case "mobility-0-3" ->
                Optional.of(new GaitScale(
                        id,
                        id,
                        "",
                        List.of(
                                new ScaleLevel(0, ""),
                                new ScaleLevel(1, ""),
                                new ScaleLevel(2, ""),
                                new ScaleLevel(3, "")),
                        2,
                        3,
                        1));
            case "gait-1-5" ->
                Optional.of(new GaitScale(
                        id,
                        id,
                        "",
                        List.of(
                                new ScaleLevel(1, ""),
                                new ScaleLevel(2, ""),
                                new ScaleLevel(3, ""),
                                new ScaleLevel(4, ""),
                                new ScaleLevel(5, "")),
                        3,
                        4,
                        1));
            default -> Optional.empty();
        };
    }
}

package levelback.scoring.agreement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class RatingsTest {

    @Test
    void scorersAndClipsStandByCodePointAndLevelsAscend() {
        Ratings ratings = Ratings.of(List.of(
                Rating.of("b", "z", 2.5),
                Rating.of("B", "\uD83D\uDC04", 1),
                Rating.of("a", "\uFF21", -0.0),
                Rating.of("a", "z", 0)));
        assertThat(ratings.scorers()).containsExactly("B", "a", "b");
        assertThat(ratings.clips()).containsExactly("z", "\uFF21", "\uD83D\uDC04");
        assertThat(ratings.levels()).containsExactly(0, 1, 2.5);
        Session first = ratings.session(1);
        assertThat(first.start(0)).isZero();
        assertThat(first.end(0)).isEqualTo(2);
        assertThat(first.scorer(0)).isEqualTo(1);
        assertThat(first.level(0)).isZero();
        assertThat(first.scorer(1)).isEqualTo(2);
        assertThat(first.level(1)).isEqualTo(2);
        assertThat(ratings.session(2).scores()).isZero();
        assertThat(ratings.session(2).clips()).isEqualTo(3);
    }

    @Test
    void aMissingCellCountsItsClipAndScorerButNoScore() {
        Ratings ratings = Ratings.of(
                List.of(Rating.of("a", "x", 1), new Rating("b", "y", OptionalDouble.empty(), Optional.empty(), 1)));
        assertThat(ratings.scorers()).containsExactly("a", "b");
        assertThat(ratings.clips()).containsExactly("x", "y");
        assertThat(ratings.scored()).isEqualTo(1);
    }

    @Test
    void clipsOfOneCowShareAClusterAndOthersStandAlone() {
        Ratings ratings = Ratings.of(List.of(
                new Rating("a", "x", OptionalDouble.of(1), Optional.of("7"), 1),
                Rating.of("b", "x", 1),
                Rating.of("a", "y", 1),
                new Rating("a", "z", OptionalDouble.of(1), Optional.of("7"), 1)));
        assertThat(ratings.byCow()).isTrue();
        assertThat(ratings.cluster(0)).isEqualTo(ratings.cluster(2)).isNotEqualTo(ratings.cluster(1));
        assertThat(ratings.clusters()).isEqualTo(2);
    }

    @Test
    void refusesAScoreGivenTwiceAndAScoreOffTheScale() {
        assertThatThrownBy(() -> Ratings.of(List.of(Rating.of("a", "x", 1), Rating.of("a", "x", 1))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("twice");
        Ratings.Builder builder = new Ratings.Builder();
        builder.add("a", "x", 4, "", 1);
        assertThatThrownBy(() -> builder.build(new double[] {0, 1, 2, 3})).hasMessageContaining("no level");
        assertThat(builder.build(new double[] {4, 0}).levels()).containsExactly(0, 4);
    }
}

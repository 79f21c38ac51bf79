package levelback.scoring.proof;

import java.time.LocalDate;
import java.util.Optional;
import levelback.scoring.value.Leg;

/**
 * One score of one cow on one day.
 *
 * @param cow her number, as text
 * @param date day of the score
 * @param score the level given
 * @param scorer who gave it; empty text where the file does not say
 * @param leg the leg scored, where the scorer named one
 */
public record ScoreRow(String cow, LocalDate date, double score, String scorer, Optional<Leg> leg) {}

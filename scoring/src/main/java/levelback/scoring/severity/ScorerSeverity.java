package levelback.scoring.severity;

import levelback.scoring.value.Estimate;

/**
 * How much harder one scorer is than the panel; positive: gives higher scores.
 *
 * @param scorer her name
 * @param shift in steps of the scale, see {@link AdditiveShift}
 * @param latent on the logit scale, see {@link CumulativeLinkModel}
 */
public record ScorerSeverity(String scorer, Estimate shift, Estimate latent) {}

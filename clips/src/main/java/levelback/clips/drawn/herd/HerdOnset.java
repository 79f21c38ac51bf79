package levelback.clips.drawn.herd;

import java.time.LocalDate;
import levelback.scoring.value.Leg;

/**
 * A lesion that began.
 *
 * @param cow her number
 * @param date the day it began
 * @param leg the leg
 * @param claw {@code lateral} or {@code medial}: the claw it was drawn for, also where the lesion is one of the skin
 * @param code ICAR claw-health code
 */
public record HerdOnset(String cow, LocalDate date, Leg leg, String claw, String code) {}

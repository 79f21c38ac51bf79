package levelback.store.trim;

import java.time.LocalDate;
import java.util.Optional;
import levelback.scoring.foot.Claw;
import levelback.scoring.value.Leg;
import levelback.store.herd.CowId;

/** A block on a claw, from the day it went on to the day it came off. */
public record Block(CowId cow, Leg leg, Claw claw, LocalDate on, Optional<LocalDate> off) {}

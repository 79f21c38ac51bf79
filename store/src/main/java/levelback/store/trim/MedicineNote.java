package levelback.store.trim;

/** What was given, as typed from the label or as the vet said; Levelback adds nothing and checks nothing. */
public record MedicineNote(
        String product,
        String givenBy,
        String milkWithheldUntil,
        String meatWithheldUntil,
        String batch,
        String givenAt,
        String doseAsGiven,
        String prescribedBy) {}

package levelback.store.herd;

/** Someone who scores or trims. */
public record Person(PersonId id, String name, String initials) {}

package levelback.player.work;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import levelback.store.book.Book;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;

/** People by the name that a table gives; one that the book does not have yet is added. */
final class PeopleByName {

    /** Who scored where neither the table nor the person at the desk says. */
    static final String NOT_SAID = "not said";

    private final Book book;
    private final Map<String, PersonId> people = new HashMap<>();

    PeopleByName(Book book) {
        this.book = book;
        for (Person person : book.herd().people()) {
            people.putIfAbsent(key(person.name()), person.id());
        }
    }

    PersonId of(String name) {
        String said = name.isBlank() ? NOT_SAID : name.strip();
        return people.computeIfAbsent(key(said), k -> {
            Person person = new Person(PersonId.fresh(), said, initials(said));
            book.herd().put(person);
            return person.id();
        });
    }

    private static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    private static String initials(String name) {
        StringBuilder initials = new StringBuilder();
        for (String word : Pattern.compile("\\s+").splitAsStream(name).toList()) {
            initials.appendCodePoint(word.codePointAt(0));
        }
        return initials.toString().toUpperCase(Locale.ROOT);
    }
}

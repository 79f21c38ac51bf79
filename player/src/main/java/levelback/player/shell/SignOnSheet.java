package levelback.player.shell;

import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import levelback.player.theme.Keys;
import levelback.store.herd.Person;

/** Asks who is scoring: someone of the book, or someone new with name and initials. */
final class SignOnSheet extends Sheet {

    private final TextField name = new TextField();
    private final TextField initials = new TextField();

    /**
     * @param people of the book
     * @param known takes one of them
     * @param fresh takes name and initials of someone new
     */
    SignOnSheet(List<Person> people, boolean mayBeClosed, Consumer<Person> known, BiConsumer<String, String> fresh) {
        super(Words.of("who.title"), Words.of("who.how"), mayBeClosed);
        for (Person person : people) {
            Button key = Keys.button(person.name(), person.initials());
            key.setMaxWidth(Double.MAX_VALUE);
            key.setOnAction(e -> known.accept(person));
            getChildren().add(key);
        }
        name.setId("who-name");
        initials.setId("who-initials");
        initials.setMaxWidth(90);
        field(people.isEmpty() ? Words.of("who.name") : Words.of("who.new"), name);
        field(Words.of("who.initials"), initials);
        name.textProperty().addListener((seen, was, now) -> {
            if (initials.getText().isEmpty() || initials.getText().equals(of(was))) {
                initials.setText(of(now));
            }
        });
        Button go = Keys.main(Words.of("who.go"), "Enter");
        go.setId("who-go");
        Runnable take = () -> {
            String wantedName = name.getText().strip();
            String wantedInitials = initials.getText().strip();
            if (wantedName.isEmpty() || wantedInitials.isEmpty()) {
                wrong(Words.of("who.missing"));
                return;
            }
            Optional<Person> taken = people.stream()
                    .filter(one -> one.initials().equalsIgnoreCase(wantedInitials))
                    .findFirst();
            if (taken.isPresent()) {
                wrong(Words.of("who.taken", wantedInitials, taken.get().name()));
                return;
            }
            fresh.accept(wantedName, wantedInitials);
        };
        go.setOnAction(e -> take.run());
        name.setOnAction(e -> take.run());
        initials.setOnAction(e -> take.run());
        keys(go);
    }

    @Override
    Node firstField() {
        return name;
    }

    /** First letters of the words of a name. */
    static String of(String name) {
        StringBuilder letters = new StringBuilder();
        for (String word : name.strip().split("[\\s-]+", -1)) {
            if (!word.isEmpty()) {
                letters.appendCodePoint(Character.toUpperCase(word.codePointAt(0)));
            }
        }
        return letters.toString();
    }
}

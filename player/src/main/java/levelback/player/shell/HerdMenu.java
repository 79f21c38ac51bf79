package levelback.player.shell;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Side;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.layout.Region;
import levelback.store.herd.Herd;
import levelback.store.herd.Visit;

/** What the herd block opens: visits, herds, settings, people, cows, books. */
final class HerdMenu {

    private static final int VISITS_SHOWN = 14;

    private final DeskShell desk;
    private final ContextMenu menu = new ContextMenu();

    HerdMenu(DeskShell desk) {
        this.desk = desk;
    }

    void show(Region under) {
        menu.getItems().setAll(items());
        menu.show(under, Side.BOTTOM, 8, 0);
    }

    List<MenuItem> items() {
        Situation now = desk.now();
        List<MenuItem> items = new ArrayList<>();
        List<Visit> newestFirst = new ArrayList<>(now.visits());
        Collections.reverse(newestFirst);
        Menu visits = new Menu(Words.of("menu.visit"));
        for (Visit visit : newestFirst.stream().limit(VISITS_SHOWN).toList()) {
            String mark = now.visit().filter(visit::equals).isPresent() ? "✓ " : "";
            visits.getItems()
                    .add(item(
                            mark + Words.of("herd.visit", visit.ordinal(), Words.day(visit.date())),
                            () -> desk.show(visit)));
        }
        visits.setDisable(visits.getItems().isEmpty());
        Menu herds = new Menu(Words.of("menu.herd"));
        for (Herd herd : now.herds()) {
            String mark = now.herd().filter(herd::equals).isPresent() ? "✓ " : "";
            herds.getItems().add(item(mark + herd.name(), () -> desk.showHerd(herd)));
        }
        if (!herds.getItems().isEmpty()) {
            herds.getItems().add(new SeparatorMenuItem());
        }
        herds.getItems().add(item(Words.of("menu.newHerd"), () -> desk.askHerd(Optional.empty())));
        MenuItem settings = item(Words.of("menu.settings"), () -> desk.askHerd(desk.herd()));
        settings.setDisable(now.herd().isEmpty());
        items.add(visits);
        items.add(herds);
        items.add(settings);
        items.add(new SeparatorMenuItem());
        items.add(item(Words.of("menu.people"), () -> desk.askWho(true)));
        items.add(new SeparatorMenuItem());
        items.add(item(Words.of("menu.recordings"), desk::chooseRecordings));
        items.add(item(Words.of("menu.cows"), desk::importCows));
        items.add(new SeparatorMenuItem());
        items.add(item(Words.of("menu.openBook"), desk::askOpenBook));
        items.add(item(Words.of("menu.newBook"), desk::askNewBook));
        return items;
    }

    private static MenuItem item(String text, Runnable action) {
        MenuItem item = new MenuItem(text);
        item.setOnAction(e -> action.run());
        return item;
    }
}

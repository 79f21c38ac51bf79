package levelback.player.shell;

import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.util.StringConverter;
import levelback.player.theme.Keys;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.GaitScales;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;

/** Asks for a herd's name, scale, time zone and cows in milk. */
final class HerdSheet extends Sheet {

    private final TextField name = new TextField();

    /** @param before the herd to change; empty for a new one */
    HerdSheet(Optional<Herd> before, Consumer<Herd> take) {
        super(Words.of(before.isPresent() ? "settings.title" : "settings.new"), "", true);
        name.setText(before.map(Herd::name).orElse(""));
        name.setId("herd-name");
        ChoiceBox<GaitScale> scale = new ChoiceBox<>();
        scale.getItems().setAll(GaitScales.all());
        scale.setConverter(new StringConverter<>() {
            @Override
            public String toString(GaitScale one) {
                return one == null ? "" : one.name();
            }

            @Override
            public GaitScale fromString(String text) {
                throw new UnsupportedOperationException("a scale is chosen, not typed");
            }
        });
        scale.setValue(before.flatMap(herd -> GaitScales.byId(herd.scaleId()))
                .orElse(scale.getItems().get(0)));
        scale.setId("herd-scale");
        ComboBox<String> zone = new ComboBox<>();
        zone.getItems().setAll(ZoneId.getAvailableZoneIds().stream().sorted().toList());
        zone.setEditable(true);
        zone.setValue(before.map(Herd::zone).orElse(ZoneId.systemDefault()).getId());
        zone.setId("herd-zone");
        TextField cows = new TextField();
        cows.setMaxWidth(120);
        cows.setId("herd-cows");
        before.map(Herd::cowsInMilk).filter(OptionalInt::isPresent).ifPresent(n -> cows.setText("" + n.getAsInt()));
        field(Words.of("settings.name"), name);
        field(Words.of("settings.scale"), scale);
        field(Words.of("settings.zone"), zone);
        field(Words.of("settings.cows"), cows);
        Button go = Keys.main(Words.of("settings.go"), "Enter");
        go.setId("herd-go");
        Runnable keep = () -> {
            String wanted = name.getText().strip();
            if (wanted.isEmpty()) {
                wrong(Words.of("settings.missing"));
                return;
            }
            OptionalInt inMilk;
            try {
                String typed = cows.getText().strip();
                inMilk = typed.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(typed));
            } catch (NumberFormatException notANumber) {
                wrong(Words.of("settings.badCows"));
                return;
            }
            if (inMilk.orElse(1) < 1) {
                wrong(Words.of("settings.badCows"));
                return;
            }
            String inEditor = zone.getEditor().getText().strip();
            String typedZone = inEditor.isEmpty() && zone.getValue() != null ? zone.getValue() : inEditor;
            if (!ZoneId.getAvailableZoneIds().contains(typedZone)) {
                wrong(Words.of("settings.badZone", typedZone));
                return;
            }
            take.accept(new Herd(
                    before.map(Herd::id).orElseGet(HerdId::fresh),
                    wanted,
                    ZoneId.of(typedZone),
                    scale.getValue().id(),
                    inMilk));
        };
        go.setOnAction(e -> keep.run());
        name.setOnAction(e -> keep.run());
        cows.setOnAction(e -> keep.run());
        keys(go);
    }

    @Override
    Node firstField() {
        return name;
    }
}

package levelback.player.score;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import levelback.player.score.ScoreReader.PassSheet;
import levelback.player.theme.Style;
import levelback.store.herd.Cow;
import levelback.store.herd.Visit;
import levelback.store.lane.Recording;

/** Over the picture: who she is, and which pass. Where nobody knows who she is, it takes her number. */
final class HeadLine extends HBox {

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofLocalizedTime(FormatStyle.MEDIUM);

    private final Label number = Parts.label("", Style.COW_PAGE);
    private final Label details = Parts.label("", Style.SECOND);
    private final TextField typed = new TextField();
    private final Label asks = Parts.label("", Style.STRONG);
    private final Button name;
    private final Label pass = Parts.label("", Style.SECOND);
    private boolean asked;

    HeadLine(ScoreViewModel model) {
        super(12);

        setAlignment(Pos.CENTER_LEFT);
        setPadding(new Insets(0, 12, 0, 12));
        setMinHeight(42);
        setPrefHeight(42);
        getStyleClass().add(Style.SHEET);
        number.setId("score-cow");
        details.setMinWidth(0);
        asks.setMinWidth(Region.USE_PREF_SIZE);
        pass.setMinWidth(Region.USE_PREF_SIZE);
        typed.setPromptText(Words.of("who.prompt"));
        typed.setId("score-who");
        typed.setPrefWidth(120);
        typed.setOnAction(e -> {
            String text = typed.getText();
            typed.clear();
            model.number(text);
        });
        typed.addEventFilter(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
                typed.clear();
                model.ask(false);
                e.consume();
            }
        });
        name = Parts.key(Words.of("who.name"), "/", () -> model.ask(true));
    }

    void show(ScoreViewModel.State.OnPass on, ZoneId zone) {
        PassSheet sheet = on.sheet();
        Optional<Cow> cow = sheet.cow();
        number.setText(cow.map(Cow::number).orElse(Words.of("who.unknown")));
        details.setText(cow.map(c -> details(c, on.queue().visit())).orElse(""));
        pass.setText(passText(sheet, zone));
        asks.setText(Words.of(cow.isEmpty() ? "who.ask" : "who.change"));
        number.setMinWidth(Region.USE_PREF_SIZE);
        getChildren().setAll(number);
        if (on.askNumber()) {
            getChildren().addAll(asks, typed);
        } else {
            getChildren().add(details);
            if (cow.isEmpty()) {
                getChildren().add(name);
            }
        }
        getChildren().addAll(Parts.space(), pass);
        if (on.askNumber() && !asked) {
            Platform.runLater(typed::requestFocus);
        }
        asked = on.askNumber();
    }

    void show(ScoreViewModel.State.Marking m) {
        number.setMinWidth(0);
        number.setText(String.valueOf(m.sheet().recording().file().getFileName()));
        details.setText(Words.of("mark.whole"));
        pass.setText(Words.of("mark.count", m.sheet().passes().size()));
        getChildren().setAll(number, details, Parts.space(), pass);
    }

    private static String details(Cow cow, Optional<Visit> visit) {
        List<String> parts = new ArrayList<>();
        cow.name().ifPresent(parts::add);
        if (cow.parity().isPresent()) {
            parts.add(Words.of("lactation", cow.parity().getAsInt()));
        }
        if (cow.calving().isPresent() && visit.isPresent()) {
            long days = ChronoUnit.DAYS.between(cow.calving().get(), visit.get().date());
            if (days >= 0) {
                parts.add(Words.of("daysInMilk", Long.toString(days)));
            }
        }
        return String.join(" · ", parts);
    }

    private static String passText(PassSheet sheet, ZoneId zone) {
        List<String> parts = new ArrayList<>();
        parts.add(Words.of("pass.n", Integer.toString(sheet.ordinal())));
        Recording recording = sheet.recording();
        recording.recordedAt().ifPresent(at -> {
            Instant passed = at.plus(sheet.pass().from().timeUs() - recording.startUs(), ChronoUnit.MICROS);
            parts.add(CLOCK.format(passed.atZone(zone)));
        });
        parts.add(Words.of("direction." + sheet.pass().direction().key()));
        parts.removeIf(String::isEmpty);
        return String.join(" · ", parts);
    }
}

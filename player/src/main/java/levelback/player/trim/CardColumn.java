package levelback.player.trim;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.ErrorBar;
import levelback.player.theme.Style;
import levelback.scoring.foot.DdStage;
import levelback.scoring.foot.FootAction;
import levelback.store.trim.FootCard;
import levelback.store.trim.MedicineNote;

/** The right column: what is there, how bad, what was done, the medicine note, when to look again. */
final class CardColumn extends VBox {

    private static final int ACROSS = 5;
    /** Keys of the codes that are usual in a zone are few and large. */
    private static final int USUAL_ACROSS = 4;

    private static final List<FootAction> DONE = List.of(
            FootAction.TRIMMED,
            FootAction.CLAW_LOWERED,
            FootAction.LOOSE_HORN_OFF,
            FootAction.DISHED,
            FootAction.FOREIGN_BODY_OUT,
            FootAction.BLOCK_INNER,
            FootAction.BLOCK_OUTER,
            FootAction.BLOCK_OFF,
            FootAction.BANDAGE);

    private final TrimViewModel model;
    private final TrimWords words;
    private final Label where = CowColumn.styled(new Label(), Style.SECOND);
    private final Label letters = CowColumn.styled(new Label(), "trim-letters");
    private final VBox lesions = new VBox(4);
    private final Map<String, TrimKey> lesionKeys = new LinkedHashMap<>();
    private final Region lesionsGap = new Region();
    private final GridPane howBad = grid();
    private final List<TrimKey> severities = new ArrayList<>();
    private final List<TrimKey> stages = new ArrayList<>();
    private final TrimKey noLesion;
    private final Map<FootAction, TrimKey> done = new EnumMap<>(FootAction.class);
    private final VBox medicine = new VBox(4);
    private final List<TextField> medicineFields = new ArrayList<>();
    private final TrimKey medicineKey;
    private final TextField lookAgain = new TextField();
    private final TrimKey usualDay;
    private final Label lookNote = CowColumn.styled(new Label(), Style.SMALL, Style.SECOND);
    private final VBox problem = new VBox();
    private boolean medicineOpen;
    private boolean tight;
    private Optional<LocalDate> dayShown = Optional.empty();
    private MedicineNote noteShown = TrimViewModel.NOTHING_GIVEN;
    private Object ofWhom = "";

    CardColumn(TrimViewModel model, TrimWords words, Runnable askPhoto) {
        this.model = model;
        this.words = words;
        getStyleClass().addAll("trim-column", Style.LEFT_RULE);
        setSpacing(4);

        Label head = CowColumn.styled(new Label(words.text("what")), Style.HEAD);
        Region gap = new Region();
        HBox.setHgrow(gap, Priority.ALWAYS);
        HBox headRow = new HBox(8, head, where, gap, letters);
        headRow.setAlignment(Pos.BASELINE_LEFT);

        for (String code : LesionKeys.allWithFiner()) {
            TrimKey key = new TrimKey(code, words.lesionName(code), "", () -> model.code(code)).styled("trim-lesion");
            key.setId("trim-code-" + code);
            lesionKeys.put(code, key);
        }
        for (int level = 1; level <= 3; level++) {
            int said = level;
            TrimKey key = new TrimKey(level + " " + words.text("howBad." + level), () -> model.howBad(said))
                    .with(new SeverityBars(level, 4))
                    .styled("trim-narrow");
            key.setId("trim-howBad-" + level);
            severities.add(key);
        }
        for (int i = 0; i < TrimViewModel.STAGES.size(); i++) {
            int key = i + 1;
            String stage = TrimViewModel.STAGES.get(i);
            String meaning = java.util.Arrays.stream(DdStage.values())
                    .filter(s -> s.key().equals(stage))
                    .map(s -> words.text("stage." + s.name()))
                    .findFirst()
                    .orElse("");
            TrimKey made = new TrimKey(stage, meaning, "", () -> model.howBad(key)).styled("trim-lesion");
            made.setId("trim-stage-" + stage);
            stages.add(made);
        }
        noLesion = new TrimKey(words.text("noLesion"), words.text("noLesion.means"), "", model::noLesion);
        noLesion.setId("trim-noLesion");

        GridPane doneGrid = grid();
        for (int i = 0; i < DONE.size(); i++) {
            FootAction action = DONE.get(i);
            TrimKey key = new TrimKey(words.action(action), () -> model.action(action)).styled("trim-narrow");
            key.setId("trim-done-" + action.key());
            done.put(action, key);
            doneGrid.add(key, i % ACROSS, i / ACROSS);
        }
        TrimKey photo = new TrimKey(words.text("photo"), askPhoto);
        photo.setId("trim-photo");
        doneGrid.add(photo, DONE.size() % ACROSS, DONE.size() / ACROSS);

        medicine();
        medicineKey = new TrimKey(words.text("medicine.open"), "", "Alt M", this::toggleMedicine);
        medicineKey.setId("trim-medicine");

        lookAgain.getStyleClass().add("trim-field");
        lookAgain.setId("trim-lookAgain");
        lookAgain.setPromptText(words.text("look.prompt"));
        lookAgain.setPrefWidth(134);
        lookAgain.setMinWidth(134);
        lookAgain.setOnAction(e -> readLookAgain());
        lookAgain.focusedProperty().addListener((o, was, is) -> {
            if (!is) {
                readLookAgain();
            }
        });
        usualDay = new TrimKey(words.text("look.usual"), "", "", model::lookAgainUsual);
        usualDay.setId("trim-usualDay");
        usualDay.setMinWidth(Region.USE_PREF_SIZE);
        VBox look = new VBox(
                2,
                CowColumn.styled(new Label(words.text("look")), Style.SMALL, Style.SECOND),
                new HBox(6, lookAgain, usualDay));
        look.setMinWidth(Region.USE_PREF_SIZE);
        lookNote.setWrapText(true);
        HBox.setHgrow(lookNote, Priority.ALWAYS);
        TrimKey nextFoot = new TrimKey(words.text("nextFoot"), "", "+", model::nextFoot);
        nextFoot.setId("trim-nextFoot");
        nextFoot.setMinWidth(Region.USE_PREF_SIZE);
        TrimKey cowDone = new TrimKey(words.text("cowDone"), "", "Enter", model::cowDone).styled(Style.KEY_MAIN);
        cowDone.setId("trim-cowDone");
        cowDone.setMinWidth(Region.USE_PREF_SIZE);
        HBox.setHgrow(cowDone, Priority.ALWAYS);
        HBox bottom = new HBox(8, look, lookNote, nextFoot, cowDone);
        bottom.setAlignment(Pos.BOTTOM_LEFT);
        bottom.setFillHeight(false);

        VBox.setVgrow(lesionsGap, Priority.SOMETIMES);
        Region rule = CowColumn.styled(new Region(), Style.RULE);
        getChildren()
                .setAll(
                        headRow,
                        lesions,
                        CowColumn.styled(new Label(words.text("howBad")), "trim-sub"),
                        howBad,
                        CowColumn.styled(new Label(words.text("done")), "trim-sub"),
                        doneGrid,
                        medicine,
                        medicineKey,
                        lesionsGap,
                        problem,
                        rule,
                        bottom);
        for (Node node : getChildren()) {
            if (node instanceof Region region && node != lesionsGap && node != rule) {
                region.setMinHeight(Region.USE_PREF_SIZE);
            }
        }
    }

    private static GridPane grid() {
        return grid(ACROSS);
    }

    private static GridPane grid(int across) {
        GridPane grid = new GridPane();
        grid.setHgap(6);
        grid.setVgap(4);
        for (int i = 0; i < across; i++) {
            ColumnConstraints column = new ColumnConstraints();
            column.setPercentWidth(100.0 / across);
            column.setFillWidth(true);
            grid.getColumnConstraints().add(column);
        }
        return grid;
    }

    private void medicine() {
        Label head = CowColumn.styled(new Label(words.text("medicine")), "trim-sub");
        Region gap = new Region();
        HBox.setHgrow(gap, Priority.ALWAYS);
        Label means = CowColumn.styled(new Label(words.text("medicine.means")), Style.SMALL, Style.SECOND);
        GridPane grid = new GridPane();
        grid.setHgap(6);
        grid.setVgap(2);
        String[] names = {"product", "givenBy", "milk", "meat", "batch", "givenAt", "dose", "prescribedBy"};
        for (int i = 0; i < names.length; i++) {
            Label label = CowColumn.styled(new Label(words.text("medicine." + names[i])), Style.SMALL, Style.SECOND);
            label.setMinWidth(0);
            TextField field = new TextField();
            field.getStyleClass().add("trim-field");
            field.setId("trim-medicine-" + names[i]);
            field.setAccessibleText(words.text("medicine." + names[i]));
            field.setMinWidth(44);
            field.setOnAction(e -> writeMedicine());
            field.focusedProperty().addListener((o, was, is) -> {
                if (!is) {
                    writeMedicine();
                }
            });
            medicineFields.add(field);
            grid.add(label, i % 4, i / 4 * 2);
            grid.add(field, i % 4, i / 4 * 2 + 1);
            if (i < 4) {
                ColumnConstraints column = new ColumnConstraints();
                column.setPercentWidth(25);
                grid.getColumnConstraints().add(column);
            }
        }
        medicine.getChildren().setAll(new HBox(8, head, gap, means), grid);
    }

    private void writeMedicine() {
        List<String> t = medicineFields.stream().map(TextField::getText).toList();
        MedicineNote note =
                new MedicineNote(t.get(0), t.get(1), t.get(2), t.get(3), t.get(4), t.get(5), t.get(6), t.get(7));
        if (!note.equals(noteShown)) {
            noteShown = note;
            model.medicine(note);
        }
    }

    /** Goes to the first field of the medicine note. */
    void toMedicine() {
        if (tight && !medicineOpen) {
            toggleMedicine();
        }
        medicineFields.get(0).requestFocus();
    }

    void toLookAgain() {
        lookAgain.requestFocus();
    }

    private void toggleMedicine() {
        medicineOpen = !medicineOpen;
        model.chute().ifPresent(now -> show(now, tight));
    }

    private void readLookAgain() {
        problem.getChildren().clear();
        String typed = lookAgain.getText().strip();
        if (typed.equals(dayShown.map(words::day).orElse(""))) {
            return;
        }
        if (typed.isEmpty()) {
            model.lookAgain(Optional.empty());
            return;
        }
        Optional<LocalDate> day = words.readDay(typed, model.day());
        if (day.isEmpty()) {
            problem.getChildren().setAll(new ErrorBar(words.text("look.unread", typed)));
        } else {
            model.lookAgain(day);
        }
    }

    void show(TrimState.InChute now, boolean tightNow) {
        tight = tightNow;
        Entry entry = now.entry();
        Optional<ClawZone> chosen = entry.chosen();
        where.setText(chosen.map(z -> words.text("what.at", words.claw(z.claw()), z.zone()))
                .orElse(words.text("what.claw", words.claw(entry.claw()))));
        letters.setText(entry.letters().isEmpty() ? "" : entry.letters() + " …");
        boolean swap = tight && medicineOpen;
        CowColumn.show(lesions, !swap);
        CowColumn.show(medicine, !tight || medicineOpen);
        CowColumn.show(medicineKey, tight);
        medicineKey.say(words.text(medicineOpen ? "medicine.close" : "medicine.open"), "");
        lesions(entry, chosen);
        howBad(now);
        actions(now);
        medicineNote(now);
        look(now);
    }

    private void lesions(Entry entry, Optional<ClawZone> chosen) {
        lesions.getChildren().clear();
        String written = entry.line().map(Entry.Line::lesion).orElse("");
        lesionKeys.forEach((code, key) -> {
            key.chosen(code.equals(written));
            key.getStyleClass().remove("trim-lesion-usual");
        });
        OptionalInt zone = chosen.map(z -> OptionalInt.of(z.zone())).orElse(OptionalInt.empty());
        boolean byZone = zone.isPresent() && entry.more() == 0 && (entry.line().isEmpty() || entry.changing());
        if (byZone) {
            List<String> usual = LesionKeys.usualIn(zone.getAsInt());
            GridPane grid = grid(USUAL_ACROSS);
            int i = 0;
            for (String code : usual) {
                TrimKey key = lesionKeys.get(code);
                if (key != null) {
                    key.getStyleClass().add("trim-lesion-usual");
                    grid.add(key, i % USUAL_ACROSS, i / USUAL_ACROSS);
                    i++;
                }
            }
            TrimKey more = new TrimKey(words.text("more"), words.text("more.others"), "", () -> model.more(1))
                    .styled("trim-lesion-usual");
            more.setId("trim-more");
            grid.add(more, i % USUAL_ACROSS, i / USUAL_ACROSS);
            Region rest = new Region();
            VBox.setVgrow(rest, Priority.ALWAYS);
            lesions.getChildren()
                    .addAll(
                            CowColumn.styled(
                                    new Label(words.text("what.usual", Integer.toString(zone.getAsInt()))), "trim-sub"),
                            grid,
                            rest);
        } else {
            group("group.skin", LesionKeys.SKIN);
            group("group.horn", LesionKeys.HORN);
            group("group.shape", LesionKeys.SHAPE);
            if (entry.more() > 0 && !tight) {
                group("group.finer", LesionKeys.FINER);
            }
        }
        // The keys below must not jump when a zone is touched.
        lesions.setPrefHeight(tight ? 3 * 18 + 4 * 50 + 6 * 4 : 3 * 18 + 4 * 54 + 6 * 4);
        lesions.setMinHeight(Region.USE_PREF_SIZE);
    }

    private void group(String name, List<String> codes) {
        GridPane grid = grid();
        for (int i = 0; i < codes.size(); i++) {
            TrimKey key = lesionKeys.get(codes.get(i));
            if (key != null) {
                grid.add(key, i % ACROSS, i / ACROSS);
            }
        }
        lesions.getChildren().addAll(CowColumn.styled(new Label(words.text(name)), "trim-sub"), grid);
    }

    private void howBad(TrimState.InChute now) {
        boolean staged = PadKeys.howBadKeys(now.entry()) > 3;
        howBad.getChildren().clear();
        List<TrimKey> keys = staged ? stages : severities;
        for (int i = 0; i < keys.size(); i++) {
            howBad.add(keys.get(i), i, 0);
        }
        String said = now.entry()
                .line()
                .flatMap(line -> TrimViewModel.line(now.cow(), line.id()))
                .map(f -> f.stage().isEmpty()
                        ? f.severity().isPresent() ? "" + f.severity().getAsInt() : ""
                        : f.stage())
                .orElse("");
        for (int i = 0; i < severities.size(); i++) {
            String name = words.text("howBad." + (i + 1));
            severities.get(i).say(tight ? name : (i + 1) + " " + name, "");
            severities.get(i).chosen(said.equals(Integer.toString(i + 1)));
        }
        for (int i = 0; i < stages.size(); i++) {
            stages.get(i).chosen(said.equals(TrimViewModel.STAGES.get(i)));
        }
        Optional<FootCard> foot = now.cow().foot(now.entry().leg());
        noLesion.chosen(foot.map(f -> f.foot().noLesion()).orElse(false));
        if (staged) {
            // Stages fill the row; "no lesion" cannot be meant while a stage is asked for.
            return;
        }
        howBad.add(noLesion, 3, 0, 2, 1);
    }

    private void actions(TrimState.InChute now) {
        Set<FootAction> set =
                now.cow().foot(now.entry().leg()).map(FootCard::actions).orElse(Set.of());
        done.forEach((action, key) -> key.chosen(set.contains(action)));
    }

    private void medicineNote(TrimState.InChute now) {
        MedicineNote note = now.cow().card().flatMap(card -> card.medicine()).orElse(TrimViewModel.NOTHING_GIVEN);
        boolean typing = medicineFields.stream().anyMatch(TextField::isFocused);
        Object whom = List.of(now.cow().cow().id(), now.day());
        if (typing && whom.equals(ofWhom)) {
            return;
        }
        ofWhom = whom;
        noteShown = note;
        List<String> texts = List.of(
                note.product(),
                note.givenBy(),
                note.milkWithheldUntil(),
                note.meatWithheldUntil(),
                note.batch(),
                note.givenAt(),
                note.doseAsGiven(),
                note.prescribedBy());
        for (int i = 0; i < texts.size(); i++) {
            medicineFields.get(i).setText(texts.get(i));
        }
    }

    private void look(TrimState.InChute now) {
        dayShown = now.cow().card().flatMap(card -> card.lookAgainOn());
        if (!lookAgain.isFocused() || dayShown.isPresent()) {
            lookAgain.setText(dayShown.map(words::day).orElse(""));
        }
        usualDay.chosen(dayShown.isPresent());
        usualDay.say(words.text(dayShown.isPresent() ? "look.off" : "look.usual"), "");
        boolean block = now.cow().foot(now.entry().leg()).stream()
                .flatMap(f -> f.actions().stream())
                .anyMatch(a -> a == FootAction.BLOCK_INNER || a == FootAction.BLOCK_OUTER);
        lookNote.setText(dayShown.map(day ->
                        words.text(block ? "look.noteBlock" : "look.note", ChronoUnit.DAYS.between(now.day(), day)))
                .orElse(""));
        CowColumn.show(lookNote, getPrefWidth() > 520);
    }
}

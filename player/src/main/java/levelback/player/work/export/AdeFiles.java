package levelback.player.work.export;

import static levelback.player.work.export.JsonText.map;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import levelback.scoring.foot.FootAction;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;
import levelback.scoring.value.Leg;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Score;
import levelback.store.trim.Finding;
import levelback.store.trim.FootCard;
import levelback.store.trim.LiftCard;
import levelback.store.trim.MedicineNote;

/**
 * ICAR ADE documents (github.com/adewg/ICAR, 1.4): animals, conformation scores with the trait Locomotion, diagnoses and
 * treatments, each as a collection. A gait score always names its scale, as breeding scores of the same trait run the
 * other way. The book keeps days, not times of day: an event stands at noon of the farm, and its day beside it.
 */
final class AdeFiles {

    private static final String SOURCE = "levelback";

    private final HerdContents herd;
    private final ExportNames names;
    private final Map<CowId, Map<String, Object>> animals = new HashMap<>();
    private final Map<String, Object> location;
    private final String modified;

    AdeFiles(HerdContents herd, ExportNames names, String called, Instant now) {
        this.herd = herd;
        this.names = names;
        this.location = map("scheme", SOURCE + ".herd", "id", called);
        this.modified = now.truncatedTo(ChronoUnit.SECONDS).toString();
        for (Cow cow : herd.cows()) {
            animals.put(cow.id(), identifier(cow));
        }
    }

    Map<String, String> files() {
        Map<String, String> files = new LinkedHashMap<>();
        files.put(
                "animals.json",
                collection(herd.cows().stream().map(c -> (Object) animal(c)).toList()));
        files.put(
                "scores.json",
                collection(herd.scores().stream()
                        .filter(s -> animals.containsKey(s.cow()))
                        .sorted(Comparator.comparing(herd::dayOf).thenComparing(s -> names.of(s.cow())))
                        .map(s -> (Object) score(s))
                        .toList()));
        List<Object> diagnoses = new ArrayList<>();
        List<Object> treatments = new ArrayList<>();
        for (LiftCard card : herd.cards()) {
            if (animals.containsKey(card.lift().cow())) {
                card.feet().forEach(foot -> foot(card, foot, diagnoses, treatments));
                card.medicine().ifPresent(note -> treatments.add(medicine(card, note)));
            }
        }
        files.put("diagnoses.json", collection(diagnoses));
        files.put("treatments.json", collection(treatments));
        return files;
    }

    List<String> notCarried() {
        List<String> left = new ArrayList<>(List.of(
                "The time of day of an event: it stands at noon of the farm, with its day beside it.",
                "Recordings, passes, gate reads and tags."));
        long refused = herd.cards().stream().filter(c -> c.lift().refused()).count();
        if (refused > 0) {
            left.add(refused + " control lifts that were not done.");
        }
        if (herd.cards().stream().anyMatch(c -> c.lift().chance().isPresent())) {
            left.add("The chance with which a control lift was drawn.");
        }
        left.add("Which toe: positions name the leg, and the claw and zone stand in site as text.");
        if (names.pseudonyms()) {
            left.add("Medicine and notes, which may name people.");
        }
        return left;
    }

    private Map<String, Object> identifier(Cow cow) {
        String official = names.pseudonyms() ? "" : cow.officialId().orElse("").replaceAll("\\s", "");
        String tag = names.pseudonyms() ? "" : cow.tag().orElse("").replaceAll("\\s", "");
        for (String number : List.of(official, tag)) {
            if (number.matches("\\d{15}")) {
                return map("scheme", "std.iso.11785", "id", number);
            }
        }
        return map("scheme", SOURCE + ".cow", "id", names.of(cow.id()));
    }

    private Map<String, Object> animal(Cow cow) {
        Map<String, Object> animal = map(
                "resourceType",
                "icarAnimalCoreResource",
                "meta",
                meta("cow-" + names.of(cow.id())),
                "location",
                location,
                "identifier",
                identifier(cow),
                "specie",
                "Cattle",
                "gender",
                "Female",
                "managementTag",
                names.of(cow.id()));
        if (!names.pseudonyms()) {
            cow.birth().ifPresent(day -> animal.put("birthDate", day + "T00:00:00Z"));
            cow.name().map(ExportNames::oneLine).filter(n -> !n.isEmpty()).ifPresent(n -> animal.put("name", n));
            cow.officialId()
                    .map(ExportNames::oneLine)
                    .ifPresent(id -> animal.put(
                            "alternativeIdentifiers", List.of(map("scheme", SOURCE + ".official", "id", id))));
        }
        return animal;
    }

    private Map<String, Object> score(Score score) {
        LocalDate day = herd.dayOf(score);
        String who = names.of(score.scorer());
        Map<String, Object> event = event(
                "icarConformationScoreEventResource",
                id("score", score.id().uuid().toString()),
                score.cow(),
                day,
                who);
        event.put("traitLabel", map("scheme", SOURCE + ".scale", "id", score.scaleId()));
        event.put("traitScored", "Locomotion");
        event.put("traitGroup", "Linear");
        event.put("score", score.level());
        event.put("method", "Manual");
        event.put(
                "remark",
                "date=" + day + "; scale=" + score.scaleId() + " (higher is lamer)"
                        + score.leg().map(leg -> "; leg=" + leg).orElse(""));
        score.leg().ifPresent(leg -> event.put("x-levelback.leg", leg.name()));
        return event;
    }

    private void foot(LiftCard card, FootCard foot, List<Object> diagnoses, List<Object> treatments) {
        LocalDate day = card.lift().date();
        String who = names.of(card.lift().trimmer());
        Leg leg = foot.foot().leg();
        String key = foot.foot().id().uuid().toString();
        List<Object> position = List.of(map("position", position(leg)));
        boolean looked = !foot.findings().isEmpty() || foot.foot().noLesion();
        if (looked) {
            List<Object> found = new ArrayList<>();
            for (Finding finding : foot.findings()) {
                found.add(diagnosis(finding, position));
            }
            Map<String, Object> event = event(
                    "icarDiagnosisEventResource", id("foot", key), card.lift().cow(), day, who);
            event.put("diagnoses", found);
            event.put("remark", "date=" + day + "; leg=" + leg + (found.isEmpty() ? "; lifted and nothing found" : ""));
            event.put("x-levelback.leg", leg.name());
            diagnoses.add(event);
        }
        if (!foot.actions().isEmpty()) {
            Map<String, Object> event = event(
                    "icarTreatmentEventResource", id("done", key), card.lift().cow(), day, who);
            event.put(
                    "procedure",
                    "FootTrimming: "
                            + foot.actions().stream()
                                    .sorted()
                                    .map(FootAction::key)
                                    .collect(java.util.stream.Collectors.joining(", ")));
            event.put("positions", position);
            card.lookAgainOn().ifPresent(again -> event.put("comment", "look again on " + again));
            treatments.add(event);
        }
    }

    private Map<String, Object> diagnosis(Finding finding, List<Object> position) {
        Optional<Lesion> lesion = Lesions.byCode(finding.lesion());
        StringBuilder site = new StringBuilder("claw=" + finding.claw().key());
        finding.zone().ifPresent(zone -> site.append("; zone=").append(zone));
        if (!finding.stage().isEmpty()) {
            site.append("; stage=").append(finding.stage());
        }
        Map<String, Object> map = map(
                "id",
                id("finding", finding.id().uuid().toString()),
                "name",
                lesion.map(Lesion::name).orElse(finding.lesion()),
                "diagnosisCode",
                map("scheme", "icar.clawhealth", "id", finding.lesion()),
                "site",
                site.toString(),
                "positions",
                position);
        finding.severity().ifPresent(severity -> {
            map.put("severity", List.of("Light", "Moderate", "Severe").get(severity - 1));
            map.put("severityScore", severity);
        });
        if (!names.pseudonyms() && !finding.note().isBlank()) {
            map.put("description", ExportNames.oneLine(finding.note()));
        }
        return map;
    }

    private Map<String, Object> medicine(LiftCard card, MedicineNote note) {
        LocalDate day = card.lift().date();
        Map<String, Object> event = event(
                "icarTreatmentEventResource",
                id("medicine", card.lift().id().uuid().toString()),
                card.lift().cow(),
                day,
                names.of(card.lift().trimmer()));
        event.put("procedure", "medicine as recorded");
        if (!names.pseudonyms()) {
            event.put(
                    "medicine",
                    map(
                            "identifier",
                            map("scheme", SOURCE + ".product", "id", ExportNames.oneLine(note.product())),
                            "family",
                            "Veterinary Supplies",
                            "name",
                            ExportNames.oneLine(note.product())));
            event.put(
                    "comment",
                    ExportNames.oneLine("dose=" + note.doseAsGiven() + "; batch=" + note.batch() + "; given by="
                            + note.givenBy() + "; given at=" + note.givenAt() + "; prescribed by="
                            + note.prescribedBy() + "; milk withheld until=" + note.milkWithheldUntil()
                            + "; meat withheld until=" + note.meatWithheldUntil()));
        }
        return event;
    }

    private Map<String, Object> event(String type, String id, CowId cow, LocalDate day, String who) {
        return map(
                "resourceType",
                type,
                "meta",
                meta(id),
                "location",
                location,
                "id",
                id,
                "eventDateTime",
                day.atTime(LocalTime.NOON)
                        .atZone(herd.herd().zone())
                        .toInstant()
                        .toString(),
                "animal",
                animals.getOrDefault(cow, map("scheme", SOURCE + ".cow", "id", names.of(cow))),
                "responsible",
                who,
                "x-levelback.date",
                day.toString());
    }

    private Map<String, Object> meta(String id) {
        return map("source", SOURCE, "sourceId", id, "modified", modified);
    }

    private static String id(String what, String key) {
        return what + "-" + key;
    }

    private static String position(Leg leg) {
        return switch (leg) {
            case LF -> "LegsFrontLeft";
            case RF -> "LegsFrontRight";
            case LH -> "LegsRearLeft";
            case RH -> "LegsRearRight";
        };
    }

    private static String collection(List<Object> members) {
        return JsonText.of(
                map("view", map("totalItems", members.size(), "totalPages", 1, "currentPage", 1), "member", members));
    }
}

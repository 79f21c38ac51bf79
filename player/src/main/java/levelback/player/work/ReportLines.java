package levelback.player.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import levelback.player.report.ReportFigures.FootLine;
import levelback.player.report.ReportFigures.Lifted;
import levelback.player.report.ReportWords;
import levelback.scoring.foot.FootAction;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
import levelback.store.trim.Finding;
import levelback.store.trim.FootCard;
import levelback.store.trim.LiftCard;

/** The lifted list of a report in words. */
final class ReportLines {

    private final ReportWords words;

    ReportLines(ReportWords words) {
        this.words = words;
    }

    /**
     * One entry for each card, worst score first.
     *
     * @param cows the herd's cows by identity
     * @param visits visits up to the report's, oldest first
     * @param levels each cow's level by visit
     */
    List<Lifted> lifted(
            List<LiftCard> cards, Map<CowId, Cow> cows, List<Visit> visits, Map<VisitId, Map<CowId, Double>> levels) {
        List<Lifted> lines = new ArrayList<>();
        for (LiftCard card : cards) {
            CowId id = card.lift().cow();
            Cow cow = cows.get(id);
            if (cow == null || (card.feet().isEmpty() && !card.lift().refused())) {
                continue;
            }
            List<OptionalDouble> lastFive = new ArrayList<>();
            for (Visit visit : visits.subList(Math.max(0, visits.size() - 5), visits.size())) {
                lastFive.add(level(levels, visit, id));
            }
            String why =
                    card.lift().refused() ? "refused" : card.lift().chance().isPresent() ? "control" : "";
            lines.add(new Lifted(
                    cow.number(),
                    cow.name().orElse(""),
                    level(levels, visits.get(visits.size() - 1), id),
                    lastFive,
                    card.lift().refused() ? List.of(new FootLine(Optional.empty(), "", "")) : feet(card),
                    card.lookAgainOn(),
                    why));
        }
        lines.sort(
                Comparator.comparingDouble((Lifted l) -> -l.score().orElse(-1)).thenComparing(Lifted::number));
        return lines;
    }

    static OptionalDouble level(Map<VisitId, Map<CowId, Double>> levels, Visit visit, CowId cow) {
        Double level = levels.getOrDefault(visit.id(), Map.of()).get(cow);
        return level == null ? OptionalDouble.empty() : OptionalDouble.of(level);
    }

    private List<FootLine> feet(LiftCard card) {
        List<FootLine> lines = new ArrayList<>();
        List<String> clean = new ArrayList<>();
        Set<FootAction> doneToClean = EnumSet.noneOf(FootAction.class);
        for (FootCard foot : card.feet()) {
            if (!foot.findings().isEmpty()) {
                lines.add(new FootLine(Optional.of(foot.foot().leg()), found(foot), done(foot.actions())));
            } else if (foot.foot().noLesion()) {
                clean.add(foot.foot().leg().name());
                doneToClean.addAll(foot.actions());
            } else {
                lines.add(new FootLine(
                        Optional.of(foot.foot().leg()), words.say("found.not.examined"), done(foot.actions())));
            }
        }
        if (lines.isEmpty() && !clean.isEmpty()) {
            String found = clean.size() == 4
                    ? words.say("found.none")
                    : words.say("found.none.some", String.join(", ", clean));
            lines.add(new FootLine(Optional.empty(), found, done(doneToClean)));
        }
        return lines;
    }

    /** {@code SU 3, outer zone 4; HHE 1, outer zone 6}. */
    String found(FootCard foot) {
        List<String> parts = new ArrayList<>();
        for (Finding finding : foot.findings()) {
            String how = !finding.stage().isEmpty()
                    ? " " + finding.stage()
                    : finding.severity().isPresent() ? " " + finding.severity().getAsInt() : "";
            parts.add(finding.lesion() + how + ", " + where(finding));
        }
        return String.join("; ", parts);
    }

    private String where(Finding finding) {
        if (finding.zone().isPresent()) {
            String key = switch (finding.claw()) {
                case LATERAL -> "found.outer";
                case MEDIAL -> "found.inner";
                case BOTH -> "found.both";
                case INTERDIGITAL -> "found.zone";
            };
            return words.say(key, finding.zone().getAsInt());
        }
        return words.say(
                switch (finding.claw()) {
                    case LATERAL -> "found.outer.claw";
                    case MEDIAL -> "found.inner.claw";
                    case BOTH -> "found.both.claws";
                    case INTERDIGITAL -> "found.between";
                });
    }

    String done(Set<FootAction> actions) {
        List<String> parts = new ArrayList<>();
        for (FootAction action : FootAction.values()) {
            if (actions.contains(action)) {
                parts.add(words.say("done." + action.key()));
            }
        }
        return String.join(", ", parts);
    }

    /** What was found and done between two days, one sentence a foot. */
    List<String> remarks(List<LiftCard> cardsOfCow, LocalDate after, LocalDate upTo) {
        List<String> remarks = new ArrayList<>();
        cardsOfCow.stream()
                .filter(c -> c.lift().date().isAfter(after) && !c.lift().date().isAfter(upTo))
                .sorted(Comparator.comparing(c -> c.lift().date()))
                .forEach(card -> {
                    String day = words.day(card.lift().date());
                    boolean any = false;
                    for (FootCard foot : card.feet()) {
                        if (!foot.findings().isEmpty()) {
                            any = true;
                            remarks.add(words.say(
                                    "remark", day, foot.foot().leg().name(), found(foot), done(foot.actions())));
                        }
                    }
                    if (!any && card.feet().stream().anyMatch(f -> f.foot().noLesion())) {
                        remarks.add(words.say("remark.clean", day));
                    }
                });
        return remarks;
    }
}

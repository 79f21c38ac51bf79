package levelback.player.trim;

import java.text.MessageFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.ResourceBundle;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.FootAction;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;
import levelback.store.trim.Finding;

/** The words of the Trim page, from its resource bundle, with the user's way of writing dates. */
final class TrimWords {

    private final ResourceBundle bundle = ResourceBundle.getBundle("levelback.player.trim.Trim");
    private final Locale locale = Locale.getDefault();

    /** A text as it stands. */
    String text(String key) {
        return bundle.getString(key);
    }

    /** A text with its gaps filled. */
    String text(String key, Object... values) {
        return new MessageFormat(bundle.getString(key), locale).format(values);
    }

    /** {@code 14 Apr}. */
    String dayInRow(LocalDate day) {
        return day.format(DateTimeFormatter.ofPattern("d MMM", locale));
    }

    /** {@code 14 Apr} within the year of the card, {@code 14 Apr 2025} in another. */
    String dayInRow(LocalDate day, LocalDate today) {
        return day.getYear() == today.getYear()
                ? dayInRow(day)
                : day.format(DateTimeFormatter.ofPattern("d MMM yyyy", locale));
    }

    /** A day as a person may type it: ISO, {@code 12 May 2026}, {@code 12.5.2026}, the locale's own, or {@code +28} days on. */
    java.util.Optional<LocalDate> readDay(String typed, LocalDate from) {
        String text = typed.strip();
        if (text.matches("\\+\\d{1,3}")) {
            return java.util.Optional.of(from.plusDays(Integer.parseInt(text.substring(1))));
        }
        for (DateTimeFormatter format : List.of(
                DateTimeFormatter.ISO_LOCAL_DATE,
                DateTimeFormatter.ofPattern("EEE d MMM yyyy", locale),
                DateTimeFormatter.ofPattern("d MMM yyyy", locale),
                DateTimeFormatter.ofPattern("d.M.yyyy", locale),
                DateTimeFormatter.ofLocalizedDate(java.time.format.FormatStyle.SHORT)
                        .withLocale(locale))) {
            try {
                return java.util.Optional.of(LocalDate.parse(text, format));
            } catch (java.time.format.DateTimeParseException e) {
                // The next way of writing it is tried.
            }
        }
        return java.util.Optional.empty();
    }

    /** {@code Tue 14 Apr 2026}. */
    String day(LocalDate day) {
        return day.format(DateTimeFormatter.ofPattern("EEE d MMM yyyy", locale));
    }

    /** {@code outer}, {@code inner}, {@code cleft}, {@code both}. */
    String claw(Claw claw) {
        return text("claw." + claw.key());
    }

    /** {@code outer 4}, {@code cleft 0}, {@code outer} where no zone is known; a zone not confirmed carries a mark. */
    String place(Claw claw, OptionalInt zone, boolean confirmed) {
        if (zone.isEmpty()) {
            return claw(claw);
        }
        String number = Integer.toString(zone.getAsInt());
        return confirmed ? text("place", claw(claw), number) : text("place.usual", claw(claw), number);
    }

    String place(ClawZone zone) {
        return place(zone.claw(), OptionalInt.of(zone.zone()), true);
    }

    /** {@code SU 3}, {@code DD M2}, {@code HHE}. */
    String code(Finding finding) {
        if (!finding.stage().isEmpty()) {
            return finding.lesion() + " " + finding.stage();
        }
        return finding.severity().isPresent()
                ? finding.lesion() + " " + finding.severity().getAsInt()
                : finding.lesion();
    }

    /** A score or a count, in the user's way of writing numbers. */
    String number(double value) {
        java.text.NumberFormat format = java.text.NumberFormat.getNumberInstance(locale);
        format.setMaximumFractionDigits(1);
        return format.format(value);
    }

    /** A chance of a draw, as {@code .022}: two figures that say something. */
    String chance(double chance) {
        int decimals = Math.max(2, 1 - (int) Math.floor(Math.log10(chance)));
        java.text.NumberFormat format = java.text.NumberFormat.getNumberInstance(locale);
        format.setMaximumFractionDigits(decimals);
        return format.format(chance);
    }

    String lesionName(String code) {
        return Lesions.byCode(code).map(Lesion::shortName).orElse(code);
    }

    String action(FootAction action) {
        return text("done." + action.key());
    }

    String actions(java.util.Collection<FootAction> actions) {
        List<String> names = actions.stream()
                .sorted()
                .map(action -> text("line.done." + action.key()))
                .toList();
        return String.join(", ", names);
    }
}

package levelback.player.report;

import static levelback.player.report.ReportWords.xml;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import levelback.player.report.ReportFigures.FootLine;
import levelback.player.report.ReportFigures.Lifted;
import levelback.player.report.ReportFigures.Pair;
import levelback.player.report.ReportFigures.Shot;
import levelback.player.report.ReportFigures.SinceLast;
import levelback.player.report.ReportFigures.ThenAndNow;
import levelback.player.report.ReportFigures.Trust;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.value.Estimate;

/** Sets a report in type: one XHTML text with nothing outside it, the same for the browser and for the PDF. */
public final class ReportPage {
    /** Height that the lifted list may take on page 1, in points, with and without pictures above it. */
    private static final double FIRST_PT = 170;

    private static final double FIRST_NO_PICTURES_PT = 295;

    /** Characters that fit on one line of what was found and of what was done. */
    private static final int FOUND_WIDE = 26;

    private static final int DONE_WIDE = 24;

    private static final String[][] FACES = {
        {"400", "normal", "LevelbackSans-Regular.ttf"},
        {"600", "normal", "LevelbackSans-SemiBold.ttf"},
        {"700", "normal", "LevelbackSans-Bold.ttf"},
    };

    private final ReportFigures figures;
    private final ReportWords words;
    private final GaitScale scale;

    public ReportPage(ReportFigures figures, ReportWords words) {
        this.figures = figures;
        this.words = words;
        this.scale = figures.scale();
    }

    /** The report for a browser: fonts and pictures inside, nothing fetched. */
    public String html() {
        StringBuilder css = new StringBuilder();
        for (String[] face : FACES) {
            css.append("@font-face { font-family: 'Levelback Sans'; font-weight: ")
                    .append(face[0])
                    .append("; src: url(data:font/ttf;base64,")
                    .append(Base64.getEncoder().encodeToString(resource("/levelback/player/theme/" + face[2])))
                    .append(") format('truetype'); }\n");
        }
        css.append("body { max-width: 180mm; margin: 10mm auto; padding: 0 4mm; }\n");
        return document(css.toString(), false);
    }

    /** The report for the PDF writer, which brings the fonts itself and sets the foot on every page. */
    String forPdf() {
        return document("""
                .footer { position: running(footer); }
                .footer .p:before { content: counter(page); }
                .footer .ps:before { content: counter(pages); }
                """, true);
    }

    private String document(String moreCss, boolean paged) {
        String title = words.say("title", figures.herd());
        StringBuilder page = new StringBuilder(64_000);
        page.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<!DOCTYPE html>\n")
                .append("<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\"><head><meta charset=\"UTF-8\"/>")
                .append("<title>")
                .append(xml(title))
                .append("</title>")
                .append("<meta name=\"description\" content=\"")
                .append(xml(title))
                .append("\"/>")
                .append("<style>")
                .append(new String(resource("report.css"), StandardCharsets.UTF_8))
                .append(moreCss)
                .append("</style></head><body>\n");
        if (paged) {
            footer(page, true);
        }
        head(page, title);
        headline(page);
        page.append("<table><tr><td style=\"width:118mm\">");
        trend(page);
        page.append("</td><td class=\"gap\"></td><td>");
        since(page);
        scores(page);
        page.append("</td></tr></table>\n");
        figures.thenAndNow().ifPresent(cow -> thenAndNow(page, cow));
        List<Lifted> lifted = figures.lifted();
        int onFirst = onFirstPage(lifted);
        lifted(page, lifted.subList(0, onFirst), false);
        trust(page);
        if (onFirst < lifted.size()) {
            lifted(page, lifted.subList(onFirst, lifted.size()), true);
        }
        trustFigures(page, onFirst == lifted.size());
        page.append("<div class=\"caution\"><b>!</b> ")
                .append(xml(words.say("cautions")))
                .append("</div>\n");
        if (!paged) {
            footer(page, false);
        }
        return page.append("</body></html>\n").toString();
    }

    private int onFirstPage(List<Lifted> lifted) {
        double room = figures.thenAndNow().isPresent() ? FIRST_PT : FIRST_NO_PICTURES_PT;
        int cows = 0;
        for (Lifted cow : lifted) {
            room -= heightPt(cow);
            if (room < 0) {
                break;
            }
            cows++;
        }
        return Math.max(Math.min(1, lifted.size()), cows);
    }

    /** What a cow takes of the list at 8.5 points, 1.35 apart; a foot's mark and a reason below her name need their own. */
    private static double heightPt(Lifted cow) {
        double feet = cow.feet().stream()
                .mapToDouble(f ->
                        Math.max(18, 5.5 + 11.5 * Math.max(lines(f.found(), FOUND_WIDE), lines(f.done(), DONE_WIDE))))
                .sum();
        return Math.max(feet, cow.why().isEmpty() ? 20 : 28);
    }

    /** Lines that a text takes, broken between words. */
    private static int lines(String text, int wide) {
        int lines = 1;
        int used = 0;
        for (String word : text.split(" ", -1)) {
            if (used > 0 && used + 1 + word.length() > wide) {
                lines++;
                used = word.length();
            } else {
                used += (used > 0 ? 1 : 0) + word.length();
            }
        }
        return lines;
    }

    private void head(StringBuilder page, String title) {
        StringBuilder under = new StringBuilder(words.say("visit", figures.ordinal(), words.longDay(figures.visit())));
        under.append(' ').append(words.say("scored.by", figures.scorer()));
        if (!figures.trimmers().isEmpty()) {
            under.append(' ').append(words.say("lifted.by", String.join(", ", figures.trimmers())));
        }
        page.append("<table class=\"head\"><tr><td><h1>")
                .append(xml(title))
                .append("</h1><p class=\"under\">")
                .append(xml(under.toString()))
                .append("</p></td><td style=\"width:22mm;text-align:right\">")
                .append(Marks.levelBack())
                .append("</td></tr></table>\n");
    }

    private void headline(StringBuilder page) {
        Estimate share = figures.today().share();
        page.append("<p class=\"headline\">")
                .append(xml(words.say(
                        "headline", figures.today().lame(), figures.today().scored())));
        if (share.value().isPresent()) {
            page.append(" <b>")
                    .append(xml(words.percent(share.value().getAsDouble())))
                    .append("</b>");
        }
        page.append(' ')
                .append(xml(words.say("headline.interval", words.percentInterval(share))))
                .append("</p>\n");
        StringBuilder under = new StringBuilder();
        figures.first().ifPresent(first -> {
            double before = first.share().value().orElse(0);
            double now = share.value().orElse(0);
            String day = words.day(first.date());
            under.append(
                    now < before
                            ? words.say("down", words.percent(before), day)
                            : now > before ? words.say("up", words.percent(before), day) : words.say("same", day));
            under.append(' ');
        });
        under.append(counted("severe", figures.today().severe(), severeLevel())).append(' ');
        long listed = figures.today().scored() + figures.notSeen();
        under.append(
                figures.notSeen() == 0
                        ? words.say("not.seen.none")
                        : words.say(
                                figures.notSeen() == 1 ? "not.seen.one" : "not.seen.many", figures.notSeen(), listed));
        page.append("<p class=\"under\">").append(xml(under.toString())).append("</p>\n");
    }

    private String severeLevel() {
        String cut = Marks.number(scale.severeCut());
        return scale.severeCut() >= scale.highest() ? cut : words.say("severe.level", cut);
    }

    private String counted(String key, long count, String level) {
        return count == 0
                ? words.say(key + ".none", level)
                : count == 1 ? words.say(key + ".one", level) : words.say(key + ".many", count, level);
    }

    private void trend(StringBuilder page) {
        page.append("<h2>")
                .append(xml(words.say("trend")))
                .append("</h2>")
                .append(new TrendChart(words).draw(figures.trend(), TrendChart.hasBand(scale)))
                .append("<p class=\"note\">")
                .append(xml(words.say(
                        "trend.note",
                        Marks.number(scale.lameCut()),
                        Marks.number(scale.severeCut()),
                        scale.severeCut() < scale.highest() ? words.say("trend.note.more") : "",
                        scale.name())))
                .append(TrendChart.hasBand(scale) ? " " + xml(words.say("trend.pooled")) : "")
                .append("</p>");
    }

    private void since(StringBuilder page) {
        if (figures.sinceLast().isEmpty()) {
            page.append("<h2>")
                    .append(xml(words.say("trend")))
                    .append("</h2><p>")
                    .append(xml(words.say("since.none")))
                    .append("</p>");
            return;
        }
        SinceLast since = figures.sinceLast().get();
        page.append("<h2>")
                .append(xml(words.say("since", words.day(since.from()))))
                .append("</h2><table class=\"big\">");
        big(page, Long.toString(since.stillLame()), words.say("since.still", since.threeOrMore()));
        big(page, Long.toString(since.newlyLame()), words.say("since.newly", since.newCases()));
        big(page, Long.toString(since.recovered()), words.say("since.recovered"));
        Estimate days = figures.toLift();
        if (days.value().isPresent()) {
            String interval = days.interval()
                    .map(i -> words.say("to", Marks.number(i.low()), Marks.number(i.high())))
                    .orElseGet(() -> days.why().orElse(""));
            big(
                    page,
                    Marks.number(days.value().getAsDouble()) + "\u00a0d",
                    words.say(
                            "since.days",
                            interval,
                            figures.quick().within(),
                            figures.quick().lameScores()));
        } else {
            big(page, "\u2013", words.say("since.days.none", days.why().orElse("")));
        }
        page.append("</table>");
    }

    private static void big(StringBuilder page, String figure, String text) {
        page.append("<tr><td class=\"figure\">")
                .append(xml(figure))
                .append("</td><td>")
                .append(xml(text))
                .append("</td></tr>");
    }

    private void scores(StringBuilder page) {
        long most = figures.levels().stream()
                .mapToLong(ReportFigures.Level::cows)
                .max()
                .orElse(1);
        page.append("<h2>")
                .append(xml(words.say("scores", words.day(figures.visit()))))
                .append("</h2><table class=\"bars\">");
        for (ReportFigures.Level level : figures.levels()) {
            double width = 34.0 * level.cows() / Math.max(1, most);
            page.append("<tr><td class=\"tile\">")
                    .append(Marks.tile(scale, level.level(), 5))
                    .append("</td><td>");
            if (level.cows() > 0) {
                page.append("<span class=\"bar\" style=\"width:")
                        .append(Marks.n(width))
                        .append("mm;background:")
                        .append(Marks.colour(scale, level.level()))
                        .append("\"></span>");
            }
            page.append("<span class=\"count\">").append(level.cows()).append("</span></td></tr>");
        }
        page.append("</table>");
    }

    private void thenAndNow(StringBuilder page, ThenAndNow cow) {
        String who = cow.number() + " " + cow.name()
                + cow.leg().map(leg -> ", " + leg).orElse("");
        page.append("<h2>")
                .append(xml(words.say("then.now", who.replace(" ,", ","))))
                .append("</h2><table><tr>");
        shot(page, cow.then());
        page.append("<td style=\"width:3mm\"></td>");
        shot(page, cow.now());
        page.append("<td style=\"width:4mm\"></td><td class=\"remarks\">");
        for (String remark : cow.remarks()) {
            page.append("<p>").append(xml(remark)).append("</p>");
        }
        page.append("<p>")
                .append(xml(words.say(
                        "then.scores",
                        String.join(
                                ", ", cow.scores().stream().map(Marks::number).toList()))))
                .append("</p></td></tr></table>\n");
    }

    private void shot(StringBuilder page, Shot shot) {
        page.append("<td class=\"shot\" style=\"width:60mm\">");
        String caption = words.say("shot", words.day(shot.date()), shot.frame(), shot.recording());
        if (shot.png().length > 0) {
            page.append("<img alt=\"")
                    .append(xml(caption))
                    .append("\" src=\"data:image/png;base64,")
                    .append(Base64.getEncoder().encodeToString(shot.png()))
                    .append("\"/>");
        } else {
            page.append("<p class=\"trouble\">\u00d7 ")
                    .append(xml(shot.trouble()))
                    .append("</p>");
        }
        page.append("<div class=\"caption\">");
        shot.level()
                .ifPresent(level -> page.append(Marks.tile(scale, level, 4.2)).append(' '));
        page.append(xml(caption)).append("</div></td>");
    }

    private void lifted(StringBuilder page, List<Lifted> rows, boolean rest) {
        page.append("<h2")
                .append(rest ? " style=\"page-break-before:always\"" : "")
                .append('>')
                .append(xml(words.say(rest ? "lifted.rest" : "lifted")));
        int all = figures.lifted().size();
        if (!rest && rows.size() < all) {
            page.append(" <span>")
                    .append(xml(words.say("lifted.some", rows.size(), all)))
                    .append("</span>");
        }
        page.append("</h2>");
        if (all == 0) {
            page.append("<p>").append(xml(words.say("lifted.none"))).append("</p>");
            return;
        }
        int firstVisit = Math.max(1, figures.ordinal() - 4);
        page.append("<table class=\"lifted\"><thead><tr><th style=\"width:26mm\">")
                .append(xml(words.say("col.cow")))
                .append("</th><th style=\"width:10mm\">")
                .append(xml(words.say("col.score")))
                .append("</th><th style=\"width:21mm\">")
                .append(xml(words.say("col.visits", firstVisit, figures.ordinal())))
                .append("</th><th style=\"width:9mm\">")
                .append(xml(words.say("col.foot")))
                .append("</th><th style=\"width:45mm\">")
                .append(xml(words.say("col.found")))
                .append("</th><th>")
                .append(xml(words.say("col.done")))
                .append("</th><th style=\"width:15mm;white-space:nowrap\">")
                .append(xml(words.say("col.again")))
                .append("</th></tr></thead><tbody>\n");
        for (Lifted cow : rows) {
            lifted(page, cow);
        }
        page.append("</tbody></table>\n");
    }

    private void lifted(StringBuilder page, Lifted cow) {
        String span = cow.feet().size() > 1 ? " rowspan=\"" + cow.feet().size() + "\"" : "";
        boolean first = true;
        for (FootLine foot : cow.feet()) {
            page.append("<tr>");
            if (first) {
                page.append("<td")
                        .append(span)
                        .append("><span class=\"cow\">")
                        .append(xml(cow.number()))
                        .append("</span> ")
                        .append(xml(cow.name()));
                if (!cow.why().isEmpty()) {
                    page.append("<br/><span class=\"why\">")
                            .append(xml(words.say(cow.why())))
                            .append("</span>");
                }
                page.append("</td><td").append(span).append('>');
                OptionalDouble score = cow.score();
                page.append(score.isPresent() ? Marks.tile(scale, score.getAsDouble(), 4.6) : "\u2013");
                page.append("</td><td")
                        .append(span)
                        .append('>')
                        .append(Marks.levelLine(scale, cow.lastFive()))
                        .append("</td>");
            }
            page.append("<td>")
                    .append(foot.leg().map(leg -> Marks.leg(leg, 6.6)).orElse(""))
                    .append("</td><td>")
                    .append(xml(foot.found()))
                    .append("</td><td>")
                    .append(xml(foot.done()))
                    .append("</td>");
            if (first) {
                page.append("<td")
                        .append(span)
                        .append('>')
                        .append(xml(cow.lookAgain().map(words::shortDay).orElse("")))
                        .append("</td>");
            }
            page.append("</tr>\n");
            first = false;
        }
    }

    private void trust(StringBuilder page) {
        Trust trust = figures.trust();
        page.append("<div class=\"trust\"><h2>")
                .append(xml(words.say("trust")))
                .append("</h2><p>")
                .append(xml(sentence(trust)))
                .append(' ')
                .append(xml(words.say("trust.n", trust.scored(), trust.lifted())));
        page.append("</p></div>\n");
    }

    private void trustFigures(StringBuilder page, boolean onNewPage) {
        Trust trust = figures.trust();
        if (trust.rows().isEmpty()) {
            return;
        }
        page.append("<h2")
                .append(onNewPage ? " style=\"page-break-before:always\"" : "")
                .append('>')
                .append(xml(words.say("trust.figures")))
                .append("</h2><p>")
                .append(xml(trust.question()))
                .append(". ");
        if (!trust.assumption().isEmpty()) {
            page.append(xml(words.say("trust.assumption", trust.assumption())));
        } else if (!trust.why().isEmpty()) {
            page.append(xml(words.say("trust.why", trust.why())));
        }
        page.append("</p><table class=\"figures\"><thead><tr><th style=\"width:78mm\">")
                .append(xml(words.say("fig.figure")))
                .append("</th><th style=\"width:50mm\">")
                .append(xml(words.say("fig.observed")))
                .append("</th><th>")
                .append(xml(words.say("fig.corrected")))
                .append("</th></tr></thead><tbody>");
        for (Pair row : trust.rows()) {
            page.append("<tr><td>")
                    .append(xml(words.say(row.key())))
                    .append("</td><td>")
                    .append(figure(row.observed()))
                    .append("</td><td>")
                    .append(row.corrected().map(this::figure).orElse("\u2013"))
                    .append("</td></tr>");
        }
        page.append("</tbody></table>\n");
    }

    private String sentence(Trust trust) {
        Estimate observed = trust.sensitivity().observed();
        if (observed.value().isEmpty()) {
            return words.say("trust.none", trust.question(), observed.why().orElse(""));
        }
        String seen = hundred(observed.value().getAsDouble());
        if (trust.sensitivity().corrected().isPresent()) {
            Estimate corrected = trust.sensitivity().corrected().get();
            if (corrected.value().isPresent()) {
                return words.say(
                        "trust.corrected",
                        trust.question(),
                        hundred(corrected.value().getAsDouble()),
                        hundreds(corrected),
                        seen,
                        hundreds(observed));
            }
        }
        return words.say("trust.observed", trust.question(), seen, hundreds(observed), trust.why());
    }

    private static String hundred(double share) {
        return Long.toString(Math.round(100 * share));
    }

    private String hundreds(Estimate estimate) {
        return estimate.interval()
                .map(i -> words.say("to", hundred(i.low()), hundred(i.high())))
                .orElseGet(() -> estimate.why().orElse(""));
    }

    private String figure(Estimate estimate) {
        if (estimate.value().isEmpty()) {
            return "\u2013 " + xml(estimate.why().orElse(""));
        }
        return "<span class=\"v\">" + words.proportion(estimate.value().getAsDouble()) + "</span>&#160;&#160;"
                + xml(words.proportionInterval(estimate)) + "&#160;&#160;<span class=\"note\">"
                + xml(words.say("fig.n")) + "&#160;" + estimate.n() + "</span>";
    }

    private void footer(StringBuilder page, boolean paged) {
        ReportFigures.Made made = figures.made();
        String dot = " \u00b7 ";
        String at = DateTimeFormatter.ofPattern("d MMM yyyy HH:mm", Locale.UK)
                .format(made.at().atZone(made.zone()));
        page.append("<div class=\"footer\">")
                .append(xml(made.version()
                        + dot
                        + words.say("footer.scale", scale.name() + " (" + scale.source() + ")")
                        + dot
                        + words.say("footer.visits", words.dayOfYear(made.from()), words.dayOfYear(made.to()))
                        + dot
                        + made.filters()
                        + dot
                        + words.say("footer.shown", made.shown(), figures.notSeen())))
                .append("<br/>")
                .append(xml(words.say("footer.book", made.bookFingerprint())
                        + dot
                        + made.zone().getId()
                        + dot
                        + words.say("footer.made", at)));
        if (paged) {
            page.append(dot)
                    .append(xml(words.say("footer.page")))
                    .append(" <span class=\"p\"></span> ")
                    .append(xml(words.say("footer.of")))
                    .append(" <span class=\"ps\"></span>");
        }
        page.append("</div>\n");
    }

    private static byte[] resource(String name) {
        try (InputStream in = ReportPage.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("missing from the program: " + name);
            }
            return in.readAllBytes();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}

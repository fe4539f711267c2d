package org.spanroom.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.learn.ChanceChange;
import org.spanroom.model.learn.FrictionChange;
import org.spanroom.model.learn.LearnResults;
import org.spanroom.model.learn.LeftOut;
import org.spanroom.model.learn.RateChange;
import org.spanroom.model.learn.RatioEstimate;
import org.spanroom.output.LearnWriter;
import org.spanroom.pipeline.LearnRun.LearnSummary;

/** What {@code learn} says at its end. */
final class LearnReport {
    private static final int MOST_LEFT_OUT = 5;
    private static final int MOST_STRATA = 12;

    private final StringBuilder text = new StringBuilder();
    private final LearnSummary summary;
    private final LearnResults results;

    private LearnReport(LearnSummary summary) {
        this.summary = summary;
        this.results = summary.results();
    }

    static String text(LearnSummary summary) {
        var report = new LearnReport(summary);
        report.opening();
        report.rates();
        report.friction();
        report.chances();
        UnitSystem units = summary.units();
        report.text.append(LearnTotals.text(summary.results().totals(), units, summary.currency()));
        report.leftOut();
        report.line(
                "%nProposals: %s", summary.files().stream().map(String::valueOf).collect(Collectors.joining(", ")));
        boolean friction = summary.files().stream().anyMatch(file -> file.endsWith(LearnWriter.FRICTION));
        report.line(
                "Nothing is applied: check them, then name rates.yaml in the config%s.",
                friction ? " and copy friction.yaml into it" : "");
        report.line("%s", SummaryJson.CAUTION);
        return report.text.toString();
    }

    private void opening() {
        line(
                "%nField book %s: %s of %s%s, %s of them in the run.",
                Printable.of(summary.book().toString()),
                Counted.of(results.entries(), "entry", "entries"),
                Counted.of(results.spans(), "span"),
                results.lastDay().map(day -> " to " + day).orElse(""),
                Counted.whole(results.spansOfRun()));
    }

    private void rates() {
        List<RateChange> estimated = results.rateChanges().stream()
                .filter(change -> change.estimate().isPresent())
                .toList();
        line("%nRates by what was reported, actual over planned with the 90 %% interval of the median:");
        if (!estimated.isEmpty()) {
            line(
                    "%-16s %5s %6s %13s %6s  %-24s %9s  %s",
                    "reported", "spans", "ratio", "interval", "weight", "rate", "now", "proposed");
            estimated.forEach(change -> change.estimate().ifPresent(found -> rate(change, found)));
        }
        List<String> few = results.rateChanges().stream()
                .filter(change -> change.estimate().isEmpty() && change.reported() > 0)
                .map(change -> change.learned() + " (" + change.reported() + ")")
                .distinct()
                .toList();
        if (!few.isEmpty()) {
            line("No proposal of too few spans: %s.", String.join(", ", few));
        }
        if (estimated.isEmpty() && few.isEmpty()) {
            line("No hours and no quantities are reported of finished work.");
        }
    }

    private void rate(RateChange change, RatioEstimate found) {
        line(
                "%-16s %5d %6.2f %13s %6.2f  %-24s %9s  %s",
                change.learned(),
                change.reported(),
                found.medianRatio(),
                interval(found),
                found.weightRatio(),
                change.rate().map(RateKey::key).orElse("-")
                        + (change.kind().isEmpty() ? "" : " (" + Printable.of(change.kind()) + ")"),
                change.before().map(rate -> digits(rate.value())).orElse("-"),
                change.after().map(LearnReport::range).orElse(change.why()));
    }

    private static String interval(RatioEstimate found) {
        return String.format(Locale.ROOT, "%.2f to %.2f", found.lowRatio(), found.highRatio());
    }

    private static String range(Rate rate) {
        return digits(rate.value()) + " (" + digits(rate.low()) + " to " + digits(rate.high()) + ")";
    }

    /** Four digits, without an exponent. */
    private static String digits(double value) {
        return value == 0
                ? "0"
                : new BigDecimal(value)
                        .round(new MathContext(4))
                        .stripTrailingZeros()
                        .toPlainString();
    }

    private void friction() {
        int measured = results.frictionChanges().stream()
                .filter(change -> change.stratum().isEmpty())
                .mapToInt(FrictionChange::pulls)
                .sum();
        if (measured == 0) {
            return;
        }
        line("%nFriction from %s, as a factor on the shipped dry coefficients:", Counted.of(measured, "measured pull"));
        line("%-46s %5s %6s %13s %6s  %s", "ducts", "spans", "ratio", "interval", "weight", "innerduct on duct, dry");
        results.frictionChanges().stream().limit(MOST_STRATA).forEach(change -> {
            String name = change.stratum().isEmpty() ? "all" : Printable.of(change.stratum());
            Optional<RatioEstimate> found = change.estimate();
            if (found.isEmpty()) {
                line("%-46s %5d  too few spans", name, change.spans());
            } else {
                line(
                        "%-46s %5d %6.2f %13s %6.2f  %s > %s",
                        name,
                        change.spans(),
                        found.get().medianRatio(),
                        interval(found.get()),
                        found.get().weightRatio(),
                        digits(change.before().dry().ductRatio()),
                        change.after()
                                .map(sets -> digits(sets.dry().ductRatio()))
                                .orElse("-"));
            }
        });
        more(results.frictionChanges().size() - MOST_STRATA, "friction_changes.csv");
    }

    private void chances() {
        if (results.opened() == 0) {
            return;
        }
        line(
                "%nContents of %s, as chances that a run with this field book simulates with:",
                Counted.of(results.opened(), "opened duct"));
        line("%-20s %-46s %7s %7s  %s", "chance", "ducts", "looked", "so", "before > after");
        results.chanceChanges().stream().limit(MOST_STRATA).forEach(this::chance);
        more(results.chanceChanges().size() - MOST_STRATA, "chance_changes.csv");
    }

    private void chance(ChanceChange change) {
        line(
                "%-20s %-46s %7d %7d  %.3f > %.3f",
                change.chance(),
                change.stratum().isEmpty() ? "all" : Printable.of(change.stratum()),
                change.looked(),
                change.events(),
                change.beforeRatio(),
                change.afterRatio());
    }

    private void more(int count, String table) {
        if (count > 0) {
            line("and %d more in %s", count, table);
        }
    }

    private void leftOut() {
        List<LeftOut> leftOut = results.leftOut();
        if (leftOut.isEmpty()) {
            return;
        }
        line("%nLeft out, %s; a median is hardly moved by such errors:", Counted.of(leftOut.size(), "report"));
        leftOut.stream()
                .limit(MOST_LEFT_OUT)
                .forEach(left -> line(
                        "  entry %d, %s, %s%s: %s",
                        left.entry(),
                        Printable.line(left.subject()),
                        left.fact(),
                        left.item().isEmpty() ? "" : " " + Printable.line(left.item()),
                        left.why()));
        more(leftOut.size() - MOST_LEFT_OUT, "left_out.csv");
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append(System.lineSeparator());
    }
}

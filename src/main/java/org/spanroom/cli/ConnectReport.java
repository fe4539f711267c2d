package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.ConnectionResult;
import org.spanroom.model.program.ConnectionStep;
import org.spanroom.model.program.Way;
import org.spanroom.model.program.WayStep;
import org.spanroom.pipeline.ConnectRun.ConnectSummary;

/** What {@code connect} says at its end. */
final class ConnectReport {
    private static final int MOST_SHOWN = 40;

    private final StringBuilder text = new StringBuilder();
    private final ConnectSummary summary;
    private final UnitSystem units;

    private ConnectReport(ConnectSummary summary) {
        this.summary = summary;
        this.units = summary.units();
    }

    static String text(ConnectSummary summary) {
        var report = new ConnectReport(summary);
        report.totals();
        report.served();
        report.notServed();
        summary.notes().forEach(note -> report.line("%nNote: %s.", note));
        report.line(
                "%nResults: %s", summary.files().stream().map(String::valueOf).collect(Collectors.joining(", ")));
        report.line("%s", SummaryJson.CAUTION);
        return report.text.toString();
    }

    private void totals() {
        List<ConnectionResult> results = summary.results();
        long served = results.stream().filter(ConnectionResult::isServed).count();
        line(
                "%n%,d of %s served; recovery and new build cost %,.0f %s, with all rates at their values.",
                served, Counted.of(results.size(), "connection"), summary.money(), summary.currency());
        line(
                "%s, %s.",
                Counted.of(ducts(WayStep.Action.RECOVER), "duct") + " recovered",
                Counted.of(ducts(WayStep.Action.BUILD), "new duct") + " built");
        OptionalDouble gap = summary.gapRatio();
        if (gap.isPresent()) {
            line(
                    "No plan costs less than %,.0f%s (bound); gap: %.1f %% of %s.",
                    summary.boundMoney(),
                    summary.unservedMoney() > 0 ? ", with the value that it does not serve" : "",
                    100 * gap.getAsDouble(),
                    summary.unservedMoney() > 0
                            ? String.format(Locale.ROOT, "%,.0f, cost and value not served", summary.totalMoney())
                            : "the cost");
        } else {
            line("There is no bound: a connection that must be served cannot be.");
        }
        if (!summary.isReproducible()) {
            line("Not reproducible: the time limit ended the search or the bound.");
        }
    }

    private long ducts(WayStep.Action action) {
        return summary.results().stream()
                .flatMap(result -> result.steps().stream())
                .filter(step -> step.step().action() == action)
                .map(step -> step.step().section().id() + " " + duct(step))
                .distinct()
                .count();
    }

    private static String duct(ConnectionStep step) {
        return step.step().duct().map(duct -> duct.spanId()).orElse("new " + step.newDuct());
    }

    private void served() {
        List<ConnectionResult> served =
                summary.results().stream().filter(ConnectionResult::isServed).toList();
        if (served.isEmpty()) {
            return;
        }
        line("%nServed, cost in %s (shared: ducts paid together with others):", summary.currency());
        line(
                "%-20s %6s %10s  %4s %7s %5s %11s %6s  %10s %s",
                "connection",
                "cables",
                "length " + units.unit("m"),
                "free",
                "recover",
                "build",
                "cost share",
                "shared",
                "can begin",
                "");
        for (ConnectionResult result : served.subList(0, Math.min(MOST_SHOWN, served.size()))) {
            Way way = result.findWay().orElseThrow();
            line(
                    "%-20s %6d %10s  %4d %7d %5d %,11.0f %6s  %10s %s",
                    Printable.of(result.connection().name()),
                    result.connection().cables(),
                    units.number(way.lengthM(), 1, "m"),
                    way.count(WayStep.Action.FREE),
                    way.count(WayStep.Action.RECOVER),
                    way.count(WayStep.Action.BUILD),
                    result.shareMoney(),
                    result.sharedWith().isEmpty()
                            ? "-"
                            : "+" + result.sharedWith().size(),
                    way.earliest(summary.network().onDate()),
                    late(result));
        }
        rest(served.size());
    }

    private String late(ConnectionResult result) {
        return result.isOnTime(summary.network().onDate()).orElse(true)
                ? ""
                : "late: needed by "
                        + result.connection().neededBy().map(String::valueOf).orElse("");
    }

    private void notServed() {
        List<ConnectionResult> not =
                summary.results().stream().filter(result -> !result.isServed()).toList();
        if (not.isEmpty()) {
            return;
        }
        line("%nNot served:");
        for (ConnectionResult result : not.subList(0, Math.min(MOST_SHOWN, not.size()))) {
            Connection row = result.connection();
            line(
                    "%-20s %s",
                    Printable.of(row.name().isEmpty() ? "line " + row.line() : row.name()),
                    Printable.of(result.whyNot()));
        }
        rest(not.size());
    }

    private void rest(int all) {
        if (all > MOST_SHOWN) {
            line("  and %d more, in the results", all - MOST_SHOWN);
        }
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append(System.lineSeparator());
    }
}

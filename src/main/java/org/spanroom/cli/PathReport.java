package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.Way;
import org.spanroom.model.program.WayStep;
import org.spanroom.output.JsonObject;
import org.spanroom.pipeline.PathRun.PathSummary;

/** What {@code path} says at its end. */
final class PathReport {
    private final StringBuilder text = new StringBuilder();
    private final DuctNetwork network;
    private final UnitSystem units;

    private PathReport(PathSummary summary) {
        network = summary.network();
        units = summary.units();
    }

    static String text(PathSummary summary) {
        var report = new PathReport(summary);
        report.ways(summary);
        report.steps(summary.ways().get(0));
        report.line(
                "%nResults: %s", summary.files().stream().map(String::valueOf).collect(Collectors.joining(", ")));
        report.line("%s", SummaryJson.CAUTION);
        return report.text.toString();
    }

    private void ways(PathSummary summary) {
        var request = summary.request();
        line(
                "%n%s for %s from vault %s to vault %s, the best first, cost in %s, likely (low to high):",
                Counted.of(summary.ways().size(), "way"),
                Counted.of(request.cables(), "cable"),
                Printable.of(request.from()),
                Printable.of(request.to()),
                summary.currency());
        line(
                "%3s %9s  %4s %7s %5s  %-32s %6s %10s %7s  %s",
                "way",
                "length " + units.unit("m"),
                "free",
                "recover",
                "build",
                "cost",
                "hours",
                "can begin",
                "chance",
                "binding section");
        int number = 0;
        for (Way way : summary.ways()) {
            number++;
            line(
                    "%3d %9s  %4d %7d %5d  %-32s %6.1f %10s %7s  %s (%s)",
                    number,
                    units.number(way.lengthM(), 1, "m"),
                    way.count(WayStep.Action.FREE),
                    way.count(WayStep.Action.RECOVER),
                    way.count(WayStep.Action.BUILD),
                    money(way.costs().range()),
                    way.siteHours(),
                    way.earliest(network.onDate()),
                    percent(way.feasibleRatio(network.samples())),
                    Printable.of(way.binding().section().id()),
                    Counted.of(way.binding().section().widthPositions(), "position"));
        }
    }

    private void steps(Way way) {
        line("%nWay 1, section by section:");
        line(
                "%-16s %-16s %9s  %-8s %-11s %5s  %10s  %s",
                "from", "to", "length " + units.unit("m"), "action", "positions", "rank", "cost", "span");
        for (WayStep step : way.steps()) {
            line(
                    "%-16s %-16s %9s  %-8s %-11s %5s  %10s  %s",
                    Printable.of(network.vaultId(step.from())),
                    Printable.of(network.vaultId(step.to())),
                    units.number(step.section().lengthM(), 1, "m"),
                    step.action().key(),
                    positions(step),
                    step.duct()
                            .filter(duct -> duct.rank().isPresent())
                            .map(duct -> String.valueOf(duct.rank().getAsInt()))
                            .orElse("-"),
                    step.action() == WayStep.Action.FREE
                            ? "-"
                            : String.format(
                                    Locale.ROOT, "%,.0f", step.costs().range().likelyMoney()),
                    step.duct().map(DuctOffer::spanId).map(Printable::of).orElse("new duct"));
        }
    }

    private static String positions(WayStep step) {
        return switch (step.action()) {
            case FREE -> String.valueOf(step.duct().orElseThrow().positionsNow());
            case RECOVER ->
                step.duct().orElseThrow().positionsNow() + " > "
                        + step.duct().orElseThrow().positionsAfter();
            case BUILD -> "0 > " + step.newDuct().orElseThrow().positions();
        };
    }

    private static String money(MoneyRange range) {
        return String.format(
                Locale.ROOT, "%,.0f (%,.0f to %,.0f)", range.likelyMoney(), range.lowMoney(), range.highMoney());
    }

    private static String percent(OptionalDouble ratio) {
        return ratio.isPresent() ? String.format(Locale.ROOT, "%.0f %%", 100 * ratio.getAsDouble()) : "-";
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append(System.lineSeparator());
    }

    /** Returns the same for programs. */
    static String json(PathSummary summary) {
        DuctNetwork network = summary.network();
        List<JsonObject> ways = summary.ways().stream()
                .map(way -> new JsonObject()
                        .number("length_m", way.lengthM(), 3)
                        .number("sections", way.steps().size())
                        .number("sections_free", way.count(WayStep.Action.FREE))
                        .number("sections_recover", way.count(WayStep.Action.RECOVER))
                        .number("sections_build", way.count(WayStep.Action.BUILD))
                        .number("cost_money", way.costs().money(), 2)
                        .number("cost_low_money", way.costs().range().lowMoney(), 2)
                        .number("cost_likely_money", way.costs().range().likelyMoney(), 2)
                        .number("cost_high_money", way.costs().range().highMoney(), 2)
                        .number("site_hours", way.siteHours(), 2)
                        .number("lead_days", way.leadDays())
                        .text("earliest_day", way.earliest(network.onDate()).toString())
                        .number(
                                "feasible_chance_pct",
                                100 * way.feasibleRatio(network.samples()).orElse(Double.NaN),
                                1)
                        .text("binding_section", way.binding().section().id())
                        .number("binding_positions", way.binding().section().widthPositions())
                        .objects(
                                "steps",
                                way.steps().stream()
                                        .map(step -> step(network, step))
                                        .toList()))
                .toList();
        return SummaryJson.begin("path")
                .text("from", summary.request().from())
                .text("to", summary.request().to())
                .number("cables", summary.request().cables())
                .text("currency", summary.currency())
                .objects("ways", ways)
                .texts("files", summary.files().stream().map(String::valueOf).toList())
                .texts("cautions", List.of(SummaryJson.CAUTION))
                .write();
    }

    private static JsonObject step(DuctNetwork network, WayStep step) {
        return new JsonObject()
                .text("section_id", step.section().id())
                .text("vault_from", network.vaultId(step.from()))
                .text("vault_to", network.vaultId(step.to()))
                .text("action", step.action().key())
                .text("span_id", step.duct().map(DuctOffer::spanId).orElse(""))
                .number("cost_money", step.costs().money(), 2);
    }
}

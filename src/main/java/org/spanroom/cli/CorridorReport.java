package org.spanroom.cli;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.program.Corridor;
import org.spanroom.model.program.SectionNeed;
import org.spanroom.model.program.WayStep;
import org.spanroom.output.JsonObject;
import org.spanroom.pipeline.CorridorRun.CorridorSummary;

/** What {@code corridors} says at its end. */
final class CorridorReport {
    private static final int MOST_CORRIDORS = 12;
    private static final int MOST_SECTIONS = 8;

    private final StringBuilder text = new StringBuilder();
    private final CorridorSummary summary;
    private final UnitSystem units;

    private CorridorReport(CorridorSummary summary) {
        this.summary = summary;
        this.units = summary.units();
    }

    static String text(CorridorSummary summary) {
        var report = new CorridorReport(summary);
        report.corridors();
        report.needed();
        report.line(
                "%nResults: %s", summary.files().stream().map(String::valueOf).collect(Collectors.joining(", ")));
        report.line("%s", SummaryJson.CAUTION);
        return report.text.toString();
    }

    private void corridors() {
        List<Corridor> corridors = summary.corridors();
        long islands = corridors.stream().filter(Corridor::isIsland).count();
        line(
                "%n%s for %s, %,d of them islands of one section.",
                Counted.of(corridors.size(), "corridor"),
                Counted.of(summary.request().cables(), "cable"),
                islands);
        if (corridors.isEmpty()) {
            return;
        }
        line("The best, by positions gained for their cost over their length, cost in %s:", summary.currency());
        line(
                "%8s  %-12s %-12s %9s %9s %8s %7s %11s %7s",
                "corridor",
                "from",
                "to",
                "length " + units.unit("m"),
                "sections",
                "recover",
                "gained",
                "cost",
                "hours");
        int number = 0;
        for (Corridor corridor : corridors.subList(0, Math.min(MOST_CORRIDORS, corridors.size()))) {
            number++;
            List<WayStep> steps = corridor.way().steps();
            line(
                    "%8d  %-12s %-12s %9s %9d %8d %7s %,11.0f %7.1f",
                    number,
                    Printable.of(summary.network().vaultId(steps.get(0).from())),
                    Printable.of(summary.network()
                            .vaultId(steps.get(steps.size() - 1).to())),
                    units.number(corridor.way().lengthM(), 1, "m"),
                    steps.size(),
                    corridor.recovered().size(),
                    "+" + corridor.gainedPositions(),
                    corridor.way().costs().range().likelyMoney(),
                    corridor.way().siteHours());
        }
    }

    private void needed() {
        List<SectionNeed> needed = summary.sections().stream()
                .filter(section -> section.narrowest() > 0)
                .sorted(Comparator.comparingInt((SectionNeed need) -> -need.narrowest())
                        .thenComparing(need -> need.section().id()))
                .toList();
        if (needed.isEmpty()) {
            return;
        }
        line("%nFirst needed: narrowest on most of %s between hubs:", Counted.of(summary.pairs(), "way"));
        line("%-32s %6s %10s %12s  %s", "section", "ways", "narrowest", "widest duct", "action");
        for (SectionNeed need : needed.subList(0, Math.min(MOST_SECTIONS, needed.size()))) {
            line(
                    "%-32s %6d %10d %12s  %s",
                    Printable.of(need.section().id()),
                    need.ways(),
                    need.narrowest(),
                    need.section().widthNowPositions() + " > " + need.section().widthPositions(),
                    need.step().map(step -> step.action().key()).orElse("build"));
        }
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append(System.lineSeparator());
    }

    /** Returns the same for programs. */
    static String json(CorridorSummary summary) {
        return SummaryJson.begin("corridors")
                .number("cables", summary.request().cables())
                .text("currency", summary.currency())
                .number("hub_ways", summary.pairs())
                .objects(
                        "corridors",
                        summary.corridors().stream()
                                .map(corridor -> json(summary, corridor))
                                .toList())
                .texts("files", summary.files().stream().map(String::valueOf).toList())
                .texts("cautions", List.of(SummaryJson.CAUTION))
                .write();
    }

    private static JsonObject json(CorridorSummary summary, Corridor corridor) {
        List<WayStep> steps = corridor.way().steps();
        return new JsonObject()
                .text("vault_from", summary.network().vaultId(steps.get(0).from()))
                .text(
                        "vault_to",
                        summary.network().vaultId(steps.get(steps.size() - 1).to()))
                .number("length_m", corridor.way().lengthM(), 3)
                .number("sections", steps.size())
                .number("sections_recover", corridor.recovered().size())
                .number("positions_gained", corridor.gainedPositions())
                .number("cost_money", corridor.way().costs().money(), 2)
                .number("site_hours", corridor.way().siteHours(), 2);
    }
}

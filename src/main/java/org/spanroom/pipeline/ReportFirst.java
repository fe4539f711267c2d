package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.rank.UncertaintySettings;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.report.PageTexts.First;
import org.spanroom.output.report.PayloadTable;
import org.spanroom.output.report.ReportSections;

/** The sections to do first, in words: those at the top of the ranking of sections. */
final class ReportFirst {
    private static final int SECTIONS = 5;
    private static final int REASONS = 3;
    private static final String LEFT_OUT = "not chosen";

    private final PayloadTable<RecordedSpans.Row> spans;
    private final ReportValues values;
    private final UnitSystem units;
    private final ReportWords words;
    private final UncertaintySettings settings;
    private final Optional<ReportPlaces> planned;

    /**
     * Prepares the words.
     *
     * @param planned the spans with their years, where the page has an annual program
     */
    ReportFirst(
            ReportSpansReader.Read read,
            UnitSystem units,
            ReportWords words,
            UncertaintySettings settings,
            Optional<ReportPlaces> planned) {
        this.spans = read.table();
        this.values = read.values();
        this.units = units;
        this.words = words;
        this.settings = settings;
        this.planned = planned;
    }

    /** Returns what the order of these sections is, and what their cost is. */
    String note(List<First> first) {
        if (first.isEmpty()) {
            return "";
        }
        String order =
                "In the order of the ranking, each by its best span. The cost adds up the ranked spans of the section"
                        + " one by one; one visit for all of them shares set-ups and costs less.";
        if (settings.simulated()) {
            order += " How certain: of " + Counted.of(settings.samples(), "simulated draw")
                    + " of what is uncertain, in which share"
                    + " the best span can be recovered, and in which it is among the best " + settings.topCount() + ".";
        }
        if (planned.isEmpty()) {
            return order;
        }
        long chosen =
                first.stream().filter(section -> isInProgram(section.program())).count();
        return order
                + " The ranking judges each span by itself. The program below chooses what fits the budgets, crews and"
                + " wanted connections, and takes " + (chosen == 0 ? "none" : Counted.whole(chosen)) + " of these "
                + Counted.whole(first.size()) + " sections, in whole or in part.";
    }

    private static boolean isInProgram(String program) {
        return !program.equals(LEFT_OUT);
    }

    /** Returns the first sections that have a ranked span. */
    List<First> of(ReportSections sections) {
        var first = new ArrayList<First>();
        int name = sections.table().place("section_id");
        for (int section = 0; section < sections.table().rows() && first.size() < SECTIONS; section++) {
            List<Integer> ranked = sections.spans().get(section).stream()
                    .filter(this::isRanked)
                    .toList();
            if (!ranked.isEmpty()) {
                first.add(first(first.size() + 1, sections.table().text(section, name), ranked));
            }
        }
        return first;
    }

    private boolean isRanked(int row) {
        return !Double.isNaN(number(row, "rank"));
    }

    private First first(int order, String section, List<Integer> ranked) {
        int best = ranked.get(0);
        long gained = (long) sum(ranked, "positions_gained");
        return new First(
                order,
                section,
                Counted.of(ranked.size(), "span") + ", " + Counted.of(gained, "position") + " gained",
                "from " + text(best, "vault_a") + " to " + text(best, "vault_b") + ", "
                        + units.words(number(best, "length_m"), 0, "m"),
                why(best),
                cost(ranked),
                sure(best),
                program(ranked),
                best);
    }

    private String cost(List<Integer> rows) {
        double low = sum(rows, "recovery_low_money");
        return low > 0
                ? words.money(new MoneyRange(low, sum(rows, "recovery_likely_money"), sum(rows, "recovery_high_money")))
                : words.money(sum(rows, "recovery_money"));
    }

    /** Returns how many of its spans the program takes, by year; empty without a program. */
    private String program(List<Integer> rows) {
        if (planned.isEmpty()) {
            return "";
        }
        Map<Integer, Integer> byYear = new TreeMap<>();
        for (int row : rows) {
            planned.get().findYear(row).ifPresent(year -> byYear.merge(year, 1, Integer::sum));
        }
        return byYear.isEmpty()
                ? LEFT_OUT
                : byYear.entrySet().stream()
                        .map(year -> Counted.of(year.getValue(), "span") + " in year " + year.getKey())
                        .collect(Collectors.joining(", "));
    }

    private String sure(int row) {
        double feasible = number(row, "feasible_chance_pct");
        double top = number(row, "top_chance_pct");
        if (Double.isNaN(feasible)) {
            return "not simulated";
        }
        String works = "feasible in " + ReportWords.percent(feasible);
        return Double.isNaN(top)
                ? works
                : works + " of draws, in the top " + settings.topCount() + " in " + ReportWords.percent(top);
    }

    /** What gives the best span most of its points. */
    private String why(int row) {
        return ReportWords.sentence(reasons(row));
    }

    private String reasons(int row) {
        return values.parts(row).stream()
                .filter(part -> part.valueRatio() > 0)
                .sorted(Comparator.comparingDouble((ReportValues.Part part) -> -part.valueRatio() * part.weightRatio()))
                .limit(REASONS)
                .map(this::words)
                .collect(Collectors.joining("; "));
    }

    private String words(ReportValues.Part part) {
        double quantity = part.quantityInUnit();
        long whole = Math.round(quantity);
        return switch (part.key()) {
            case "room_gained" -> "best span gains " + Counted.of(whole, "position");
            case "shortage" -> whole == 0 ? "no position free today" : "only " + whole + " free today";
            case "ease_pull" -> "pull uses " + ReportWords.percent(quantity) + " of its tightest limit";
            case "ease_bends" -> "bends of " + Counted.fixed(quantity, 0) + "\u00b0 in all";
            case "ease_water" -> whole == 0 ? "no water recorded" : Counted.of(whole, "wet place");
            case "ease_access" ->
                whole == 0 ? "vaults easy to work at" : Counted.of(whole, "drawback") + " at the vaults";
            case "saving" -> "saves " + Counted.fixed(quantity, 1) + " times what it costs, rates at their values";
            case "permits_avoided" -> Counted.of(whole, "permit") + " avoided";
            case "knowledge" -> ReportWords.percent(quantity) + " of what matters is recorded";
            case "length" -> units.words(quantity, 0, "m") + " in one set-up";
            default -> part.key().replace('_', ' ') + " " + Counted.fixed(quantity, 1);
        };
    }

    private double sum(List<Integer> rows, String column) {
        double sum = 0;
        for (int row : rows) {
            double number = number(row, column);
            sum += Double.isNaN(number) ? 0 : number;
        }
        return sum;
    }

    private double number(int row, String column) {
        return spans.number(row, spans.place(column));
    }

    private String text(int row, String column) {
        return spans.text(row, spans.place(column));
    }
}

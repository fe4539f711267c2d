package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.spanroom.model.program.RecordedProgram;
import org.spanroom.model.rank.RankedSpan;

/** What an annual program does with a span, and why. */
public final class ExplanationProgram {
    /** Spans of the reserve that are named as what would take a span's place. */
    private static final int MOST_SHOWN = 3;

    private ExplanationProgram() {}

    /** Returns the tree of a span of which only the program is asked. */
    public static ExplanationSection of(String spanId, RecordedProgram program) {
        return new ExplanationParts()
                .text("span_id", "", spanId)
                .add(section(
                        spanId,
                        program,
                        "it is not eligible: not a span of the run, excluded, in must_not, done, or failed"))
                .add(new ExplanationParts()
                        .text("caution", "caution", Explanation.CAUTION)
                        .section("", "Limits of these figures"))
                .section("", "Span " + spanId);
    }

    /** Returns a tree with what the program does with its span, before the limits of the figures. */
    public static ExplanationSection with(ExplanationSection tree, RankedSpan span, RecordedProgram program) {
        var parts = new ArrayList<>(tree.parts());
        String notEligible = span.rank().isPresent()
                ? "it is not eligible: the program's config names it in must_not, or the work is reported as done or failed"
                : "it is not eligible: the run excludes it, for the reasons in its ranking";
        parts.add(parts.size() - 1, section(span.span().id(), program, notEligible));
        return new ExplanationSection(tree.key(), tree.title(), parts);
    }

    private static ExplanationSection section(String spanId, RecordedProgram program, String notEligible) {
        var parts = new ExplanationParts();
        RecordedProgram.Planned planned = program.planned().get(spanId);
        RecordedProgram.Reserved reserved = program.reserved().get(spanId);
        if (planned != null) {
            addPlanned(parts, planned, program);
        } else if (reserved != null) {
            parts.text("in_program", "in the program", "no").text("why_not", "because", reserved.whyNot());
            reserved.place()
                    .ifPresent(place -> parts.whole("reserve_place", "place in the reserve", place)
                            .because("of " + reserveOf(program).size()));
        } else {
            parts.text("in_program", "in the program", "no").text("why_not", "because", notEligible);
        }
        return parts.section("program", "Annual program");
    }

    private static void addPlanned(ExplanationParts parts, RecordedProgram.Planned planned, RecordedProgram program) {
        parts.text("in_program", "in the program", "yes")
                .whole("year", "year", planned.year())
                .text("week", "week of", planned.week().toString())
                .text("crew", "crew", planned.crew())
                .whole("order", "place in the crew's week", planned.place())
                .text("first_day", "first day", planned.firstDay().toString())
                .text("last_day", "last day", planned.lastDay().toString())
                .number(
                        "site_hours",
                        "hours on site by the program",
                        planned.amounts().siteHours(),
                        2,
                        "h")
                .number(
                        "shared_hours",
                        "shared with the work before it",
                        planned.amounts().sharedHours(),
                        2,
                        "h")
                .number("cost_money", "cost by the program", planned.amounts().costMoney(), 0, "")
                .number("budget_money", "against its budget", planned.amounts().budgetMoney(), 0, "")
                .text("apply_by", "apply for permits by", planned.applyBy().toString())
                .text("why", "because", planned.why())
                .texts("connections", "connections that need it", planned.connections())
                .texts("same_section", "spans of its section in the program", sameSection(planned, program))
                .texts(
                        "would_take_its_place",
                        "if it fails, the reserve begins with",
                        reserveOf(program).stream().limit(MOST_SHOWN).toList());
    }

    private static List<String> sameSection(RecordedProgram.Planned planned, RecordedProgram program) {
        return program.planned().values().stream()
                .filter(other -> other.sectionId().equals(planned.sectionId())
                        && !other.spanId().equals(planned.spanId()))
                .map(other -> other.spanId() + " (" + other.week() + ")")
                .toList();
    }

    private static List<String> reserveOf(RecordedProgram program) {
        return program.reserved().values().stream()
                .filter(reserved -> reserved.place().isPresent())
                .sorted(Comparator.comparingInt(reserved -> reserved.place().getAsInt()))
                .map(RecordedProgram.Reserved::spanId)
                .toList();
    }
}

package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.SharedShift;
import org.spanroom.model.program.RecordedProgram;
import org.spanroom.output.explain.ExplanationReading;

/**
 * When ducts are recovered, and what the jobs take and cost: by the program where they are in one, so that a sheet and its program name one
 * amount; else each by itself.
 */
final class JobWords {
    private JobWords() {}

    /** Returns sentences on the job of a duct: its days, where they are not those of all ducts, and its cost by the program. */
    static List<String> of(SheetBook book, DuctWork duct, SectionWork section) {
        var sentences = new ArrayList<String>();
        if (common(section).isEmpty()) {
            duct.planned().ifPresent(planned -> sentences.add(days(planned) + "."));
        }
        duct.planned()
                .ifPresent(planned -> duct.explained()
                        .assessment()
                        .effort()
                        .ifPresent(effort -> sentences.add(cost(book, planned.amounts(), effort))));
        return sentences;
    }

    private static String cost(SheetBook book, RecordedProgram.Amounts program, Effort byItself) {
        String currency = ExplanationReading.printable(book.currency());
        String cost = String.format(Locale.ROOT, "Cost by the program %,.0f %s", program.costMoney(), currency)
                + (Math.rint(program.budgetMoney()) == Math.rint(program.costMoney())
                        ? ""
                        : String.format(Locale.ROOT, ", %,.0f against its budget", program.budgetMoney()));
        return program.isShared()
                ? cost
                        + String.format(
                                Locale.ROOT,
                                "; %.2f h of set-up shared with the work before it (by itself %.2f h and %,.0f).",
                                program.sharedHours(),
                                byItself.time().siteHours(),
                                byItself.recoveryMoney())
                : cost + ".";
    }

    /** Returns what all ducts have in common: their days, and what they take together. */
    static String together(SectionWork section) {
        return common(section).map(words -> words + ". ").orElse("") + hours(section);
    }

    /** Returns when all ducts are recovered, where they are in the same days. */
    private static Optional<String> common(SectionWork section) {
        List<Optional<String>> all = section.ducts().stream()
                .map(duct -> duct.planned().map(JobWords::days))
                .distinct()
                .toList();
        return all.size() == 1 ? all.get(0) : Optional.empty();
    }

    private static String days(RecordedProgram.Planned planned) {
        return "Week of " + planned.week() + ", " + ExplanationReading.printable(planned.crew()) + ", first day "
                + planned.firstDay() + ", apply by " + planned.applyBy();
    }

    private static String hours(SectionWork section) {
        long inProgram = section.ducts().stream()
                .filter(duct -> duct.planned().isPresent())
                .count();
        if (inProgram > 0) {
            return byProgram(section, inProgram);
        }
        return section.together()
                .map(JobWords::inOneShift)
                .orElse(section.ducts().size() > 1 ? "Hours are those of each duct by itself." : "");
    }

    /** With a program, hours in one shift would be a second amount for the same work. */
    private static String byProgram(SectionWork section, long inProgram) {
        if (inProgram < section.ducts().size()) {
            return "Hours are those of the program; of a duct that is not in it, those of the duct by itself.";
        }
        double allHours = section.ducts().stream()
                .map(DuctWork::siteHours)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .sum();
        return inProgram > 1
                ? String.format(Locale.ROOT, "All ducts by the program: %.2f h on site.", allHours)
                : "Hours are those of the program.";
    }

    private static String inOneShift(SharedShift shift) {
        return String.format(
                Locale.ROOT,
                "All ducts in one shift: %.2f h on site, %.2f h less than each by itself, since daily work at the vaults counts once; %s",
                shift.siteHours(),
                shift.savedHours(),
                shift.fitsWindow() ? "this fits into one shift." : "this does not fit into one shift.");
    }
}

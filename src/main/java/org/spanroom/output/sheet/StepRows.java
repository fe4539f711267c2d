package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.model.Counted;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.program.RecordedProgram;
import org.spanroom.model.pull.InnerductPull;

/** The steps of the work in their order, with the hours that are planned and a place for those that it took. */
final class StepRows {
    private static final List<SheetHead> HEADS =
            List.of(new SheetHead("Step", 52), new SheetHead("Planned h", 18), new SheetHead("Actual h", 19));

    private StepRows() {}

    static SheetTable of(DuctSheet duct, SheetBlanks page) {
        return duct.effort()
                .map(effort -> table(duct, effort, page))
                .orElseGet(() -> SheetTable.whole("Steps", "steps", HEADS, List.of()));
    }

    private static SheetTable table(DuctSheet duct, Effort effort, SheetBlanks page) {
        var rows = new ArrayList<SheetRow>();
        for (EffortStep step : EffortStep.values()) {
            if (effort.stepHours().of(step) > 0) {
                rows.add(row(step, effort.stepHours().of(step), page));
            }
            if (step == EffortStep.PULLING) {
                sleevesWithPull(duct, effort).ifPresent(rows::add);
            }
        }
        duct.work().shared().ifPresent(program -> rows.add(shared(effort, program)));
        rows.add(SheetRow.of(
                SheetCell.strong("On site in all, " + shifts(duct)),
                SheetCell.strong(hours(duct.work().siteHours().orElseThrow())).styled("number"),
                SheetCell.words("")));
        return SheetTable.whole("Steps in the order of the work", "steps", HEADS, rows);
    }

    private static SheetRow row(EffortStep step, double hours, SheetBlanks page) {
        return SheetRow.of(
                SheetCell.words(words(step)),
                SheetCell.number(hours(hours)),
                SheetCell.blank(page.of(FieldFact.STEP_HOURS, step.key(), hours, 2)));
    }

    /** Where two or more innerducts come out, sleeves take no hours of their own; without a line a crew would finish all pulls and lose the way in. */
    private static Optional<SheetRow> sleevesWithPull(DuctSheet duct, Effort effort) {
        return pullWithSleeves(duct)
                .map(pull -> SheetRow.of(
                        SheetCell.strong("with pull " + pull.turn() + ": "
                                + Counted.of(effort.quantities().sleeves(), "sleeve") + " in"),
                        SheetCell.words("in the pull").styled("number"),
                        SheetCell.words("")));
    }

    /** Returns the pull that the sleeves go in with, the next to last; empty where one innerduct comes out, since they then go in by rod. */
    static Optional<InnerductPull> pullWithSleeves(DuctSheet duct) {
        int pulls = duct.pulls().size();
        boolean hasSleeves = duct.effort()
                .filter(effort -> effort.quantities().sleeves() > 0)
                .isPresent();
        return hasSleeves && pulls > 1 ? Optional.of(duct.pulls().get(pulls - 2)) : Optional.empty();
    }

    /** Hours that the program saves are set-ups of the vault that the work before has open; which steps they are is not planned. */
    private static SheetRow shared(Effort effort, RecordedProgram.Amounts program) {
        return SheetRow.of(
                SheetCell.words("set-up shared with work before"),
                SheetCell.number(hours(program.siteHours() - effort.time().siteHours())),
                SheetCell.words(""));
    }

    private static String shifts(DuctSheet duct) {
        if (duct.work().shared().isPresent()) {
            return "by the program" + (isNight(duct) ? ", at night" : "");
        }
        return "shifts: " + duct.words("effort/shifts") + (isNight(duct) ? ", at night" : "");
    }

    private static boolean isNight(DuctSheet duct) {
        return duct.effort().filter(effort -> effort.time().night()).isPresent();
    }

    static String hours(double hours) {
        return String.format(Locale.ROOT, "%.2f", hours);
    }

    private static String words(EffortStep step) {
        return switch (step) {
            case TRAFFIC_CONTROL -> "traffic control at both vaults";
            case BRIEFING -> "safety briefing";
            case OPENING -> "open the vaults";
            case PUMPING -> "pump out water";
            case VENTILATING -> "ventilate";
            case AIR_TEST -> "test the air";
            case PROOF -> "prove the path by rod or camera";
            case FREEING -> "free cables and innerducts";
            case CUTTING -> "cut innerducts that run through";
            case SET_UP -> "set up the machine";
            case TEST_PULL -> "test pull of each innerduct";
            case PULLING -> "pull the innerducts out";
            case DEAD_CABLES -> "take out dead cables";
            case SLEEVES -> "put in sleeves by rod";
            case CHIPPING -> "chip, bag and weigh";
            case SEALING -> "re-plug and seal";
            case TAKE_DOWN -> "take down";
            case CLOSING -> "close the vaults";
        };
    }
}

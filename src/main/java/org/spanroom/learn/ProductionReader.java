package org.spanroom.learn;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.learn.LearnSettings;
import org.spanroom.model.learn.LeftOut;

/**
 * Reads ratios of actual to planned out of a field book, one for each span and thing that is learned.
 *
 * <p>What was planned is taken from the report where it is of the run's own sheets, else from the run, whose rates are those that
 * change: a plan by other rates would be learned from twice.
 */
final class ProductionReader {
    private final FieldBook book;
    private final String runCode;
    private final PlannedFigures figures;
    private final LearnSettings settings;
    private final Map<Learnable, List<Observation>> found = new LinkedHashMap<>();
    private final List<LeftOut> leftOut = new ArrayList<>();

    /** @param runCode code of the run whose rates change */
    ProductionReader(FieldBook book, String runCode, PlannedFigures figures, LearnSettings settings) {
        this.book = book;
        this.runCode = runCode;
        this.figures = figures;
        this.settings = settings;
        Learnable.all().forEach(learnable -> found.put(learnable, new ArrayList<>()));
        book.spans().forEach(this::read);
    }

    /** Returns the ratios of each thing, in the order of the work. */
    Map<Learnable, List<Observation>> found() {
        return found;
    }

    List<LeftOut> leftOut() {
        return leftOut;
    }

    private void read(String spanId) {
        var inForce = new LinkedHashMap<String, FieldEntry>();
        for (FieldEntry entry : book.ofSpan(spanId)) {
            inForce.put(entry.fact().key() + " " + entry.item(), entry);
        }
        Optional<WorkStatus> status = book.statusOf(spanId);
        boolean unfinished = status.isPresent() && status.get() != WorkStatus.DONE;
        for (FieldEntry entry : inForce.values()) {
            if (!isOfWork(entry.fact())) {
                continue;
            }
            if (unfinished) {
                leave(entry, "the work is not done");
            } else {
                read(entry, inForce);
            }
        }
    }

    private static boolean isOfWork(FieldFact fact) {
        return switch (fact) {
            case STEP_HOURS,
                    CREW_PERSONS,
                    LUBRICANT_USED,
                    SLEEVE_USED,
                    INNERDUCT_MASS,
                    RECYCLED_MASS,
                    BAGS,
                    LOADS,
                    COST -> true;
            default -> false;
        };
    }

    private void read(FieldEntry entry, Map<String, FieldEntry> inForce) {
        switch (entry.fact()) {
            case STEP_HOURS -> hours(entry);
            case CREW_PERSONS -> add(Learnable.CREW, entry, ratio(entry));
            case LUBRICANT_USED -> add(Learnable.LUBRICANT, entry, ratio(entry));
            case SLEEVE_USED -> add(Learnable.SLEEVE_TAIL, entry, tailRatio(entry));
            case INNERDUCT_MASS -> add(Learnable.INNERDUCT_MASS, entry, ratio(entry));
            case RECYCLED_MASS -> add(Learnable.RECYCLED_SHARE, entry, over(ratio(entry), massRatio(inForce)));
            case BAGS -> add(Learnable.BAG_MASS, entry, over(massRatio(inForce), ratio(entry)));
            case LOADS -> add(Learnable.LOAD_MASS, entry, over(massRatio(inForce), ratio(entry)));
            case COST -> add(Learnable.COST, entry, ratio(entry));
            default -> throw new IllegalStateException(entry.fact().key());
        }
    }

    private void hours(FieldEntry entry) {
        for (EffortStep step : EffortStep.values()) {
            if (step.key().equals(entry.item())) {
                add(Learnable.of(step), entry, ratio(entry));
                return;
            }
        }
        leave(entry, "no step of the work has this name");
    }

    private void add(Learnable learnable, FieldEntry entry, OptionalDouble ratio) {
        double value = entry.value().keptInUnit().orElse(Double.NaN);
        if (!(value > 0)) {
            leave(entry, "not above 0");
        } else if (ratio.isEmpty()) {
            leave(entry, "nothing was planned to compare it with");
        } else if (!settings.isPlausible(ratio.getAsDouble())) {
            leave(entry, "far from the plan: an error of writing?");
        } else {
            found.getOrDefault(learnable, new ArrayList<>())
                    .add(new Observation(entry.subject(), entry.number(), entry.day(), ratio.getAsDouble()));
        }
    }

    private void leave(FieldEntry entry, String why) {
        leftOut.add(new LeftOut(entry.number(), entry.subject(), entry.fact().key(), entry.item(), why));
    }

    private OptionalDouble ratio(FieldEntry entry) {
        OptionalDouble planned = planned(entry);
        OptionalDouble done = entry.value().keptInUnit();
        return done.isPresent() && planned.isPresent() && planned.getAsDouble() > 0
                ? OptionalDouble.of(done.getAsDouble() / planned.getAsDouble())
                : OptionalDouble.empty();
    }

    private OptionalDouble planned(FieldEntry entry) {
        OptionalDouble ofSheet =
                entry.planned().isPresent() ? entry.planned().get().keptInUnit() : OptionalDouble.empty();
        if (ofSheet.isPresent() && entry.run().equals(runCode)) {
            return ofSheet;
        }
        OptionalDouble ofRun = figures.find(entry.subject(), entry.fact(), entry.item());
        return ofRun.isPresent() ? ofRun : ofSheet;
    }

    /** Returns mass over planned mass; 1 where no mass that can be believed is reported, so that counts are compared as they are. */
    private OptionalDouble massRatio(Map<String, FieldEntry> inForce) {
        FieldEntry mass = inForce.get(FieldFact.INNERDUCT_MASS.key() + " ");
        OptionalDouble ratio = mass == null ? OptionalDouble.empty() : ratio(mass);
        return ratio.isPresent() && settings.isPlausible(ratio.getAsDouble()) ? ratio : OptionalDouble.of(1);
    }

    private static OptionalDouble over(OptionalDouble ratio, OptionalDouble by) {
        return ratio.isPresent() && by.isPresent() && by.getAsDouble() > 0
                ? OptionalDouble.of(ratio.getAsDouble() / by.getAsDouble())
                : OptionalDouble.empty();
    }

    /**
     * Returns the tail of a sleeve over the planned one. Of each sleeve the length of the span and two tails were planned, so what was used
     * over what was planned moves the tails by a multiple of it.
     */
    private OptionalDouble tailRatio(FieldEntry entry) {
        OptionalDouble used = ratio(entry);
        Optional<PlannedWork> work = figures.work(entry.subject());
        OptionalDouble tailM = figures.find(entry.subject(), FieldFact.SLEEVE_USED, PlannedFigures.TAIL);
        if (used.isEmpty() || work.isEmpty() || tailM.isEmpty() || !(tailM.getAsDouble() > 0)) {
            return OptionalDouble.empty();
        }
        double tailsM = 2 * tailM.getAsDouble();
        double moreM = (used.getAsDouble() - 1) * (work.get().lengthM() + tailsM);
        return OptionalDouble.of(1 + moreM / tailsM);
    }
}

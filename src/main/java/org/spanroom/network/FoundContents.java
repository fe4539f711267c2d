package org.spanroom.network;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.spanroom.model.Counted;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Sleeve;

/**
 * The contents of one duct as crews found and left them.
 *
 * <p>First what was found, over what is recorded or assumed: items that are there or not, then counts, then sizes, then which cable is
 * in what. Then what was done: sleeves in, innerducts and cables out. An entry that contradicts the rest is not used.
 */
final class FoundContents {
    private static final List<FieldFact> FACTS = List.of(
            FieldFact.INNERDUCTS_FOUND,
            FieldFact.CABLES_FOUND,
            FieldFact.INNERDUCT_THERE,
            FieldFact.INNERDUCT_DIAMETER,
            FieldFact.INNERDUCT_WALL,
            FieldFact.INNERDUCT_COLOR,
            FieldFact.INNERDUCT_UNCUT,
            FieldFact.CABLE_THERE,
            FieldFact.CABLE_DIAMETER,
            FieldFact.CABLE_SERVICE,
            FieldFact.CABLE_TAG,
            FieldFact.CABLE_IN,
            FieldFact.INNERDUCT_OUT,
            FieldFact.CABLE_OUT,
            FieldFact.SLEEVE_CELLS);

    private final FoundContext context;
    private final FactsInForce facts;
    private final CableList laid;
    private final FoundPipes pipes;
    private final FoundCables cables;
    private final Map<String, Sleeve> sleeves = new LinkedHashMap<>();

    private FoundContents(FoundContext context) {
        this.context = context;
        this.facts = context.facts();
        this.laid = new CableList(context.duct().contents());
        this.pipes = new FoundPipes(context, laid);
        this.cables = new FoundCables(context, laid);
        context.duct().contents().sleeves().forEach(sleeve -> sleeves.put(sleeve.id(), sleeve));
    }

    /** Returns the contents; the recorded ones where no entry is about them, or too little is known to use any. */
    static Contents of(FoundContext context) {
        Contents recorded = context.duct().contents();
        Optional<FieldEntry> first = FACTS.stream()
                .flatMap(fact -> context.facts().all(fact).stream())
                .findFirst();
        return first.isEmpty() ? recorded : new FoundContents(context).find(first.get());
    }

    private Contents find(FieldEntry first) {
        boolean known = context.duct().contents().known();
        boolean bothReported = Stream.of(FieldFact.INNERDUCTS_FOUND, FieldFact.CABLES_FOUND)
                .allMatch(fact -> facts.find(fact).isPresent());
        if (!known && !bothReported) {
            context.incomplete(
                    first,
                    "nothing is recorded of the duct's contents; they stay unknown until innerducts_found and cables_found are both reported");
            return context.duct().contents();
        }
        if (isByCounts(context.duct().contents())) {
            laid.openLoose();
        }
        pipes.findItems();
        cables.findItems();
        boolean counted = pipes.count();
        counted &= cables.count();
        if (!known && !counted) {
            context.found().clear();
            context.assumed().clear();
            return context.duct().contents();
        }
        pipes.size();
        pipes.mark();
        cables.describe();
        laid.settle(pipes.names());
        placeSleeves();
        cables.move(pipes, sleeves.keySet());
        pipes.takeOut();
        cables.takeOut();
        checkSleeves();
        return new Contents(
                pipes.all(),
                sleeves.values().stream()
                        .map(sleeve -> sleeve.holding(laid.in(sleeve.id())))
                        .toList(),
                laid.in(CableList.LOOSE),
                true);
    }

    /** Whether contents are as counts give them: one cable in each innerduct, in order, the others loose because no innerduct is left for them. */
    private static boolean isByCounts(Contents contents) {
        int cables = contents.cables().size();
        for (int i = 0; i < contents.innerducts().size(); i++) {
            if (contents.innerducts().get(i).cables().size() != (i < cables ? 1 : 0)) {
                return false;
            }
        }
        return contents.sleeves().isEmpty();
    }

    private void placeSleeves() {
        for (FieldEntry entry : facts.all(FieldFact.SLEEVE_CELLS)) {
            int cells = FoundContext.count(entry);
            if (pipes.has(entry.item())) {
                context.contradiction(entry, "an innerduct of the duct has that name");
            } else if (cells < 1) {
                context.contradiction(entry, "a sleeve has at least one cell");
            } else {
                Sleeve there = sleeves.get(entry.item());
                int reserved = there == null ? 0 : Math.min(cells, there.reservedCells());
                sleeves.put(entry.item(), new Sleeve(entry.item(), cells, reserved, List.of()));
            }
        }
    }

    private void checkSleeves() {
        for (FieldEntry entry : facts.all(FieldFact.SLEEVE_CELLS)) {
            Sleeve sleeve = sleeves.get(entry.item());
            int inside = laid.in(entry.item()).size();
            if (sleeve != null && inside > sleeve.cells()) {
                context.contradiction(
                        entry, Counted.of(inside, "cable") + " are in its " + Counted.of(sleeve.cells(), "cell"));
            }
        }
    }
}

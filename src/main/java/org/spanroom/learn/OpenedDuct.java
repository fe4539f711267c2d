package org.spanroom.learn;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.ContentsScenario;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.ScenarioSettings;

/** What was found in one duct beside what was recorded or assumed of it. */
final class OpenedDuct {
    private final List<FieldEntry> entries;
    private final Duct duct;
    private final double diameterRatio;
    private final ScenarioSettings scenarios;

    /**
     * Looks at one duct.
     *
     * @param entries of its span, in the order of days
     * @param duct as it is recorded
     * @param diameterRatio by how much an assumed diameter may be wrong
     */
    OpenedDuct(List<FieldEntry> entries, Duct duct, double diameterRatio, ScenarioSettings scenarios) {
        this.entries = entries;
        this.duct = duct;
        this.diameterRatio = diameterRatio;
        this.scenarios = scenarios;
    }

    /** Returns whether anyone saw what is inside. */
    boolean isOpened() {
        return entries.stream().anyMatch(entry -> switch (entry.fact()) {
            case INNERDUCTS_FOUND,
                    CABLES_FOUND,
                    INNERDUCT_THERE,
                    CABLE_THERE,
                    BORE_DIAMETER,
                    INNERDUCT_DIAMETER,
                    INNERDUCT_WALL,
                    CABLE_DIAMETER,
                    DUCT_CONDITION -> true;
            default -> false;
        });
    }

    void countIn(Sightings sightings) {
        countCables(sightings);
        countSizes(sightings);
        countCondition(sightings);
    }

    private void countCables(Sightings sightings) {
        OptionalInt found = foundCables();
        boolean assumed = duct.contentsSource() != ContentsSource.RECORDED;
        if (!assumed) {
            if (found.isPresent()) {
                sightings.add(ChanceKind.MORE_CABLE, found.getAsInt() > recordedCables());
            }
            return;
        }
        OptionalInt innerducts = count(FieldFact.INNERDUCTS_FOUND);
        boolean cablesAssumed = !duct.contents().known() || duct.assumed().contains(Term.CABLE_COUNT);
        boolean innerductsAssumed = !duct.contents().known() || duct.assumed().contains(Term.INNERDUCT_COUNT);
        OptionalInt cablesToCompare = cablesAssumed ? found : OptionalInt.empty();
        OptionalInt innerductsToCompare = innerductsAssumed ? innerducts : OptionalInt.empty();
        if (cablesToCompare.isEmpty() && innerductsToCompare.isEmpty()) {
            return;
        }
        ContentsScenario nearest = nearest(innerductsToCompare, cablesToCompare);
        // Exactly one of them, also where two scenarios have the same counts.
        boolean typical = nearest.equals(scenarios.typical());
        boolean few = !typical && nearest.equals(scenarios.few());
        sightings.add(ChanceKind.CONTENTS_FEW, few);
        sightings.add(ChanceKind.CONTENTS_TYPICAL, typical);
        sightings.add(ChanceKind.CONTENTS_MANY, !few && !typical);
        if (typical && cablesToCompare.isPresent()) {
            sightings.add(
                    ChanceKind.MORE_CABLE_ASSUMED,
                    cablesToCompare.getAsInt() > scenarios.typical().cableCount());
        }
    }

    /** Returns the scenario whose counts differ least from those found; typical before few before many. */
    private ContentsScenario nearest(OptionalInt innerducts, OptionalInt cables) {
        ContentsScenario nearest = scenarios.typical();
        for (ContentsScenario other : List.of(scenarios.few(), scenarios.many())) {
            if (difference(other, innerducts, cables) < difference(nearest, innerducts, cables)) {
                nearest = other;
            }
        }
        return nearest;
    }

    private static int difference(ContentsScenario scenario, OptionalInt innerducts, OptionalInt cables) {
        int ofInnerducts = innerducts.isPresent() ? Math.abs(innerducts.getAsInt() - scenario.innerductCount()) : 0;
        int ofCables = cables.isPresent() ? Math.abs(cables.getAsInt() - scenario.cableCount()) : 0;
        return ofInnerducts + ofCables;
    }

    private int recordedCables() {
        return planned(FieldFact.CABLES_FOUND, "").isPresent()
                ? (int) Math.round(planned(FieldFact.CABLES_FOUND, "").getAsDouble())
                : duct.contents().cables().size();
    }

    /** Returns how many cables were found: as counted, else the recorded ones that are there and those of other names. */
    private OptionalInt foundCables() {
        OptionalInt counted = count(FieldFact.CABLES_FOUND);
        List<FieldEntry> looked = entries.stream()
                .filter(entry -> entry.fact() == FieldFact.CABLE_THERE)
                .toList();
        if (counted.isPresent() || looked.isEmpty()) {
            return counted;
        }
        Set<String> there = duct.contents().cables().stream().map(Cable::id).collect(Collectors.toSet());
        for (FieldEntry entry : looked) {
            if (entry.value().text().equals("yes")) {
                there.add(entry.item());
            } else {
                there.remove(entry.item());
            }
        }
        return OptionalInt.of(there.size());
    }

    private OptionalInt count(FieldFact fact) {
        OptionalDouble number = FieldBook.find(entries, fact, "")
                .map(entry -> entry.value().keptInUnit())
                .orElse(OptionalDouble.empty());
        return number.isPresent() ? OptionalInt.of((int) Math.round(number.getAsDouble())) : OptionalInt.empty();
    }

    private void countSizes(Sightings sightings) {
        List<Boolean> others =
                Stream.concat(boreIsOther().stream(), cablesAreOther()).toList();
        if (!others.isEmpty()) {
            sightings.add(ChanceKind.OTHER_SIZE, others.contains(true));
        }
    }

    private Optional<Boolean> boreIsOther() {
        return duct.assumed().contains(Term.INSIDE_DIAMETER)
                ? FieldBook.find(entries, FieldFact.BORE_DIAMETER, "")
                        .flatMap(entry -> isOther(entry, OptionalDouble.of(duct.insideDiameterMm())))
                : Optional.empty();
    }

    private Stream<Boolean> cablesAreOther() {
        return duct.assumed().contains(Term.CABLE_OUTSIDE_DIAMETER)
                ? entries.stream()
                        .filter(entry -> entry.fact() == FieldFact.CABLE_DIAMETER)
                        .filter(entry -> FieldBook.find(entries, entry.fact(), entry.item())
                                .filter(entry::equals)
                                .isPresent())
                        .flatMap(entry -> isOther(entry, assumedCableMm(entry.item())).stream())
                : Stream.empty();
    }

    private OptionalDouble assumedCableMm(String name) {
        List<Cable> cables = duct.contents().cables();
        return cables.stream()
                .filter(cable -> cable.id().equals(name))
                .findFirst()
                .or(() -> cables.stream().findFirst())
                .map(cable -> OptionalDouble.of(cable.outsideDiameterMm()))
                .orElse(OptionalDouble.empty());
    }

    /** Returns whether a size is nearer to a wrong assumption, which differs by the configured share, than to a right one. */
    private Optional<Boolean> isOther(FieldEntry entry, OptionalDouble assumedMm) {
        OptionalDouble planned = planned(entry);
        OptionalDouble beforeMm = planned.isPresent() ? planned : assumedMm;
        OptionalDouble foundMm = entry.value().keptInUnit();
        return beforeMm.isPresent() && foundMm.isPresent() && beforeMm.getAsDouble() > 0
                ? Optional.of(Math.abs(foundMm.getAsDouble() / beforeMm.getAsDouble() - 1) > diameterRatio / 2)
                : Optional.empty();
    }

    private OptionalDouble planned(FieldFact fact, String item) {
        return FieldBook.find(entries, fact, item).map(OpenedDuct::planned).orElse(OptionalDouble.empty());
    }

    private static OptionalDouble planned(FieldEntry entry) {
        return entry.planned().isPresent() ? entry.planned().get().keptInUnit() : OptionalDouble.empty();
    }

    /** A duct whose work is done is not blocked, whether or not its condition was written down. */
    private void countCondition(Sightings sightings) {
        if (duct.condition() == Condition.BLOCKED || duct.condition() == Condition.COLLAPSED) {
            return;
        }
        ChanceKind kind = duct.condition() == Condition.UNKNOWN ? ChanceKind.BLOCKED_UNKNOWN : ChanceKind.BLOCKED;
        Optional<String> found = FieldBook.find(entries, FieldFact.DUCT_CONDITION, "")
                .map(entry -> entry.value().text());
        boolean done = FieldBook.find(entries, FieldFact.STATUS, "")
                .filter(entry -> entry.value().text().equals(WorkStatus.DONE.key()))
                .isPresent();
        if (found.isPresent()) {
            sightings.add(kind, found.get().equals("blocked") || found.get().equals("collapsed"));
        } else if (done) {
            sightings.add(kind, false);
        }
    }
}

package org.spanroom.bore;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.bore.Section.Pipe;
import org.spanroom.bore.SleeveRule.Held;
import org.spanroom.bore.SleeveRule.Sleeves;
import org.spanroom.model.CrossSection;
import org.spanroom.model.Packing;
import org.spanroom.model.PackingOutcome;
import org.spanroom.model.PullChoice;
import org.spanroom.model.Room;
import org.spanroom.model.RoomSettings;

/** Counts the room of one cross-section: areas, positions before, the new cables that every rule allows, and choices. */
final class RoomCount {
    /** Allowance for ovality in bends when three equal items might lock across the bore: an engineering note, not named. */
    private static final double JAM_OVALITY_RATIO = 1.05;

    /** Sets with innerducts left in are crowded and only one choice among others: less search for them. */
    private static final int CHOICE_EFFORT = 3;

    /** Empty innerducts come out first: no cable is touched. Then the widest, which give most room for one pull. */
    private static final Comparator<Pipe> PULL_ORDER =
            Comparator.<Pipe, Boolean>comparing(pipe -> !pipe.wires().isEmpty()).thenComparing(pipe -> pipe);

    private final RoomSettings settings;
    private final SectionPacker packer;
    private final SleeveRule rule;
    private final SleeveRule quickRule;

    RoomCount(RoomSettings settings) {
        this.settings = settings;
        packer = new SectionPacker(new Packer(), settings.cellsPerSleeve());
        rule = new SleeveRule(settings, packer);
        var quickPacker = new SectionPacker(new Packer(CHOICE_EFFORT), settings.cellsPerSleeve());
        quickRule = new SleeveRule(settings, quickPacker);
    }

    Room count(Section section) {
        Held held = rule.held(section, section.pipes(), List.of());
        Sleeves sleeves = rule.most(section, held);
        double boreMm2 = section.boreAreaMm2();
        return new Room(
                boreMm2,
                section.closedBeforeMm2() / boreMm2,
                Section.areaMm2(held.loose()) / boreMm2,
                recoverableMm2(section),
                section.pipes().size(),
                positions(section.pipes()),
                sleeves.count(),
                rule.newCables(held, sleeves.count()),
                sleeves.bindingRule(),
                Optional.empty(),
                Optional.of(crossSection(section, held, sleeves)));
    }

    private double recoverableMm2(Section section) {
        return section.pipes().stream()
                .mapToDouble(pipe -> pipe.areaMm2() - Section.areaMm2(rule.staysOf(pipe.wires())))
                .sum();
    }

    private CrossSection crossSection(Section section, Held held, Sleeves sleeves) {
        var inDuct = new ArrayList<Item>();
        section.pipes().forEach(pipe -> inDuct.add(Item.of(pipe)));
        section.looseWires().forEach(wire -> inDuct.add(Item.of(wire)));
        double boreMm = section.insideDiameterMm();
        Packing before = packer.pack(section.shape(), boreMm, boreMm, inDuct);
        return new CrossSection(
                before,
                rule.pack(section, held, sleeves.count()),
                sleeves.next(),
                contradiction(section, before),
                jamRatio(section),
                choices(section, rule.newCables(held, sleeves.count()), sleeves.count()));
    }

    private int positions(List<Pipe> pipes) {
        double neededMm = settings.innerductToCableRatio() * settings.designCableOutsideDiameterMm();
        return (int) pipes.stream()
                .filter(pipe -> pipe.wires().isEmpty() && pipe.insideDiameterMm() >= neededMm)
                .count();
    }

    /** From the fewest pulls to all; the last is the one that the room is counted by. */
    private List<PullChoice> choices(Section section, int newCables, int sleeves) {
        List<Pipe> order = section.pipes().stream().sorted(PULL_ORDER).toList();
        var choices = new ArrayList<PullChoice>();
        for (int pulls = 1; pulls < order.size(); pulls++) {
            List<Pipe> out = order.subList(0, pulls);
            Held held = quickRule.held(section, out, order.subList(pulls, order.size()));
            int count = quickRule.most(section, held).count();
            choices.add(choice(out, held.left(), count, quickRule.newCables(held, count)));
        }
        if (!order.isEmpty()) {
            choices.add(choice(order, List.of(), sleeves, newCables));
        }
        return choices;
    }

    private PullChoice choice(List<Pipe> out, List<Pipe> left, int sleeves, int newCables) {
        int emptyOut = (int) out.stream().filter(pipe -> pipe.wires().isEmpty()).count();
        return new PullChoice(out.size(), emptyOut, left.size(), positions(left), sleeves, newCables);
    }

    private static Optional<String> contradiction(Section section, Packing before) {
        if (before.outcome() != PackingOutcome.DOES_NOT_FIT) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "%d innerducts and %d loose cables do not go into %.1f mm: at least %.2f mm short by %s",
                section.pipes().size(),
                section.looseWires().size(),
                section.insideDiameterMm(),
                -before.marginMm(),
                before.bound()));
    }

    /** The widest size of which there are three or more. */
    private static OptionalDouble jamRatio(Section section) {
        List<Pipe> pipes = section.pipes();
        for (int i = 0; i + 2 < pipes.size(); i++) {
            double outsideMm = pipes.get(i).outsideDiameterMm();
            if (outsideMm == pipes.get(i + 2).outsideDiameterMm()) {
                return OptionalDouble.of(JAM_OVALITY_RATIO * section.insideDiameterMm() / outsideMm);
            }
        }
        return OptionalDouble.empty();
    }
}

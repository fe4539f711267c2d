package org.spanroom.bore;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.spanroom.bore.BoreContents.Pipe;
import org.spanroom.bore.BoreContents.Wire;
import org.spanroom.bore.SleeveRule.Held;
import org.spanroom.bore.SleeveRule.Sleeves;
import org.spanroom.model.Counted;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.Positions;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;

/** Counts the room of one cross-section: areas, positions today, and for each choice of pulls what every rule allows. */
final class RoomCount {
    /** Allowance for ovality in bends when three equal items might lock across the bore: an engineering note, not named. */
    private static final double JAM_OVALITY_RATIO = 1.05;

    private final RoomSettings settings;
    private final ContentsPacker packer;
    private final SleeveRule rule;

    RoomCount(RoomSettings settings, Packer circles) {
        this.settings = settings;
        packer = new ContentsPacker(circles, settings.sleeveSlackMm());
        rule = new SleeveRule(settings, packer);
    }

    /** Returns the room with all innerducts out; the choices in its cross-section hold what fewer pulls would give. */
    Room count(BoreContents section) {
        return count(section, Work.ofSection());
    }

    Room count(BoreContents section, Work work) {
        int pipes = section.pipes().size();
        CrossSection all = crossSection(section, work);
        return new Room(
                section.boreAreaMm2(),
                Optional.of(all),
                all.choices().stream()
                        .filter(choice -> choice.isRecovery() && choice.innerductsOut() == pipes && choice.allowed())
                        .reduce((first, last) -> last),
                Optional.empty());
    }

    private CrossSection crossSection(BoreContents section, Work work) {
        var inDuct = new ArrayList<Item>();
        section.pipes().forEach(pipe -> inDuct.add(Item.of(pipe)));
        for (int number = 1; number <= section.fabrics().size(); number++) {
            rule.addCables(section.fabrics().get(number - 1), number, inDuct);
        }
        section.looseWires().forEach(wire -> inDuct.add(Item.of(wire)));
        double boreMm = section.insideDiameterMm();
        Packing before = packer.pack(section.shape(), boreMm, boreMm, inDuct, work);
        List<PullChoice> choices = choices(section, before, work);
        return new CrossSection(before, contradiction(section, before), jamRatio(section), choices, work.hasLeftOpen());
    }

    private int positions(List<Pipe> pipes) {
        double neededMm = settings.innerductToCableRatio() * settings.widestDesignCableMm();
        return (int) pipes.stream()
                .filter(pipe -> pipe.wires().isEmpty() && pipe.insideDiameterMm() >= neededMm)
                .count();
    }

    /** From none to all; where dead cables can be reached, once with them in and once with them out. */
    private List<PullChoice> choices(BoreContents section, Packing before, Work work) {
        PullChoice now = choice(section, 0, false, Optional.of(before), work);
        int all = section.pipes().size();
        // All out first: the choice that matters most, and holds least.
        List<PullChoice> last = all > 0 ? choices(section, all, now, work) : List.of();
        var choices = new ArrayList<PullChoice>();
        choices.add(now.withNow(now.positionsAfter()));
        for (int pulls = 1; pulls < all; pulls++) {
            choices.addAll(choices(section, pulls, now, work));
        }
        choices.addAll(last);
        return choices;
    }

    private List<PullChoice> choices(BoreContents section, int pulls, PullChoice now, Work work) {
        PullChoice with = choice(section, pulls, false, Optional.empty(), work).withNow(now.positionsAfter());
        PullChoice without =
                choice(section, pulls, true, Optional.empty(), work).withNow(now.positionsAfter());
        return without.deadCablesOut() > 0 ? List.of(with, without) : List.of(with);
    }

    /** @param asItIs how the contents lie today, used if no innerduct comes out and nothing goes in */
    private PullChoice choice(
            BoreContents section, int pulls, boolean deadComeOut, Optional<Packing> asItIs, Work work) {
        List<Pipe> out = section.pipes().subList(0, pulls);
        List<Pipe> left = section.pipes().subList(pulls, section.pipes().size());
        List<Wire> freed = freed(section, out);
        List<Wire> loose =
                freed.stream().filter(wire -> !deadComeOut || !wire.dead()).toList();
        var held = new Held(loose, left, section.fabrics());
        Sleeves sleeves = rule.most(section, held, work);
        boolean nothingGoesIn = sleeves.count() + sleeves.freeCells() == 0;
        int deadOut = freed.size() - loose.size();
        return new PullChoice(
                pulls,
                (int) out.stream().filter(pipe -> pipe.wires().isEmpty()).count(),
                deadOut,
                deadOut == 0 || settings.deadCablesComeOut(),
                left.size(),
                new Positions(positions(left), sleeves.freeCells(), rule.newCables(held, sleeves.count()), 0),
                0,
                sleeves.count(),
                sleeves.bindingRule(),
                sleeves.next(),
                held.closedMm2() / section.boreAreaMm2(),
                (held.closedMm2() + rule.newMm2(held, sleeves)) / section.boreAreaMm2(),
                recoverableMm2(out, deadComeOut),
                asItIs.filter(packing -> nothingGoesIn).orElseGet(() -> rule.pack(section, held, sleeves, work)));
    }

    /** Returns the cables that are in the bore itself once some innerducts are out. */
    private static List<Wire> freed(BoreContents section, List<Pipe> out) {
        var loose = new ArrayList<>(section.looseWires());
        out.forEach(pipe -> loose.addAll(pipe.wires()));
        return loose.stream().sorted().toList();
    }

    private static double recoverableMm2(List<Pipe> out, boolean deadComeOut) {
        double sumMm2 = 0;
        for (Pipe pipe : out) {
            sumMm2 += pipe.areaMm2();
            for (Wire wire : pipe.wires()) {
                sumMm2 -= deadComeOut && wire.dead() ? 0 : wire.areaMm2();
            }
        }
        return sumMm2;
    }

    private static Optional<String> contradiction(BoreContents section, Packing before) {
        if (before.outcome() != PackingOutcome.DOES_NOT_FIT) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "%s do not fit in a bore of %.1f mm: it is at least %.2f mm too small (%s)",
                contents(section),
                section.insideDiameterMm(),
                -before.marginMm(),
                before.bound()));
    }

    private static String contents(BoreContents section) {
        String innerducts = Counted.of(section.pipes().size(), "innerduct");
        String loose = section.fabrics().isEmpty() ? "loose cable" : "cable in or beside sleeves";
        String cables = Counted.of(section.cablesBeside(), loose, loose.replace("cable", "cables"));
        if (section.cablesBeside() == 0) {
            return innerducts;
        }
        return section.pipes().isEmpty() ? cables : innerducts + " and " + cables;
    }

    /** Returns the jam ratio of the sizes of which there are three or more: one that may jam, if any; else the least. */
    private static OptionalDouble jamRatio(BoreContents section) {
        double[] ratios = section.pipes().stream()
                .mapToDouble(Pipe::outsideDiameterMm)
                .filter(outsideMm -> section.pipes().stream()
                                .filter(pipe -> pipe.outsideDiameterMm() == outsideMm)
                                .count()
                        >= 3)
                .map(outsideMm -> JAM_OVALITY_RATIO * section.insideDiameterMm() / outsideMm)
                .sorted()
                .toArray();
        OptionalDouble jams =
                DoubleStream.of(ratios).filter(CrossSection::isJam).findFirst();
        return jams.isPresent() ? jams : DoubleStream.of(ratios).findFirst();
    }
}

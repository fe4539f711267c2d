package org.spanroom.bore;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.bore.BoreContents.Pipe;
import org.spanroom.bore.BoreContents.Wire;
import org.spanroom.bore.SleeveRule.Held;
import org.spanroom.bore.SleeveRule.Sleeves;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;

/** Counts the room of one cross-section: areas, positions before, and for each choice of pulls what every rule allows. */
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
        int pipes = section.pipes().size();
        PullChoice all = choice(section, pipes, settings.deadCablesComeOut());
        double boreMm2 = section.boreAreaMm2();
        return new Room(
                boreMm2,
                section.closedBeforeMm2() / boreMm2,
                all.fillAfterRatio(),
                all.recoverableMm2(),
                pipes,
                positions(section.pipes()),
                all.sleeves(),
                all.newCables(),
                all.bindingRule(),
                Optional.of(crossSection(section, all)),
                pipes > 0 ? Optional.of(all) : Optional.empty());
    }

    private CrossSection crossSection(BoreContents section, PullChoice all) {
        var inDuct = new ArrayList<Item>();
        section.pipes().forEach(pipe -> inDuct.add(Item.of(pipe)));
        section.looseWires().forEach(wire -> inDuct.add(Item.of(wire)));
        double boreMm = section.insideDiameterMm();
        Packing before = packer.pack(section.shape(), boreMm, boreMm, inDuct);
        return new CrossSection(
                before,
                all.after(),
                all.nextSleeve(),
                contradiction(section, before),
                jamRatio(section, section.pipes()),
                choices(section));
    }

    private int positions(List<Pipe> pipes) {
        double neededMm = settings.innerductToCableRatio() * settings.widestDesignCableMm();
        return (int) pipes.stream()
                .filter(pipe -> pipe.wires().isEmpty() && pipe.insideDiameterMm() >= neededMm)
                .count();
    }

    /** From the fewest pulls to all; where dead cables can be reached, once with them in and once with them out. */
    private List<PullChoice> choices(BoreContents section) {
        var choices = new ArrayList<PullChoice>();
        for (int pulls = 1; pulls <= section.pipes().size(); pulls++) {
            choices.add(choice(section, pulls, false));
            PullChoice withDead = choice(section, pulls, true);
            if (withDead.deadCablesOut() > 0) {
                choices.add(withDead);
            }
        }
        return choices;
    }

    private PullChoice choice(BoreContents section, int pulls, boolean deadComeOut) {
        List<Pipe> out = section.pipes().subList(0, pulls);
        List<Pipe> left = section.pipes().subList(pulls, section.pipes().size());
        List<Wire> freed = freed(section, out);
        List<Wire> loose =
                freed.stream().filter(wire -> !deadComeOut || !wire.dead()).toList();
        var held = new Held(loose, left);
        Sleeves sleeves = rule.most(section, held);
        int newCables = rule.newCables(held, sleeves.count());
        int deadOut = freed.size() - loose.size();
        return new PullChoice(
                pulls,
                (int) out.stream().filter(pipe -> pipe.wires().isEmpty()).count(),
                deadOut,
                deadOut == 0 || settings.deadCablesComeOut(),
                left.size(),
                positions(left),
                sleeves.count(),
                newCables,
                Math.max(0, positions(left) + newCables - positions(section.pipes())),
                sleeves.bindingRule(),
                sleeves.next(),
                held.closedMm2() / section.boreAreaMm2(),
                recoverableMm2(out, deadComeOut),
                jamRatio(section, out),
                rule.pack(section, held, sleeves.count()));
    }

    /** Returns the cables that lie in the bore itself once some innerducts are out. */
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
                "%d innerducts and %d loose cables do not go into %.1f mm: at least %.2f mm short by %s",
                section.pipes().size(),
                section.looseWires().size(),
                section.insideDiameterMm(),
                -before.marginMm(),
                before.bound()));
    }

    /** Returns the jam ratio of the widest size of which there are three or more. */
    private static OptionalDouble jamRatio(BoreContents section, List<Pipe> pipes) {
        double widestMm = 0;
        for (Pipe pipe : pipes) {
            double outsideMm = pipe.outsideDiameterMm();
            long equal = pipes.stream()
                    .filter(other -> other.outsideDiameterMm() == outsideMm)
                    .count();
            if (equal >= 3) {
                widestMm = Math.max(widestMm, outsideMm);
            }
        }
        return widestMm > 0
                ? OptionalDouble.of(JAM_OVALITY_RATIO * section.insideDiameterMm() / widestMm)
                : OptionalDouble.empty();
    }
}

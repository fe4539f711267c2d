package org.spanroom.bore;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.spanroom.bore.Section.Pipe;
import org.spanroom.bore.Section.Wire;
import org.spanroom.model.Packing;
import org.spanroom.model.PackingOutcome;
import org.spanroom.model.PlacedCircle.Kind;
import org.spanroom.model.Room;
import org.spanroom.model.RoomSettings;
import org.spanroom.model.Service;

/** The most whole sleeves that a duct takes beside what stays in it: by its size, by bore fill and by packing. */
final class SleeveRule {
    private final RoomSettings settings;
    private final SectionPacker packer;

    SleeveRule(RoomSettings settings, SectionPacker packer) {
        this.settings = settings;
        this.packer = packer;
    }

    /**
     * How many sleeves go in.
     *
     * @param bindingRule the rule that allows no more
     * @param next what is known of one sleeve more, where packing binds
     */
    record Sleeves(int count, String bindingRule, Optional<PackingOutcome> next) {}

    /** What a duct holds once some innerducts are out: cables that lie in the bore, and the innerducts left. */
    record Held(List<Wire> loose, List<Pipe> left) {
        /** Returns every cable, those in the innerducts that are left too. */
        List<Wire> wires() {
            return Stream.concat(loose.stream(), left.stream().flatMap(pipe -> pipe.wires().stream()))
                    .toList();
        }
    }

    /** Returns what is held when some innerducts come out and others stay. */
    Held held(Section section, List<Pipe> out, List<Pipe> left) {
        var loose = new ArrayList<>(section.looseWires());
        out.forEach(pipe -> loose.addAll(pipe.wires()));
        return new Held(staysOf(loose).stream().sorted().toList(), left);
    }

    List<Wire> staysOf(List<Wire> wires) {
        return wires.stream()
                .filter(wire -> !settings.deadCablesComeOut() || wire.service() != Service.DEAD)
                .toList();
    }

    /** Goes down from what size and fill allow to what goes in side by side. */
    Sleeves most(Section section, Held held) {
        if (settings.oldCablesNeedCells()
                && !settings.oldCablesMayMove()
                && !held.loose().isEmpty()) {
            return new Sleeves(0, Room.OLD_CABLES_MAY_NOT_MOVE, Optional.empty());
        }
        int bySize = settings.sleevesFor(section.insideDiameterMm());
        int byFill = bySize;
        while (byFill > 0 && !fillAllows(section, held, byFill)) {
            byFill--;
        }
        String rule = byFill == bySize ? Room.SLEEVES_PER_DUCT : Room.BORE_FILL;
        Optional<PackingOutcome> refused = Optional.empty();
        for (int count = byFill; count > 0; count--) {
            PackingOutcome outcome = packer.outcome(section.shape(), usableMm(section), items(held, count));
            if (outcome == PackingOutcome.FITS) {
                return new Sleeves(count, refused.isPresent() ? Room.PACKING : rule, refused);
            }
            refused = Optional.of(outcome);
        }
        return new Sleeves(0, refused.isPresent() ? Room.PACKING : rule, refused);
    }

    /** Returns what is held and so many sleeves of cables, packed. */
    Packing pack(Section section, Held held, int sleeves) {
        return packer.pack(section.shape(), section.insideDiameterMm(), usableMm(section), items(held, sleeves));
    }

    /** Where the cables that lie loose need cells too, theirs are not for new ones. */
    int newCables(Held held, int sleeves) {
        int cells = sleeves * settings.cellsPerSleeve();
        return settings.oldCablesNeedCells() ? Math.max(0, cells - held.loose().size()) : cells;
    }

    private double usableMm(Section section) {
        double ovalMm = section.oval() ? settings.ovalAllowanceRatio() * section.insideDiameterMm() : 0;
        return section.insideDiameterMm() - settings.boreAllowanceMm() - ovalMm;
    }

    private boolean fillAllows(Section section, Held held, int sleeves) {
        int added = newCables(held, sleeves);
        List<Wire> wires = held.wires();
        double cableMm2 = Math.PI / 4 * Math.pow(settings.designCableOutsideDiameterMm(), 2);
        double filledMm2 = Section.areaMm2(wires) + added * cableMm2;
        return filledMm2 <= settings.fillLimitRatio(wires.size() + added) * section.boreAreaMm2();
    }

    private List<Item> items(Held held, int sleeves) {
        var items = new ArrayList<Item>();
        held.left().forEach(pipe -> items.add(Item.of(pipe)));
        double oldFabricMm = settings.oldCablesNeedCells() ? settings.sleeveFabricMm() : 0;
        for (Wire wire : held.loose()) {
            items.add(Item.inCell(Item.of(wire).kind(), wire.outsideDiameterMm(), oldFabricMm));
        }
        Item cell = Item.inCell(Kind.NEW_CABLE, settings.designCableOutsideDiameterMm(), settings.sleeveFabricMm());
        items.addAll(Collections.nCopies(newCables(held, sleeves), cell));
        return items;
    }
}

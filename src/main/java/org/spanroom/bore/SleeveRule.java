package org.spanroom.bore;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.bore.BoreContents.Pipe;
import org.spanroom.bore.BoreContents.Wire;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;

/** The most whole sleeves that a duct takes beside what stays in it: by its size, by bore fill and by packing. */
final class SleeveRule {
    private final RoomSettings settings;
    private final ContentsPacker packer;
    private final List<Double> roundMm;

    SleeveRule(RoomSettings settings, ContentsPacker packer) {
        this.settings = settings;
        this.packer = packer;
        this.roundMm = settings.designRoundMm();
    }

    /**
     * How many sleeves go in.
     *
     * @param bindingRule the rule that allows no more
     * @param next what is known of one sleeve more, where packing binds
     */
    record Sleeves(int count, String bindingRule, Optional<PackingOutcome> next) {}

    /**
     * What a duct holds once some innerducts are out.
     *
     * @param loose cables that then lie in the bore, sorted
     * @param left the innerducts left
     */
    record Held(List<Wire> loose, List<Pipe> left) {
        /** Returns the area that what is held closes off, innerducts taken as solid. */
        double closedMm2() {
            return left.stream().mapToDouble(Pipe::areaMm2).sum() + BoreContents.areaMm2(loose);
        }
    }

    /** Goes down from what size and fill allow to what goes in side by side. */
    Sleeves most(BoreContents section, Held held) {
        if (settings.oldCablesNeedCells() && held.loose().stream().anyMatch(this::mayNotMove)) {
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
    Packing pack(BoreContents section, Held held, int sleeves) {
        return packer.pack(section.shape(), section.insideDiameterMm(), usableMm(section), items(held, sleeves));
    }

    /** Where the cables that lie loose need cells too, theirs are not for new ones. */
    int newCables(Held held, int sleeves) {
        int cells = sleeves * settings.cellsPerSleeve();
        return settings.oldCablesNeedCells() ? Math.max(0, cells - held.loose().size()) : cells;
    }

    private boolean mayNotMove(Wire wire) {
        return !wire.mayMove() || !settings.oldCablesMayMove();
    }

    private double usableMm(BoreContents section) {
        double ovalMm = section.oval() ? settings.ovalAllowanceRatio() * section.insideDiameterMm() : 0;
        return section.insideDiameterMm() - settings.boreAllowanceMm() - ovalMm;
    }

    private boolean fillAllows(BoreContents section, Held held, int sleeves) {
        int added = newCables(held, sleeves);
        double filledMm2 = held.closedMm2();
        for (int i = 0; i < added; i++) {
            filledMm2 += BoreContents.disc(designCableMm(i));
        }
        return filledMm2
                <= settings.fillLimitRatio(held.loose().size() + held.left().size() + added) * section.boreAreaMm2();
    }

    private double designCableMm(int newCable) {
        return roundMm.get(newCable % roundMm.size());
    }

    private List<Item> items(Held held, int sleeves) {
        var items = new ArrayList<Item>();
        held.left().forEach(pipe -> items.add(Item.of(pipe)));
        var cells = new ArrayList<Item>();
        for (Wire wire : held.loose()) {
            if (settings.oldCablesNeedCells()) {
                cells.add(Item.inCell(Item.kind(wire), wire.outsideDiameterMm(), settings.sleeveFabricMm()));
            } else {
                items.add(Item.of(wire));
            }
        }
        int added = newCables(held, sleeves);
        for (int i = 0; i < added; i++) {
            cells.add(Item.inCell(Kind.NEW_CABLE, designCableMm(i), settings.sleeveFabricMm()));
        }
        for (int i = 0; i < cells.size(); i++) {
            items.add(cells.get(i).inSleeve(1 + i / settings.cellsPerSleeve()));
        }
        return items;
    }
}

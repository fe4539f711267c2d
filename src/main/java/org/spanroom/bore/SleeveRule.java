package org.spanroom.bore;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.bore.BoreContents.Fabric;
import org.spanroom.bore.BoreContents.Pipe;
import org.spanroom.bore.BoreContents.Wire;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.bore.RoomSettings.SleevesBeside;
import org.spanroom.model.network.BoreShape;

/**
 * The most whole sleeves that a duct takes beside what stays in it: by its size, by the bore that is left free, by bore fill and by
 * packing.
 *
 * <p>Cells that are promised are treated as if their cables were in: what goes in beside them must leave room for these, or the promise
 * could not be kept.
 */
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
     * @param freeCells cells of the sleeves already in that can take a design cable
     * @param count of new sleeves
     * @param bindingRule the rule that allows no more
     * @param next what is known of one further sleeve, where packing binds
     */
    record Sleeves(int freeCells, int count, String bindingRule, Optional<PackingOutcome> next) {}

    /**
     * What a duct holds once some innerducts are out.
     *
     * @param loose cables that then are in the bore, sorted
     * @param left the innerducts left
     * @param fabrics the sleeves that were in before
     */
    record Held(List<Wire> loose, List<Pipe> left, List<Fabric> fabrics) {
        /** Returns the area that what is held closes off, innerducts taken as solid. */
        double closedMm2() {
            double sumMm2 = left.stream().mapToDouble(Pipe::areaMm2).sum() + BoreContents.areaMm2(loose);
            for (Fabric fabric : fabrics) {
                sumMm2 += BoreContents.areaMm2(fabric.wires());
            }
            return sumMm2;
        }

        int free() {
            return fabrics.stream().mapToInt(Fabric::free).sum();
        }

        int promised() {
            return fabrics.stream().mapToInt(Fabric::promised).sum();
        }

        private int bodies() {
            return loose.size()
                    + left.size()
                    + fabrics.stream().mapToInt(fabric -> fabric.wires().size()).sum();
        }
    }

    /** Cables that are to go in: into cells of the sleeves already in, and into new sleeves. */
    private record Load(int freeCells, int sleeves) {}

    /** Goes down from what size and fill allow to what goes in side by side. */
    Sleeves most(BoreContents section, Held held, Work work) {
        int freeCells = held.free();
        while (freeCells > 0 && !goesIn(section, held, new Load(freeCells, 0), work)) {
            freeCells--;
        }
        Optional<String> forbidden = forbidden(section, held);
        return forbidden.isPresent()
                ? new Sleeves(freeCells, 0, forbidden.get(), Optional.empty())
                : most(section, held, freeCells, work);
    }

    private Optional<String> forbidden(BoreContents section, Held held) {
        if (section.besideForbidden() && !held.left().isEmpty()) {
            return Optional.of(Room.BESIDE_FORBIDDEN);
        }
        return settings.oldCablesNeedCells() && held.loose().stream().anyMatch(this::mayNotMove)
                ? Optional.of(Room.OLD_CABLES_MAY_NOT_MOVE)
                : Optional.empty();
    }

    private Sleeves most(BoreContents section, Held held, int freeCells, Work work) {
        int bySize = further(settings.sleevesFor(section.insideDiameterMm()), held);
        int byBore = Math.min(bySize, further(settings.sleevesFor(tableMm(section, held)), held));
        int byFill = byBore;
        while (byFill > 0 && !fillAllows(section, held, new Load(freeCells, byFill))) {
            byFill--;
        }
        String rule = byFill < byBore ? Room.BORE_FILL : byBore < bySize ? Room.FREE_BORE : Room.SLEEVES_PER_DUCT;
        Optional<PackingOutcome> refused = Optional.empty();
        for (int count = byFill; count > 0; count--) {
            PackingOutcome outcome = outcome(section, held, new Load(freeCells, count), work);
            if (outcome == PackingOutcome.FITS) {
                return new Sleeves(freeCells, count, refused.isPresent() ? Room.PACKING : rule, refused);
            }
            refused = Optional.of(outcome);
        }
        return new Sleeves(freeCells, 0, refused.isPresent() ? Room.PACKING : rule, refused);
    }

    /** A sleeve already in is treated as one of those that the table allows. */
    private static int further(int allowed, Held held) {
        return Math.max(0, allowed - held.fabrics().size());
    }

    /**
     * Returns the size that the table is read at: that of a bore of the area that the innerducts left, taken as solid, leave free. No
     * source; our judgment.
     */
    private double tableMm(BoreContents section, Held held) {
        if (settings.sleevesBeside() == SleevesBeside.TABLE) {
            return section.insideDiameterMm();
        }
        double pipesMm2 = held.left().stream().mapToDouble(Pipe::areaMm2).sum();
        double freeMm2 = Math.max(0, section.boreAreaMm2() - pipesMm2);
        return section.shape() == BoreShape.SQUARE ? Math.sqrt(freeMm2) : Math.sqrt(4 / Math.PI * freeMm2);
    }

    /** Returns what is held and what goes in, packed. */
    Packing pack(BoreContents section, Held held, Sleeves sleeves, Work work) {
        return packer.pack(
                section.shape(),
                section.insideDiameterMm(),
                usableMm(section),
                items(held, new Load(sleeves.freeCells(), sleeves.count())),
                work);
    }

    /** Where the cables that are loose need cells too, theirs are not for new ones. */
    int newCables(Held held, int sleeves) {
        int cells = sleeves * settings.cellsPerSleeve();
        return settings.oldCablesNeedCells() ? Math.max(0, cells - held.loose().size()) : cells;
    }

    /** Returns the area of a design cable in every cell that is a position. */
    double newMm2(Held held, Sleeves sleeves) {
        return designMm2(sleeves.freeCells() + newCables(held, sleeves.count()));
    }

    private boolean mayNotMove(Wire wire) {
        return !wire.mayMove() || !settings.oldCablesMayMove();
    }

    private double usableMm(BoreContents section) {
        double ovalMm = section.oval() ? settings.ovalAllowanceRatio() * section.insideDiameterMm() : 0;
        return section.insideDiameterMm() - settings.boreAllowanceMm() - ovalMm;
    }

    private boolean goesIn(BoreContents section, Held held, Load load, Work work) {
        return fillAllows(section, held, load) && outcome(section, held, load, work) == PackingOutcome.FITS;
    }

    private PackingOutcome outcome(BoreContents section, Held held, Load load, Work work) {
        return packer.outcome(section.shape(), usableMm(section), items(held, load), work);
    }

    private boolean fillAllows(BoreContents section, Held held, Load load) {
        int added = load.freeCells() + newCables(held, load.sleeves());
        double promisedMm2 = held.promised() * BoreContents.disc(settings.widestDesignCableMm());
        double filledMm2 = held.closedMm2() + promisedMm2 + designMm2(added);
        return filledMm2 <= settings.fillLimitRatio(held.bodies() + held.promised() + added) * section.boreAreaMm2();
    }

    private double designMm2(int newCables) {
        double sumMm2 = 0;
        for (int i = 0; i < newCables; i++) {
            sumMm2 += BoreContents.disc(designCableMm(i));
        }
        return sumMm2;
    }

    private double designCableMm(int newCable) {
        return roundMm.get(newCable % roundMm.size());
    }

    private List<Item> items(Held held, Load load) {
        var items = new ArrayList<Item>();
        held.left().forEach(pipe -> items.add(Item.of(pipe)));
        int open = addFabrics(held, load.freeCells(), items);
        var cells = new ArrayList<Item>();
        for (Wire wire : held.loose()) {
            if (settings.oldCablesNeedCells()) {
                cells.add(inCell(Item.kind(wire), wire.outsideDiameterMm()));
            } else {
                items.add(Item.of(wire));
            }
        }
        int added = newCables(held, load.sleeves());
        for (int i = 0; i < added; i++) {
            cells.add(inCell(Kind.NEW_CABLE, designCableMm(open + i)));
        }
        int firstNumber = held.fabrics().size() + 1;
        for (int i = 0; i < cells.size(); i++) {
            items.add(cells.get(i).inSleeve(firstNumber + i / settings.cellsPerSleeve()));
        }
        return items;
    }

    /** Adds the sleeves that were in before, numbered from 1, this many of their free cells filled, and returns how many were. */
    private int addFabrics(Held held, int freeCells, List<Item> items) {
        int open = 0;
        for (int number = 1; number <= held.fabrics().size(); number++) {
            Fabric fabric = held.fabrics().get(number - 1);
            addCables(fabric, number, items);
            for (int i = 0; i < fabric.promised(); i++) {
                items.add(inCell(Kind.RESERVED, settings.widestDesignCableMm()).inSleeve(number));
            }
            for (int i = 0; i < fabric.free() && open < freeCells; i++) {
                items.add(inCell(Kind.NEW_CABLE, designCableMm(open++)).inSleeve(number));
            }
        }
        return open;
    }

    /** Adds the cables of a sleeve already in as cells of a sleeve of this number; its empty cells lie flat. */
    void addCables(Fabric fabric, int number, List<Item> items) {
        fabric.wires()
                .forEach(wire -> items.add(
                        inCell(Item.kind(wire), wire.outsideDiameterMm()).inSleeve(number)));
    }

    private Item inCell(Kind kind, double cableMm) {
        return Item.inCell(kind, cableMm, settings.sleeveFabricMm());
    }
}

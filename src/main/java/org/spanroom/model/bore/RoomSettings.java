package org.spanroom.model.bore;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.spanroom.model.Check;

/**
 * The rules by which a duct's room is counted.
 *
 * @param designCableOutsideDiameterMm outside diameter of the cable that room is counted for, where no mix is given
 * @param designCableMassKgPerM mass of that cable, which rests on an innerduct that is pulled later
 * @param designCables a mix of cables that room is counted for, in the order in which they would be pulled in; over and over
 * @param innerductToCableRatio an empty innerduct is a position where its inside is at least this many design cables wide
 * @param cellsPerSleeve cells of the sleeve in use; each takes one cable
 * @param sleeveFabricMm thickness of the sleeve's fabric round each new cable
 * @param sleeveSlackMm fabric between the outsides of two neighboring cells of one sleeve: they are no farther apart
 * @param sleevesByDuct how many sleeves a duct takes, by inside diameter
 * @param fillLimitOneRatio most that a single cable may fill of the bore
 * @param fillLimitTwoRatio the same for two cables together
 * @param fillLimitMoreRatio the same for three and more
 * @param boreAllowanceMm what new cables must leave of the inside diameter, for ovality and offsets at joints
 * @param ovalAllowanceRatio what they must also leave free, as a share of the bore, in a duct recorded as oval
 * @param oldCablesNeedCells the owner's rule that fiber is in innerduct or sleeve: with it the cables that stay need cells
 * @param oldCablesMayMove whether the cables that stay may be laid into cells
 * @param deadCablesComeOut whether a choice by which dead cables leave the duct with the innerducts may be proposed
 * @param besideInnerducts whether the owner lets sleeves be placed beside rigid innerducts
 * @param sleevesBeside how the number of sleeves goes down where innerducts stay in
 * @param enoughPositions a duct that has this many positions today needs no recovery; 0 for no such number
 * @param demandPositions most positions of a span that the avoided new build is priced for; 0 for all that recovery gains
 */
public record RoomSettings(
        double designCableOutsideDiameterMm,
        double designCableMassKgPerM,
        List<DesignCable> designCables,
        double innerductToCableRatio,
        int cellsPerSleeve,
        double sleeveFabricMm,
        double sleeveSlackMm,
        List<SleeveCount> sleevesByDuct,
        double fillLimitOneRatio,
        double fillLimitTwoRatio,
        double fillLimitMoreRatio,
        double boreAllowanceMm,
        double ovalAllowanceRatio,
        boolean oldCablesNeedCells,
        boolean oldCablesMayMove,
        boolean deadCablesComeOut,
        BesideRule besideInnerducts,
        SleevesBeside sleevesBeside,
        int enoughPositions,
        int demandPositions) {
    /** Whether anything may be placed beside rigid innerducts. */
    public enum BesideRule {
        ALLOWED,
        FORBIDDEN
    }

    /** How the number of sleeves that an emptied duct takes goes down where innerducts stay in. */
    public enum SleevesBeside {
        /** The table is read at the size of a bore of the area that the innerducts leave free. */
        EQUIVALENT_BORE,
        /** The table is read as for an emptied duct. */
        TABLE
    }

    /**
     * How many sleeves ducts of a size take.
     *
     * @param fromInsideDiameterMm least inside diameter of a round bore, or side of a square one, that takes this many
     */
    public record SleeveCount(double fromInsideDiameterMm, int sleeves) {
        public SleeveCount {
            Check.positive("fromInsideDiameterMm", fromInsideDiameterMm);
            Check.notNegative("sleeves", sleeves);
        }
    }

    /**
     * One kind of cable of a mix.
     *
     * @param count how many of it come one after another before the next kind
     */
    public record DesignCable(double outsideDiameterMm, int count) {
        public DesignCable {
            Check.positive("outsideDiameterMm", outsideDiameterMm);
            Check.within("count", count, 1, MOST_OF_A_KIND);
        }
    }

    private static final int MOST_OF_A_KIND = 1_000;

    public RoomSettings {
        Check.positive("designCableOutsideDiameterMm", designCableOutsideDiameterMm);
        Check.positive("designCableMassKgPerM", designCableMassKgPerM);
        Check.notNegative("enoughPositions", enoughPositions);
        Check.positive("innerductToCableRatio", innerductToCableRatio);
        Check.positive("cellsPerSleeve", cellsPerSleeve);
        Check.notNegative("sleeveFabricMm", sleeveFabricMm);
        Check.notNegative("sleeveSlackMm", sleeveSlackMm);
        Check.within("fillLimitOneRatio", fillLimitOneRatio, 0, 1);
        Check.within("fillLimitTwoRatio", fillLimitTwoRatio, 0, 1);
        Check.within("fillLimitMoreRatio", fillLimitMoreRatio, 0, 1);
        Check.notNegative("boreAllowanceMm", boreAllowanceMm);
        Check.within("ovalAllowanceRatio", ovalAllowanceRatio, 0, 0.5);
        Check.notNegative("demandPositions", demandPositions);
        designCables = List.copyOf(designCables);
        sleevesByDuct = List.copyOf(sleevesByDuct);
    }

    /** Returns these rules for a mix of design cables. */
    public RoomSettings withDesignCables(List<DesignCable> mix) {
        return new RoomSettings(
                designCableOutsideDiameterMm,
                designCableMassKgPerM,
                mix,
                innerductToCableRatio,
                cellsPerSleeve,
                sleeveFabricMm,
                sleeveSlackMm,
                sleevesByDuct,
                fillLimitOneRatio,
                fillLimitTwoRatio,
                fillLimitMoreRatio,
                boreAllowanceMm,
                ovalAllowanceRatio,
                oldCablesNeedCells,
                oldCablesMayMove,
                deadCablesComeOut,
                besideInnerducts,
                sleevesBeside,
                enoughPositions,
                demandPositions);
    }

    /** Returns the outside diameters of one round of design cables, in order: new cables repeat it over and over. */
    public List<Double> designRoundMm() {
        if (designCables.isEmpty()) {
            return List.of(designCableOutsideDiameterMm);
        }
        var round = new ArrayList<Double>();
        designCables.forEach(kind -> round.addAll(Collections.nCopies(kind.count(), kind.outsideDiameterMm())));
        return List.copyOf(round);
    }

    /** Returns the outside diameter of the widest design cable, which a position must take. */
    public double widestDesignCableMm() {
        return Collections.max(designRoundMm());
    }

    /**
     * Returns the mass of this many new cables, the first of the round: by area where a mix gives other widths than the design cable's,
     * for cables of one make have much the same density.
     */
    public double newCablesMassKgPerM(int newCables) {
        List<Double> roundMm = designRoundMm();
        double sumKgPerM = 0;
        for (int i = 0; i < newCables; i++) {
            double widthRatio = roundMm.get(i % roundMm.size()) / designCableOutsideDiameterMm;
            sumKgPerM += designCableMassKgPerM * widthRatio * widthRatio;
        }
        return sumKgPerM;
    }

    /** Returns the share of the bore that this many cables may fill; 1 for none. */
    public double fillLimitRatio(int cables) {
        return switch (cables) {
            case 0 -> 1;
            case 1 -> fillLimitOneRatio;
            case 2 -> fillLimitTwoRatio;
            default -> fillLimitMoreRatio;
        };
    }

    /** Returns how many sleeves a bore of this inside diameter, or side, takes by the table. */
    public int sleevesFor(double insideDiameterMm) {
        return sleevesByDuct.stream()
                .filter(row -> insideDiameterMm >= row.fromInsideDiameterMm())
                .mapToInt(SleeveCount::sleeves)
                .max()
                .orElse(0);
    }
}

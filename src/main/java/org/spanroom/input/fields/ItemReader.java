package org.spanroom.input.fields;

import java.util.List;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.Interner;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Sleeve;

/** Reads the sizes of innerducts and cables, from a duct's own fields and from rows of the contents table. */
final class ItemReader {
    /** Pipe is made somewhat thicker than the standard's minimum, and records are rounded; a wall of SDR 13.5 for 11 is beyond it (our judgment). */
    private static final double MOST_WALL_RATIO = 1.2;

    private final CatalogSizes sizes;
    private final Interner interner = new Interner();

    ItemReader(CatalogSizes sizes) {
        this.sizes = sizes;
    }

    /** An innerduct without what is in it; sizes that are neither recorded nor assumed are not a number. */
    record Pipe(double outsideMm, double wallMm) {
        boolean isUsable() {
            return wallMm > 0 && 2 * wallMm < outsideMm;
        }
    }

    /**
     * What only crews need of an innerduct.
     *
     * @param uncutAtA whether it runs uncut through the vault at end A of its duct
     */
    record Marks(String color, Answer uncutAtA, Answer uncutAtB) {}

    /** Reads what a row of the contents table says of an innerduct for the crew. */
    Marks marks(ContentsRow row) {
        return new Marks(
                interner.one(row.cell("color")), row.answer(Term.CONTINUOUS_AT_A), row.answer(Term.CONTINUOUS_AT_B));
    }

    /** What cables of one kind have in common; sizes that are neither recorded nor assumed are not a number. */
    record CableKind(double outsideMm, double massKgPerM, Service service, boolean mayMove) {
        boolean isUsable() {
            return outsideMm > 0 && massKgPerM >= 0;
        }

        Cable named(String id) {
            return named(id, "");
        }

        Cable named(String id, String tag) {
            return new Cable(id, outsideMm, massKgPerM, service, mayMove, tag);
        }
    }

    Pipe pipe(TermValues values) {
        sizes.offerInnerduct(values);
        double outsideMm = values.numberOrAssumed(Term.INNERDUCT_OUTSIDE_DIAMETER);
        return new Pipe(outsideMm, wallMm(values, outsideMm));
    }

    /** The wall itself where it is recorded, else that of the SDR; where neither is, the assumed wall before the assumed SDR. */
    private static double wallMm(TermValues values, double outsideMm) {
        double recordedMm = values.number(Term.INNERDUCT_WALL);
        if (2 * recordedMm < outsideMm) {
            compareWithSdr(values, outsideMm, recordedMm);
            return recordedMm;
        }
        if (2 * recordedMm >= outsideMm) {
            String wall = TermNumbers.shown(Term.INNERDUCT_WALL, recordedMm);
            values.reject(
                    FindingCode.UNUSABLE_VALUE,
                    Term.INNERDUCT_WALL,
                    wall,
                    "a wall of " + wall + " leaves no bore in "
                            + TermNumbers.shown(Term.INNERDUCT_OUTSIDE_DIAMETER, outsideMm));
        }
        double sdrRatio = values.numberOrOffered(Term.INNERDUCT_SDR);
        if (Double.isNaN(sdrRatio)) {
            double assumedMm = values.assumedNumberBelow(outsideMm / 2, Term.INNERDUCT_WALL);
            if (!Double.isNaN(assumedMm)) {
                return assumedMm;
            }
            sdrRatio = values.assumedNumber(Term.INNERDUCT_SDR);
        }
        return sdrRatio > 2 ? outsideMm / sdrRatio : TermValues.NONE;
    }

    /** Reports a wall and an SDR of one innerduct that cannot both be right. */
    private static void compareWithSdr(TermValues values, double outsideMm, double wallMm) {
        double sdrRatio = values.textQuietly(Term.INNERDUCT_SDR).isEmpty() ? 0 : values.number(Term.INNERDUCT_SDR);
        double ratio = outsideMm / sdrRatio / wallMm;
        if (sdrRatio > 2 && Math.max(ratio, 1 / ratio) > MOST_WALL_RATIO) {
            values.add(
                    FindingCode.WALL_DISAGREES,
                    Term.INNERDUCT_WALL,
                    () -> "a wall of " + TermNumbers.shown(Term.INNERDUCT_WALL, wallMm) + " is recorded; SDR "
                            + TermNumbers.shown(Term.INNERDUCT_SDR, sdrRatio) + " in "
                            + TermNumbers.shown(Term.INNERDUCT_OUTSIDE_DIAMETER, outsideMm) + " means "
                            + TermNumbers.shown(Term.INNERDUCT_WALL, outsideMm / sdrRatio));
        }
    }

    /** A sleeve without what is in it. */
    record Fabric(int cells, int reservedCells) {
        Sleeve named(String id, List<Cable> cables) {
            return new Sleeve(id, cells, reservedCells, cables);
        }
    }

    /** Reads a sleeve; one of whose cells nothing usable is recorded is treated as the sleeve in use, and is treated as assumed. */
    Fabric fabric(TermValues values, int usualCells) {
        double cells = values.number(Term.SLEEVE_CELLS);
        double reserved = values.number(Term.CELLS_RESERVED);
        if (!(cells >= 1)) {
            values.assumed().add(Term.SLEEVE_CELLS);
        }
        return new Fabric(cells >= 1 ? (int) cells : usualCells, reserved > 0 ? (int) reserved : 0);
    }

    CableKind cable(TermValues values) {
        sizes.offerCable(values);
        return new CableKind(
                values.numberOrAssumed(Term.CABLE_OUTSIDE_DIAMETER),
                values.numberOrAssumed(Term.CABLE_MASS),
                values.meaning(Term.IN_SERVICE, values.words().service(), WordMeanings.OUR_SERVICE, Service.UNKNOWN),
                values.answer(Term.CABLE_MAY_MOVE) != Answer.NO);
    }
}

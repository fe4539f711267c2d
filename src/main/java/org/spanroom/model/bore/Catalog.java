package org.spanroom.model.bore;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import org.spanroom.model.Check;
import org.spanroom.model.Unit;
import org.spanroom.model.network.BoreShape;

/**
 * Published and illustrative sizes of what is in the ground, by name: inputs may name an entry instead of giving sizes.
 *
 * <p>Diameters and walls are in inches, as in the tables that they come from, so that a row can be checked against its
 * source; everything else of the tool works in millimeters.
 */
public record Catalog(
        List<OuterDuct> outerDucts,
        List<InnerductSize> innerducts,
        List<Sleeve> sleeves,
        List<DesignCable> designCables) {
    public Catalog {
        outerDucts = List.copyOf(outerDucts);
        innerducts = List.copyOf(innerducts);
        sleeves = List.copyOf(sleeves);
        designCables = List.copyOf(designCables);
        demandUnique("outer_ducts", outerDucts, OuterDuct::name);
        demandUnique("innerducts", innerducts, InnerductSize::name);
        demandUnique("sleeves", sleeves, Sleeve::name);
        demandUnique("design_cables", designCables, DesignCable::name);
    }

    /**
     * An outer duct of one type and trade size.
     *
     * @param insideDiameterIn diameter of a round bore, side of a square one, as the source prints it
     * @param areaIn2 area of the bore as the source prints it, or computed where it prints none; must agree with the diameter
     * @param source where the row comes from, or {@code illustrative}, or {@code from memory}
     */
    public record OuterDuct(
            String name,
            String type,
            String tradeSize,
            BoreShape boreShape,
            double insideDiameterIn,
            double areaIn2,
            String source) {
        /** Half of the last printed digit of a diameter and of an area: public copies of tables hold wrong rows. */
        private static final double ROUNDING_IN = 0.00051;

        public OuterDuct {
            Check.notBlank("name", name);
            Check.notBlank("source", source);
            Check.positive("insideDiameterIn", insideDiameterIn);
            double factorRatio = boreShape == BoreShape.SQUARE ? 1 : Math.PI / 4;
            double computedIn2 = factorRatio * insideDiameterIn * insideDiameterIn;
            double toleranceIn2 = 2 * factorRatio * insideDiameterIn * ROUNDING_IN + ROUNDING_IN;
            if (!(Math.abs(areaIn2 - computedIn2) <= toleranceIn2)) {
                throw new IllegalArgumentException("areaIn2 of '" + name + "' must agree with its inside diameter of "
                        + insideDiameterIn + " in, which gives " + Math.round(computedIn2 * 1000) / 1000.0 + ", was "
                        + areaIn2 + "; check both against the row's source");
            }
        }

        public double insideDiameterMm() {
            return Unit.IN.toMm(insideDiameterIn);
        }
    }

    /**
     * A rigid innerduct of one size and series.
     *
     * @param sdrRatio outside diameter over minimum wall; 0 for a series that is not made by ratio
     * @param minimumWallIn wall that the innerduct has everywhere
     * @param averageWallIn wall that gives its mass: the minimum and half of the tolerance
     * @param densityKgPerM3 density of the compound
     */
    public record InnerductSize(
            String name,
            String series,
            String nominalSize,
            double outsideDiameterIn,
            double sdrRatio,
            double minimumWallIn,
            double averageWallIn,
            double densityKgPerM3,
            String source) {
        public InnerductSize {
            Check.notBlank("name", name);
            Check.notBlank("source", source);
            Check.positive("outsideDiameterIn", outsideDiameterIn);
            Check.notNegative("sdrRatio", sdrRatio);
            Check.within("minimumWallIn", minimumWallIn, 0.01, outsideDiameterIn / 2);
            Check.within("averageWallIn", averageWallIn, minimumWallIn, outsideDiameterIn / 2);
            Check.positive("densityKgPerM3", densityKgPerM3);
            double byRatioIn = sdrRatio == 0 ? minimumWallIn : Math.max(0.062, outsideDiameterIn / sdrRatio);
            if (Math.abs(byRatioIn - minimumWallIn) > 0.0011) {
                throw new IllegalArgumentException("minimumWallIn of '" + name
                        + "' must be outside diameter over SDR, " + Math.round(byRatioIn * 1000) / 1000.0 + ", was "
                        + minimumWallIn);
            }
        }

        public double outsideDiameterMm() {
            return Unit.IN.toMm(outsideDiameterIn);
        }

        public double minimumWallMm() {
            return Unit.IN.toMm(minimumWallIn);
        }

        /** Returns mass per meter: pi (OD - t) t rho with the average wall t, the method of PPI TR-7. */
        public double massKgPerM() {
            double wallM = Unit.IN.toSi(averageWallIn);
            return Math.PI * (Unit.IN.toSi(outsideDiameterIn) - wallM) * wallM * densityKgPerM3;
        }
    }

    /**
     * A fabric sleeve.
     *
     * @param fabricMm thickness round each cable
     * @param widestCableMm outside diameter of the widest cable that goes into a cell
     * @param sleevesByDuct how many go into a duct, by inside diameter
     */
    public record Sleeve(
            String name,
            int cells,
            double fabricMm,
            double widestCableMm,
            List<RoomSettings.SleeveCount> sleevesByDuct,
            String source) {
        public Sleeve {
            Check.notBlank("name", name);
            Check.notBlank("source", source);
            Check.positive("cells", cells);
            Check.notNegative("fabricMm", fabricMm);
            Check.positive("widestCableMm", widestCableMm);
            sleevesByDuct = List.copyOf(sleevesByDuct);
        }
    }

    /** A cable that room may be counted for. */
    public record DesignCable(String name, double outsideDiameterMm, double massKgPerM, int fibers, String source) {
        public DesignCable {
            Check.notBlank("name", name);
            Check.notBlank("source", source);
            Check.positive("outsideDiameterMm", outsideDiameterMm);
            Check.positive("massKgPerM", massKgPerM);
            Check.positive("fibers", fibers);
        }
    }

    public Optional<OuterDuct> findOuterDuct(String name) {
        return find(outerDucts, OuterDuct::name, name);
    }

    public Optional<InnerductSize> findInnerduct(String name) {
        return find(innerducts, InnerductSize::name, name);
    }

    public Optional<Sleeve> findSleeve(String name) {
        return find(sleeves, Sleeve::name, name);
    }

    public Optional<DesignCable> findDesignCable(String name) {
        return find(designCables, DesignCable::name, name);
    }

    /** Case and outer blanks do not matter. */
    private static <T> Optional<T> find(List<T> rows, Function<T, String> nameOf, String name) {
        return rows.stream()
                .filter(row -> nameOf.apply(row).equalsIgnoreCase(name.strip()))
                .findFirst();
    }

    private static <T> void demandUnique(String table, List<T> rows, Function<T, String> nameOf) {
        var seen = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        for (T row : rows) {
            if (!seen.add(nameOf.apply(row))) {
                throw new IllegalArgumentException(
                        "the name '" + nameOf.apply(row) + "' is repeated in the catalog's " + table);
            }
        }
    }
}

package org.spanroom.sample;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What inspectors noted of a vault for the crews, each as written or empty. Invented and plausible, no source.
 *
 * @param depthFt from the cover down to the floor
 * @param coverIn clear opening under the cover
 * @param gas whether gas was found
 * @param power whether power cables share the vault
 * @param inspected the day of the inspection
 */
record CrewFacts(
        OptionalDouble depthFt,
        OptionalDouble lengthFt,
        OptionalDouble widthFt,
        OptionalDouble heightFt,
        OptionalInt coverIn,
        String gas,
        String power,
        String inspected) {
    static final CrewFacts NONE = new CrewFacts(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalInt.empty(),
            "",
            "",
            "");

    private static final double FT_M = 0.3048;

    /** How often a vault of each kind was inspected, in a hundred. */
    private static final int[] INSPECTED = {40, 25, 50, 10};

    /** Inside heights by kind. */
    private static final double[] HEIGHT_FT = {6, 3, 6.5, 2};

    private static final double LENGTH_PER_WIDTH = 1.5;
    private static final int[][] COVERS_IN = {{24, 27, 30, 32}, {24, 30, 36, 36}, {30, 32, 36, 36}, {12, 17, 24, 24}};
    private static final LocalDate FIRST_DAY = LocalDate.of(2019, 3, 4);
    private static final int DAYS = 2700;

    /** Draws what is noted of a vault of a kind, with an inside that has the volume. */
    static CrewFacts draw(Chance chance, int kind, double volumeM3) {
        boolean inspected = chance.below(100) < INSPECTED[kind];
        double heightFt = HEIGHT_FT[kind] + chance.below(3) / 2.0;
        double neckFt = chance.from(1, 4) / 2.0;
        int coverIn = COVERS_IN[kind][chance.below(4)];
        boolean measured = chance.happens(0.7);
        String gas = List.of("yes", "no", "").get(chance.pickWeighted(7, 78, 15));
        String power = List.of("yes", "no", "").get(chance.pickWeighted(9, 81, 10));
        LocalDate day = FIRST_DAY.plusDays(chance.below(DAYS));
        if (!inspected) {
            return NONE;
        }
        double widthM = Math.sqrt(volumeM3 / (LENGTH_PER_WIDTH * heightFt * FT_M));
        return new CrewFacts(
                OptionalDouble.of(heightFt + neckFt),
                feet(measured, LENGTH_PER_WIDTH * widthM),
                feet(measured, widthM),
                measured ? OptionalDouble.of(heightFt) : OptionalDouble.empty(),
                OptionalInt.of(coverIn),
                gas,
                power,
                day.toString());
    }

    private static OptionalDouble feet(boolean measured, double lengthM) {
        return measured ? OptionalDouble.of(Math.round(lengthM / FT_M * 10) / 10.0) : OptionalDouble.empty();
    }

    /** Returns the same without the size of the inside, for a vault of which no volume is recorded. */
    CrewFacts withoutInside() {
        return new CrewFacts(
                depthFt,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                coverIn,
                gas,
                power,
                inspected);
    }
}

package org.spanroom.sample;

import java.util.List;
import java.util.Optional;

/** Where the districts of a city lie: side by side, row upon row, each calculated from its number alone. */
final class CityLayout {
    private static final List<DistrictKind> KINDS = List.of(DistrictKind.values());
    private static final int FEWEST_SPANS = 150;
    private static final int MOST_SPANS = 625;

    private final long seed;
    private final int spansPerDistrict;
    private final int columns;
    private final int rows;
    private final double pitchM;

    CityLayout(int spans, long seed) {
        this.seed = seed;
        this.spansPerDistrict = Math.max(FEWEST_SPANS, Math.min(MOST_SPANS, (spans + 3) / 4));
        int districts = (spans + spansPerDistrict - 1) / spansPerDistrict;
        this.columns = (int) Math.max(1, Math.ceil(Math.sqrt(districts)));
        this.rows = (districts + columns - 1) / columns;
        // Room for the widest plan and for a link of two or three spans to the next district.
        this.pitchM = 400 + 50 * Math.sqrt(spansPerDistrict);
    }

    int spansPerDistrict() {
        return spansPerDistrict;
    }

    /** Returns the district of a number from 1. */
    District district(int number) {
        int column = (number - 1) % columns;
        int row = (number - 1) / columns;
        return new District(
                number,
                KINDS.get((column + 2 * row) % KINDS.size()),
                (column - (columns - 1) / 2.0) * pitchM,
                (row - (rows - 1) / 2.0) * pitchM,
                spansPerDistrict,
                seed);
    }

    Optional<District> findWest(District district) {
        return (district.number() - 1) % columns == 0 ? Optional.empty() : Optional.of(district(district.number() - 1));
    }

    Optional<District> findSouth(District district) {
        return district.number() <= columns ? Optional.empty() : Optional.of(district(district.number() - columns));
    }
}

package org.spanroom.program.annual;

import java.util.List;

/**
 * Something that is done in one of the years or not at all, e.g. the recovery of a duct.
 *
 * @param values what doing it is worth, by the year in which it is done; of any sign
 * @param valueNever what not doing it at all is worth: 0, or below 0 where an earlier program has it
 * @param uses of each resource how much it takes if it is done alone
 * @param firstYear the first year in which it can be done
 * @param lastYear the last one; below {@code firstYear} if it cannot be done
 * @param isMust whether it has to be done
 * @param setUps what of its uses are set-ups that it can share; at most one for each place
 */
public record Task(
        List<Double> values,
        double valueNever,
        List<Double> uses,
        int firstYear,
        int lastYear,
        boolean isMust,
        List<SetUp> setUps) {
    public Task {
        values = List.copyOf(values);
        uses = List.copyOf(uses);
        setUps = List.copyOf(setUps);
        if (firstYear < 0 || lastYear >= values.size() || !Double.isFinite(valueNever)) {
            throw new IllegalArgumentException("years " + firstYear + " to " + lastYear + " of " + values.size());
        }
        for (int resource = 0; resource < uses.size(); resource++) {
            double shared = 0;
            for (SetUp setUp : setUps) {
                shared += setUp.uses().get(resource);
            }
            if (!(uses.get(resource) >= 0) || shared > uses.get(resource) * (1 + 1e-9) + 1e-9) {
                throw new IllegalArgumentException("uses " + uses + ", set-ups " + setUps);
            }
        }
    }

    /** Returns whether it can be done in a year. */
    public boolean isPossibleIn(int year) {
        return year >= firstYear && year <= lastYear;
    }
}

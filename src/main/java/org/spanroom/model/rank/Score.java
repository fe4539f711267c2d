package org.spanroom.model.rank;

import java.util.List;
import java.util.stream.IntStream;
import org.spanroom.model.Check;

/**
 * A span's score with the parts that it is the sum of.
 *
 * <p>A run has millions of scores and few criteria, so what all scores of a ranking share is kept once and a score is two rows of
 * numbers.
 */
public final class Score {
    private final List<Yardstick> yardsticks;
    private final double[] quantities;
    private final double[] values;

    /**
     * What all scores of a ranking are measured with.
     *
     * @param weightRatio the criterion's weight as a share of all weights
     */
    public record Yardstick(CriterionInfo criterion, double weightRatio) {
        public Yardstick {
            Check.within("weightRatio", weightRatio, 0, 1);
        }

        /** Returns the points out of 100 that a value gives. */
        public double points(double valueRatio) {
            return 100 * valueRatio * weightRatio;
        }
    }

    /**
     * One criterion's share of a score.
     *
     * @param quantityInUnit the absolute quantity that was judged, in the unit of its criterion; not a number where it is unknown
     * @param valueRatio how good the quantity is, 0 to 1; not a number where that is unknown
     */
    public record Part(Yardstick yardstick, double quantityInUnit, double valueRatio) {
        public Part {
            if (!Double.isNaN(valueRatio)) {
                Check.within("valueRatio", valueRatio, 0, 1);
            }
        }

        /** Returns the criterion's word, as in columns. */
        public String criterion() {
            return yardstick.criterion().key();
        }

        /** Returns what the quantity is counted in. */
        public String unit() {
            return yardstick.criterion().unit();
        }

        /** Returns the criterion's weight as a share of all weights. */
        public double weightRatio() {
            return yardstick.weightRatio();
        }

        /** Returns the points out of 100 that this criterion gives. */
        public double points() {
            return yardstick.points(valueRatio);
        }
    }

    /**
     * Makes a score of rows of numbers, one for each yardstick; they are not copied.
     *
     * @param quantities the absolute quantities, each in its unit
     * @param values how good each is, 0 to 1
     */
    public Score(List<Yardstick> yardsticks, double[] quantities, double[] values) {
        if (quantities.length != yardsticks.size() || values.length != yardsticks.size()) {
            throw new IllegalArgumentException("quantities and values must be as many as yardsticks, "
                    + yardsticks.size() + ", were " + quantities.length + " and " + values.length);
        }
        this.yardsticks = yardsticks;
        this.quantities = quantities;
        this.values = values;
    }

    /** Makes a score of its parts. */
    public Score(List<Part> parts) {
        this(
                parts.stream().map(Part::yardstick).toList(),
                parts.stream().mapToDouble(Part::quantityInUnit).toArray(),
                parts.stream().mapToDouble(Part::valueRatio).toArray());
    }

    /** Returns how many criteria the score is the sum of. */
    public int size() {
        return values.length;
    }

    /** Returns the criterion of the part at a place from 0. */
    public CriterionInfo criterion(int place) {
        return yardsticks.get(place).criterion();
    }

    /** Returns the criteria that the score is the sum of, in the order of its parts. */
    public List<CriterionInfo> criteria() {
        return yardsticks.stream().map(Yardstick::criterion).toList();
    }

    /** Returns the part at a place from 0. */
    public Part part(int place) {
        return new Part(yardsticks.get(place), quantities[place], values[place]);
    }

    /** Returns the place of a criterion, or -1 if the score has no such part. */
    public int placeOf(CriterionInfo criterion) {
        for (int i = 0; i < yardsticks.size(); i++) {
            if (yardsticks.get(i).criterion().equals(criterion)) {
                return i;
            }
        }
        return -1;
    }

    public List<Part> parts() {
        return IntStream.range(0, size()).mapToObj(this::part).toList();
    }

    /** Returns the sum of all parts' points, 0 to 100; not a number where a part is unknown: there is no score then. */
    public double totalPoints() {
        double total = 0;
        for (int i = 0; i < values.length; i++) {
            total += yardsticks.get(i).points(values[i]);
        }
        return total;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Score score && parts().equals(score.parts());
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }
}

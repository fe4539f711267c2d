package org.spanroom.corpus;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.bend.BendFinder;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bend.BendSettings;

/** How well the finder reads spans whose bends are known, class by class, beside what an ideal reader could know. */
public final class BendAccuracy {
    private static final double[] NOISE_BOUNDS_M = {0, 0.05, 0.1, 0.15};
    private static final double[] CHORD_BOUNDS_M = {0.3, 1, 2.5, 5};

    /** A bore of 4 in; the finder only takes the assumed radius from it. */
    private static final double BORE_MM = 102.26;

    /** Spans of each hard class: one in so many of the others. */
    private static final int HARD_SHARE = 10;

    static final List<DrawnSpan.Shape> HARD = List.of(
            DrawnSpan.Shape.OPPOSITE_CORNERS,
            DrawnSpan.Shape.GENTLE_SWEEP,
            DrawnSpan.Shape.WANDERING,
            DrawnSpan.Shape.EXACT_REVERSE);

    private final Tally all = new Tally();
    private final Map<String, Tally> byShape = new TreeMap<>();
    private final Map<String, Tally> byClass = new TreeMap<>();
    private final Map<String, Tally> hard = new LinkedHashMap<>();

    private BendAccuracy() {}

    /** Prints the figures; arguments: number of spans, seed. */
    public static void main(String[] args) {
        System.out.print(measure(
                        Long.parseLong(args[1]),
                        Integer.parseInt(args[0]),
                        ShippedConfig.get().bend())
                .toText());
    }

    /** Draws the corpus of a seed, reads it, and returns the figures. */
    public static BendAccuracy measure(long seed, int spans, BendSettings settings) {
        var accuracy = new BendAccuracy();
        var finder = new BendFinder(settings);
        for (int number = 0; number < spans; number++) {
            DrawnSpan span = SpanDrawer.draw(seed, number);
            accuracy.add(span, read(span, finder));
        }
        int ofEach = (spans + HARD_SHARE - 1) / HARD_SHARE;
        HARD.forEach(shape -> accuracy.hard.put(name(shape), measure(seed, ofEach, shape, settings)));
        return accuracy;
    }

    /** Returns the figures of spans of one hard class. */
    static Tally measure(long seed, int spans, DrawnSpan.Shape shape, BendSettings settings) {
        var tally = new Tally();
        var finder = new BendFinder(settings);
        for (int number = 0; number < spans; number++) {
            tally.add(read(SpanDrawer.draw(seed, number, shape), finder));
        }
        return tally;
    }

    private static Reading read(DrawnSpan span, BendFinder finder) {
        return Reading.of(
                span, finder.find(span.drawn(), BORE_MM), finder.find(Rounding.rounded(span.drawn()), BORE_MM));
    }

    private void add(DrawnSpan span, Reading reading) {
        all.add(reading);
        byShape.computeIfAbsent(name(span.style().shape()), name -> new Tally()).add(reading);
        byClass.computeIfAbsent(className(span.style()), name -> new Tally()).add(reading);
    }

    /** Returns the figures over all spans, or over those of one shape. */
    Tally all() {
        return all;
    }

    Tally ofShape(DrawnSpan.Shape shape) {
        return byShape.getOrDefault(name(shape), new Tally());
    }

    /** Returns all figures as a table, the targets first. */
    public String toText() {
        var text = new StringBuilder(1 << 13);
        text.append(all.targets());
        text.append('\n').append(Tally.header()).append(all.row("all"));
        hard.forEach((name, tally) -> text.append(tally.row(name)));
        byShape.forEach((name, tally) -> text.append(tally.row(name)));
        byClass.forEach((name, tally) -> text.append(tally.row(name)));
        return text.toString();
    }

    private static String name(DrawnSpan.Shape shape) {
        return shape.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String className(DrawnSpan.Style style) {
        String noise = style.noiseM() == 0 ? "0" : band(style.noiseM(), NOISE_BOUNDS_M);
        return "noise " + noise + ", chord " + band(style.chordM(), CHORD_BOUNDS_M) + ", radius "
                + number(style.leastRadiusM()) + "-" + number(style.mostRadiusM());
    }

    private static String band(double value, double[] bounds) {
        int upper = 1;
        while (upper < bounds.length - 1 && value > bounds[upper]) {
            upper++;
        }
        return number(bounds[upper - 1]) + "-" + number(bounds[upper]);
    }

    private static String number(double value) {
        return value == Math.rint(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%.2f", value).replaceAll("0$", "");
    }
}

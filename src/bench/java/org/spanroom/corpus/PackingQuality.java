package org.spanroom.corpus;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Service;

/**
 * How well and how fast circles are packed, beside published packings.
 *
 * <p>Method: circles are put to the assessor as cables that lie loose in a duct without sleeves, so that what is measured is
 * what ducts are judged by. Bores 0.1 % wider and 0.1 % narrower than the published ones; then crowded cross-sections of
 * sizes from the trade.
 */
public final class PackingQuality {
    private static final double RADIUS_MM = 10;
    private static final double OFF_RATIO = 0.001;
    private static final double LARGE_SETS_OFF_RATIO = 0.01;
    private static final int SMALL_SETS = 12;
    private static final double IN_MM = 25.4;
    private static final double[] SIZES_IN = {1.050, 1.315, 1.660, 1.900, 0.5, 0.6, 0.7, 0.75, 1.0};

    private final RoomAssessor assessor = new RoomAssessor(withoutSleeves());

    /** Prints the table; arguments: number of crowded cross-sections, seed. */
    public static void main(String[] args) {
        System.out.print(measure(Integer.parseInt(args[0]), Long.parseLong(args[1])));
    }

    /** Returns the table, with time on this machine; takes about a minute and all processors. */
    public static String measure(int sections, long seed) {
        var quality = new PackingQuality();
        return String.join(
                "\n",
                quality.equal(
                        "Equal circles in a round bore, by its radius over theirs",
                        BoreShape.ROUND,
                        PublishedPackings.MOST_ROUND,
                        n -> 2 * RADIUS_MM * PublishedPackings.roundRatio(n)),
                quality.equal(
                        "Equal circles in a square bore, by its side over their radius",
                        BoreShape.SQUARE,
                        PublishedPackings.MOST_SQUARE,
                        n -> RADIUS_MM * PublishedPackings.squareRatio(n)),
                quality.oneToN(),
                quality.crowded(sections, seed),
                "Published: Birgin and Gentil 2009, Tables 1 and 2; Graham, Lubachevsky, Nurmela and Ostergard 1998;",
                "round 21 to 36 from memory; radii 1 to n: Ye, Huang and Lu 2013, Table 4.",
                "");
    }

    private String equal(String heading, BoreShape shape, int most, Function<Integer, Double> publishedMm) {
        List<String> rows = IntStream.rangeClosed(1, most)
                .parallel()
                .mapToObj(n -> {
                    List<Double> circles = Collections.nCopies(n, 2 * RADIUS_MM);
                    double boreMm = publishedMm.apply(n);
                    Packing wider = pack(shape, boreMm * (1 + OFF_RATIO), circles);
                    Packing narrower = pack(shape, boreMm * (1 - OFF_RATIO), circles);
                    return String.format(
                            Locale.ROOT,
                            "%5d  %10.6f  %-13s %9.6f  %-13s %6.4f  %s",
                            n,
                            boreMm / (shape == BoreShape.SQUARE ? RADIUS_MM : 2 * RADIUS_MM),
                            words(wider),
                            (boreMm * (1 + OFF_RATIO) - wider.marginMm()) / boreMm,
                            words(narrower),
                            narrower.gapMm() / boreMm,
                            narrower.bound());
                })
                .toList();
        return heading + "\n"
                + "    n   published  0.1 % wider   found/publ.  0.1 % narrower    gap  and the proof, or the bound nearest to it\n"
                + String.join("\n", rows) + "\n";
    }

    private String oneToN() {
        var rows = new ArrayList<String>();
        for (double[] set : PublishedPackings.oneToN()) {
            int n = (int) set[0];
            double allowed = 1 + (n <= SMALL_SETS ? OFF_RATIO : LARGE_SETS_OFF_RATIO);
            List<Double> circles =
                    IntStream.rangeClosed(1, n).mapToObj(r -> 2.0 * r).toList();
            Packing wider = pack(BoreShape.ROUND, 2 * set[1] * allowed, circles);
            double foundMm = 2 * set[1] * allowed - wider.marginMm();
            rows.add(String.format(
                    Locale.ROOT,
                    "%5d  %10.6f  %6.1f %%       %-10s %9.6f",
                    n,
                    set[1],
                    100 * (allowed - 1),
                    words(wider),
                    foundMm / (2 * set[1])));
        }
        return "Circles of radii 1 to n in a round bore, by its radius\n"
                + "    n   published  bore wider by           found/publ.\n"
                + String.join("\n", rows) + "\n";
    }

    private String crowded(int sections, long seed) {
        var random = new SplittableRandom(seed);
        List<Duct> ducts =
                IntStream.range(0, sections).mapToObj(k -> crowdedDuct(random)).toList();
        long from = System.nanoTime();
        Map<PackingOutcome, Long> outcomes = ducts.parallelStream()
                .map(duct -> before(duct).outcome())
                .collect(Collectors.groupingBy(
                        Function.identity(), () -> new EnumMap<>(PackingOutcome.class), Collectors.counting()));
        double seconds = (System.nanoTime() - from) / 1e9;
        return String.format(
                Locale.ROOT,
                "%,d distinct cross-sections of 3 to 15 items, filled 50 to 85 %% (seed %d): %d fit, %d proved not to, "
                        + "%d undecided;%n%.1f s on %d processors%n",
                sections,
                seed,
                outcomes.getOrDefault(PackingOutcome.FITS, 0L),
                outcomes.getOrDefault(PackingOutcome.DOES_NOT_FIT, 0L),
                outcomes.getOrDefault(PackingOutcome.UNDECIDED, 0L),
                seconds,
                Runtime.getRuntime().availableProcessors());
    }

    private static Duct crowdedDuct(SplittableRandom random) {
        List<Double> circles = DoubleStream.generate(
                        () -> IN_MM * (SIZES_IN[random.nextInt(SIZES_IN.length)] + 0.01 * random.nextDouble()))
                .limit(3 + random.nextInt(13))
                .boxed()
                .toList();
        double squares = circles.stream().mapToDouble(d -> d * d).sum();
        double fill = 0.5 + 0.35 * random.nextDouble();
        return duct(BoreShape.ROUND, Math.sqrt(squares / fill), circles);
    }

    private Packing pack(BoreShape shape, double boreMm, List<Double> circlesMm) {
        return before(duct(shape, boreMm, circlesMm));
    }

    private Packing before(Duct duct) {
        return assessor.assess(duct).crossSection().map(CrossSection::before).orElseThrow();
    }

    private static String words(Packing packing) {
        return packing.outcome().key().replace('_', ' ');
    }

    private static Duct duct(BoreShape shape, double boreMm, List<Double> circlesMm) {
        List<Cable> cables = circlesMm.stream()
                .map(d -> new Cable("circle", d, 0, Service.LIVE))
                .toList();
        return new Duct(
                "duct",
                "",
                shape,
                boreMm,
                "",
                "",
                false,
                new Contents(List.of(), cables, true),
                false,
                Condition.SOUND,
                "",
                "",
                OptionalInt.empty(),
                Set.of());
    }

    /** Nothing is added and nothing is kept free, whatever the first three say: the same question before and after. */
    private static RoomSettings withoutSleeves() {
        return new RoomSettings(
                12.7,
                0.14,
                List.of(),
                2,
                3,
                0,
                0,
                List.of(),
                1,
                1,
                1,
                0,
                0,
                false,
                true,
                false,
                RoomSettings.BesideRule.ALLOWED,
                RoomSettings.SleevesBeside.TABLE,
                0,
                0);
    }
}

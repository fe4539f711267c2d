package org.spanroom.corpus;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.spanroom.corpus.DrawnSpan.KnownBend;
import org.spanroom.corpus.DrawnSpan.Shape;
import org.spanroom.corpus.DrawnSpan.Station;
import org.spanroom.corpus.DrawnSpan.Style;
import org.spanroom.corpus.TruePath.Pose;
import org.spanroom.model.Line;

/**
 * Draws spans at random.
 *
 * <p>One to four bends of 5 to 90 degrees and 0.9 to 60 m radius lie between straights of 40 to 300 m. Arcs are drawn as
 * chords of at most 0.3 to 5 m from point of contact to point of contact, or as one vertex where the straights meet if one
 * chord would do; straights have a vertex every 3 to 50 m. Vertices get normal noise of 0 to 0.15 m standard deviation in
 * each direction; up to 30 % of them are lost at random, though each bend keeps at least one, and 1 % are repeated. Eight
 * spans in ten are plain, one has a reverse curve, one a compound curve. Spans of the hard classes are drawn by themselves,
 * as {@link Shape} says.
 */
final class SpanDrawer {
    /** Bounds of the bands of radius, which are equally frequent; within a band the logarithm is uniform. */
    static final double[] RADIUS_BOUNDS_M = {0.9, 3, 12, 60};

    /** Every corner of the opposite ones: the sweep of 36 in that trade uses (UFGS 16525A), far less than a chord. */
    private static final double CORNER_RADIUS_M = 0.9144;

    /** What wandering lines are off by: a receiver of the common sort, common practice, no source. */
    private static final double WANDER_NOISE_M = 0.3;

    private final Random random;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<int[]> bendPieces = new ArrayList<>();
    private final List<Station> stations = new ArrayList<>();

    private SpanDrawer(Random random) {
        this.random = random;
    }

    /** Returns the span of a number in the corpus of a seed; each is drawn by itself. */
    static DrawnSpan draw(long seed, int number) {
        return new SpanDrawer(new Random(mix(seed + 0x9E3779B97F4A7C15L * (number + 1)))).draw();
    }

    /** Returns the span of a number among those of one hard class. */
    static DrawnSpan draw(long seed, int number, Shape shape) {
        long own = seed + 0x9E3779B97F4A7C15L * (number + 1) + 0xD1B54A32D192ED03L * shape.number;
        var drawer = new SpanDrawer(new Random(mix(own)));
        return drawer.draw(drawer.style(shape));
    }

    /** Spreads neighboring numbers over all bits: the first draws of {@link Random} follow its seed closely otherwise. */
    private static long mix(long number) {
        long mixed = (number ^ (number >>> 30)) * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
        return mixed ^ (mixed >>> 31);
    }

    private DrawnSpan draw() {
        return draw(style());
    }

    private DrawnSpan draw(Style style) {
        layPieces(style);
        var path = new TruePath(new Pose(0, 0, uniform(-Math.PI, Math.PI)), pieces);
        placeStations(style);
        List<Station> kept = lose(style.dropRatio());
        Line drawn = perturb(path, kept, style);
        return new DrawnSpan(path, style, drawn, kept, knownBends(path, kept, drawn));
    }

    private Style style() {
        double kind = random.nextDouble();
        Shape shape = kind < 0.8 ? Shape.PLAIN : kind < 0.9 ? Shape.REVERSE : Shape.COMPOUND;
        int band = random.nextInt(RADIUS_BOUNDS_M.length - 1);
        double noiseM = random.nextDouble() < 0.15 ? 0 : uniform(0, 0.15);
        return new Style(
                shape,
                noiseM,
                0,
                logUniform(0.3, 5),
                logUniform(3, 50),
                uniform(0, 0.3),
                RADIUS_BOUNDS_M[band],
                RADIUS_BOUNDS_M[band + 1]);
    }

    private Style style(Shape shape) {
        double noiseM = random.nextInt(3) == 0 ? 0 : 1;
        return switch (shape) {
            case OPPOSITE_CORNERS ->
                new Style(
                        shape, noiseM * uniform(0, 0.05), 0, 5, logUniform(5, 50), 0, CORNER_RADIUS_M, CORNER_RADIUS_M);
            case GENTLE_SWEEP ->
                new Style(
                        shape,
                        noiseM * uniform(0, 0.15),
                        0,
                        uniform(5, 30),
                        logUniform(3, 50),
                        uniform(0, 0.3),
                        200,
                        400);
            case WANDERING -> {
                int band = random.nextInt(RADIUS_BOUNDS_M.length - 1);
                yield new Style(
                        shape,
                        WANDER_NOISE_M,
                        logUniform(20, 100),
                        logUniform(0.3, 5),
                        logUniform(3, 10),
                        uniform(0, 0.3),
                        RADIUS_BOUNDS_M[band],
                        RADIUS_BOUNDS_M[band + 1]);
            }
            case EXACT_REVERSE ->
                new Style(shape, 0, 0, logUniform(0.3, 2), logUniform(3, 50), uniform(0, 0.3), 0.9, 20);
            default -> throw new IllegalArgumentException("shape must be a hard class, was " + shape);
        };
    }

    private void layPieces(Style style) {
        switch (style.shape()) {
            case OPPOSITE_CORNERS -> layPair(style, 60, 90, 2, 40);
            case EXACT_REVERSE -> layPair(style, 5, 40, 0, 5);
            case GENTLE_SWEEP -> layBetweenStraights(() -> layArc(style, side(), uniform(10, 60)));
            default -> layBends(style);
        }
    }

    private void layPair(Style style, double leastDeg, double mostDeg, double leastM, double mostM) {
        double side = side();
        layBetweenStraights(() -> {
            layArc(style, side, uniform(leastDeg, mostDeg));
            pieces.add(Piece.straight(leastM + (mostM - leastM) * Math.pow(random.nextDouble(), 2)));
            layArc(style, -side, uniform(leastDeg, mostDeg));
        });
    }

    private void layBetweenStraights(Runnable bends) {
        pieces.add(Piece.straight(uniform(20, 150)));
        bends.run();
        pieces.add(Piece.straight(uniform(20, 150)));
    }

    private double side() {
        return random.nextBoolean() ? 1 : -1;
    }

    private void layBends(Style style) {
        int bends = 1 + random.nextInt(4);
        int special = random.nextInt(bends);
        pieces.add(Piece.straight(uniform(40, 300)));
        for (int bend = 0; bend < bends; bend++) {
            double side = side();
            if (bend == special && style.shape() == Shape.COMPOUND) {
                layCompound(style, side);
            } else {
                layArc(style, side, uniform(5, 90));
            }
            if (bend == special && style.shape() == Shape.REVERSE) {
                pieces.add(Piece.straight(uniform(0, 10)));
                layArc(style, -side, uniform(5, 90));
            }
            pieces.add(Piece.straight(uniform(40, 300)));
        }
    }

    private void layArc(Style style, double side, double turnDeg) {
        bendPieces.add(new int[] {pieces.size(), pieces.size()});
        pieces.add(Piece.arc(side * Math.toRadians(turnDeg), logUniform(style.leastRadiusM(), style.mostRadiusM())));
    }

    private void layCompound(Style style, double side) {
        double totalDeg = uniform(20, 90);
        double firstDeg = totalDeg * uniform(0.3, 0.7);
        double radiusM = logUniform(style.leastRadiusM(), style.mostRadiusM());
        double widerM = Math.min(60, radiusM * uniform(1.5, 3));
        boolean tightFirst = random.nextBoolean();
        bendPieces.add(new int[] {pieces.size(), pieces.size() + 1});
        pieces.add(Piece.arc(side * Math.toRadians(firstDeg), tightFirst ? radiusM : widerM));
        pieces.add(Piece.arc(side * Math.toRadians(totalDeg - firstDeg), tightFirst ? widerM : radiusM));
    }

    private void placeStations(Style style) {
        stations.add(new Station(0, 0, true));
        for (int piece = 0; piece < pieces.size(); piece++) {
            if (pieces.get(piece).isArc()) {
                placeOnArc(piece, style.chordM());
            } else {
                placeOnStraight(piece, spacingM(style, piece));
            }
        }
        stations.add(new Station(pieces.size() - 1, 1, true));
    }

    /** Opposite corners have up to three vertices between them, however far apart those of their other straights are. */
    private double spacingM(Style style, int piece) {
        boolean between = piece > 0 && piece < pieces.size() - 1;
        return style.shape() == Shape.OPPOSITE_CORNERS && between
                ? pieces.get(piece).lengthM() / (1 + random.nextInt(4))
                : style.spacingM();
    }

    private void placeOnStraight(int piece, double spacingM) {
        double lengthM = pieces.get(piece).lengthM();
        double alongM = spacingM * uniform(0.5, 1.5);
        while (alongM < lengthM - 0.3 * spacingM) {
            stations.add(new Station(piece, alongM / lengthM, true));
            alongM += spacingM * uniform(0.5, 1.5);
        }
    }

    private void placeOnArc(int piece, double chordM) {
        Piece arc = pieces.get(piece);
        double byChordRad = 2 * Math.asin(Math.min(1, chordM / (2 * arc.radiusM())));
        int chords = (int) Math.ceil(Math.abs(arc.turnRad()) / byChordRad);
        if (chords <= 1) {
            stations.add(new Station(piece, 0.5, false));
            return;
        }
        boolean goesOn = piece > 0 && pieces.get(piece - 1).isArc();
        for (int i = goesOn ? 1 : 0; i <= chords; i++) {
            stations.add(new Station(piece, (double) i / chords, true));
        }
    }

    private List<Station> lose(double dropRatio) {
        List<Station> kept = new ArrayList<>();
        for (int i = 0; i < stations.size(); i++) {
            boolean end = i == 0 || i == stations.size() - 1;
            if (end || random.nextDouble() >= dropRatio || isLastOfItsArc(i, kept)) {
                kept.add(stations.get(i));
            }
        }
        return kept;
    }

    /** Returns whether an arc would be left without a vertex if this one were lost too. */
    private boolean isLastOfItsArc(int index, List<Station> kept) {
        int piece = stations.get(index).piece();
        boolean more = stations.get(index + 1).piece() == piece;
        boolean before = !kept.isEmpty() && kept.get(kept.size() - 1).piece() == piece;
        return pieces.get(piece).isArc() && !more && !before;
    }

    private Line perturb(TruePath path, List<Station> kept, Style style) {
        List<Station> doubled = new ArrayList<>();
        double[] xy = new double[4 * kept.size()];
        int filled = 0;
        double offX = 0;
        double offY = 0;
        Pose last = path.at(0, 0);
        for (Station station : kept) {
            Pose place = station.on(path);
            double memory = filled == 0 || style.wanderM() == 0
                    ? 0
                    : Math.exp(-Math.hypot(place.xM() - last.xM(), place.yM() - last.yM()) / style.wanderM());
            double freshM = style.noiseM() * Math.sqrt(1 - memory * memory);
            offX = memory * offX + freshM * random.nextGaussian();
            offY = memory * offY + freshM * random.nextGaussian();
            double xM = place.xM() + offX;
            double yM = place.yM() + offY;
            last = place;
            int copies = random.nextDouble() < 0.01 ? 2 : 1;
            for (int copy = 0; copy < copies; copy++) {
                xy[filled++] = xM;
                xy[filled++] = yM;
                doubled.add(station);
            }
        }
        kept.clear();
        kept.addAll(doubled);
        return Line.ofXy(Arrays.copyOf(xy, filled));
    }

    private List<KnownBend> knownBends(TruePath path, List<Station> kept, Line drawn) {
        List<KnownBend> known = new ArrayList<>();
        for (int[] range : bendPieces) {
            double turnRad = 0;
            int tightest = range[0];
            for (int piece = range[0]; piece <= range[1]; piece++) {
                turnRad += pieces.get(piece).turnRad();
                tightest = pieces.get(piece).radiusM() < pieces.get(tightest).radiusM() ? piece : tightest;
            }
            known.add(new KnownBend(
                    turnRad,
                    pieces.get(tightest).radiusM(),
                    range[0],
                    range[1],
                    tightest,
                    nearestAlongM(drawn, path.at(tightest, 0.5)),
                    count(kept, tightest)));
        }
        return known;
    }

    private static int count(List<Station> kept, int piece) {
        return (int) kept.stream()
                .distinct()
                .filter(station -> station.piece() == piece && station.onPath())
                .count();
    }

    private static double nearestAlongM(Line drawn, Pose place) {
        double bestAlongM = 0;
        double bestM = Double.POSITIVE_INFINITY;
        double alongM = 0;
        for (int vertex = 0; vertex < drawn.size(); vertex++) {
            alongM += vertex == 0 ? 0 : drawn.stepLength(vertex - 1);
            double awayM = Math.hypot(drawn.x(vertex) - place.xM(), drawn.y(vertex) - place.yM());
            if (awayM < bestM) {
                bestM = awayM;
                bestAlongM = alongM;
            }
        }
        return bestAlongM;
    }

    private double uniform(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    private double logUniform(double least, double most) {
        return least * Math.exp(random.nextDouble() * Math.log(most / least));
    }
}

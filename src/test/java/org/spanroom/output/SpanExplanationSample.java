package org.spanroom.output;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.spanroom.config.ShippedConfig;
import org.spanroom.effort.VaultAssessor;
import org.spanroom.model.Angle;
import org.spanroom.model.Answer;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.bore.Room;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.EndFacts;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.InsideSize;
import org.spanroom.model.network.RejectedValue;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultFacts;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.network.VolumeBasis;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.NeighborSettings;
import org.spanroom.model.pull.PullSettings;
import org.spanroom.model.pull.PullTrace;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.explain.Explanation;
import org.spanroom.output.explain.ExplanationJson;
import org.spanroom.output.explain.ExplanationText;
import org.spanroom.pull.PullAssessor;
import org.spanroom.pull.PullSites;
import org.spanroom.testing.Changed;
import org.spanroom.testing.Rooms;

/**
 * Spans with all that is to be shown of them. The place is open ocean.
 *
 * <p>The worked example is the one of the tests of pulling: 600 ft, 45-degree bends of 36 in radius centered 150 and 500 ft from
 * A, 1-1/4 SDR 13.5 of 0.263 lb/ft, a cable of 0.080 lb/ft, friction dry. Forces in lbf: 128.83 and 17.93 when pulled out at B,
 * 125.69 and 18.65 when pulled out at A.
 */
public final class SpanExplanationSample {
    public static final double LBF_N = 4.4482216152605;
    public static final double FT_M = 0.3048;

    private static final double LB_PER_FT_KG_PER_M = 0.45359237 / FT_M;

    private SpanExplanationSample() {}

    public static String text(SpanExplanation explained) {
        return ExplanationText.write(Explanation.of(explained));
    }

    public static String json(SpanExplanation explained) {
        return ExplanationJson.write(Explanation.of(explained));
    }

    public static SpanExplanation workedExample() {
        return workedExample(innerduct("i1", 0.5, 0.080));
    }

    /** Returns the example with these innerducts instead of the one. */
    public static SpanExplanation workedExample(Innerduct... innerducts) {
        return of(span("S-7", List.of(innerducts), exampleLine()), exampleBends(), exampleSettings());
    }

    /** A span that fails: long, of six bends, three innerducts of which one is empty, with the shipped settings. */
    public static SpanExplanation failing() {
        var bends = new ArrayList<Bend>();
        var pen = new Pen();
        for (int i = 0; i < 6; i++) {
            pen.ahead(40);
            double middleM = pen.traveledM + 0.9144 * Math.PI / 3;
            pen.turn(i % 3 == 2 ? -60 : 60, 0.9144);
            bends.add(bend(60, i % 3 == 2 ? Bend.Turn.RIGHT : Bend.Turn.LEFT, middleM, i % 2 == 0));
        }
        pen.ahead(40);
        var innerducts = List.of(
                innerduct("i1", 0.7, 0.15), new Innerduct("i2", 42.16, 3.12, List.of()), innerduct("i3", 0.5, 0.08));
        return of(
                span("S-8", innerducts, pen.line()),
                new Bends(bends),
                ShippedConfig.get().pull());
    }

    /** A span with hostile words wherever a text comes from somebody's data. */
    public static SpanExplanation hostile() {
        String word =
                "</text><script>alert('x')</script>&\"]]>\u0000\u001B[2J\u009B\u202Eevil\uD83D " + "w".repeat(150);
        var innerduct = new Innerduct(
                word,
                42.16,
                3.12,
                List.of(
                        new Cable(word, 12.7, 0.12, Service.UNKNOWN, true, word),
                        new Cable(word, 9, 0.1, Service.DEAD)),
                word,
                Answer.YES,
                Answer.NO);
        Duct duct = duct(word, new Contents(List.of(innerduct), List.of(new Cable(word, 8, 0.1, Service.LIVE)), true));
        Line ground = exampleLine();
        var span = new Span(
                word,
                duct,
                List.of(word, word),
                hostileVault(word),
                hostileVault(word),
                lonLat(ground),
                ground,
                ground.planeLength(),
                ground.planeLength(),
                0.5,
                0,
                word,
                new EndFacts(word, OptionalDouble.empty()),
                EndFacts.UNKNOWN);
        return of(span, exampleBends(), ShippedConfig.get().pull());
    }

    private static Vault hostileVault(String word) {
        return new Vault(
                0,
                word,
                -30,
                40,
                List.of(),
                OptionalDouble.empty(),
                word,
                new VaultSite(OptionalDouble.empty(), Answer.UNKNOWN, word, Answer.UNKNOWN),
                VaultFacts.UNKNOWN,
                List.of(new RejectedValue(Term.GAS_FOUND.key(), word, word)));
    }

    /** The example with every fact of the vault and the duct at A recorded, in which crews prepare for all, and B a handhole of which little is. */
    public static SpanExplanation recordedAtA() {
        Line ground = exampleLine();
        var cable = new Cable("c1", 12.7, 0.12, Service.LIVE, true, "FO-12");
        var innerduct = new Innerduct("i1", 42.16, 3.12, List.of(cable), "orange", Answer.YES, Answer.NO);
        Span plain = span("S-5", List.of(innerduct), ground);
        var from = new Vault(
                0,
                "V-1",
                -30,
                40,
                List.of(),
                OptionalDouble.empty(),
                "maintenance hole",
                new VaultSite(OptionalDouble.of(13.5), Answer.YES, "roadway", Answer.YES, OptionalDouble.of(9)),
                new VaultFacts(
                        VolumeBasis.INSIDE_SIZE,
                        OptionalDouble.of(2.4384),
                        new InsideSize(OptionalDouble.of(3), OptionalDouble.of(2.5), OptionalDouble.of(1.8)),
                        OptionalDouble.of(762),
                        Answer.YES,
                        Answer.NO,
                        Optional.of(LocalDate.of(2025, 11, 3))),
                List.of());
        var to = new Vault(
                1,
                "V-2",
                -30,
                40,
                List.of(),
                OptionalDouble.empty(),
                "handhole",
                new VaultSite(OptionalDouble.empty(), Answer.UNKNOWN, "", Answer.UNKNOWN, OptionalDouble.of(4)),
                VaultFacts.UNKNOWN,
                List.of(new RejectedValue(Term.VAULT_DEPTH.key(), "deep", "'deep' is not a valid number")));
        var span = new Span(
                plain.id(),
                plain.duct(),
                plain.routeIds(),
                from,
                to,
                plain.lonLat(),
                ground,
                plain.lengthM(),
                plain.drawnLengthM(),
                0,
                0,
                "",
                new EndFacts("2/3", OptionalDouble.of(6.096)),
                EndFacts.UNKNOWN);
        SpanExplanation made = of(span, exampleBends(), ShippedConfig.get().pull());
        var vaults = new VaultAssessor(
                ShippedConfig.get().rates(), ShippedConfig.get().vaultKinds());
        return Changed.of(
                Changed.of(made, "needsAtA", vaults.assess(from, List.of())), "needsAtB", vaults.assess(to, List.of()));
    }

    public static SpanExplanation nothingToPull() {
        Span span = span("S-9", List.of(), exampleLine());
        return of(span, Bends.NONE, ShippedConfig.get().pull());
    }

    /** A span of so many bends at random, some of them close together, with the shipped settings. */
    public static SpanExplanation random(long seed, int count) {
        var random = new Random(seed);
        var bends = new ArrayList<Bend>();
        var pen = new Pen();
        pen.headingRad = 2 * Math.PI * random.nextDouble();
        for (int i = 0; i < count; i++) {
            pen.ahead(random.nextInt(3) == 0 ? 0.3 + 2 * random.nextDouble() : 2 + 30 * random.nextDouble());
            double deg = 5 + 40 * random.nextDouble();
            boolean left = random.nextBoolean();
            double middleM = pen.traveledM + Math.toRadians(deg) / 2 * 0.9144;
            pen.turn(left ? deg : -deg, 0.9144);
            bends.add(bend(deg, left ? Bend.Turn.LEFT : Bend.Turn.RIGHT, middleM, random.nextBoolean()));
        }
        pen.ahead(5);
        String id = "S-" + seed + "-" + "x".repeat(random.nextInt(40));
        return of(
                span(id, List.of(innerduct("i1", 0.5, 0.08)), pen.line()),
                new Bends(bends),
                ShippedConfig.get().pull());
    }

    static SpanExplanation of(Span span, Bends bends, PullSettings settings) {
        var assessor = new PullAssessor(settings, new PullSites(Map.of(), vault -> true));
        var pull = assessor.assess(span, bends);
        var room = Rooms.recovering(3, 1, 3, 9, Room.SLEEVES_PER_DUCT);
        var score = new Score(List.of(
                SampleResults.part("room_gained", 8, 0.75, 0.6),
                SampleResults.part("length", span.lengthM(), 0.5, 0.3),
                SampleResults.part("ease_bends", bends.total().deg(), 1, 0.1)));
        var traces = new ArrayList<PullTrace>();
        for (int turn = 1; turn <= pull.pulls().size(); turn++) {
            traces.add(assessor.trace(span, bends, turn, settings.judgedBy()));
        }
        var rank = OptionalInt.of(3);
        return new SpanExplanation(
                new RankedSpan(rank, new Assessment(span, bends, room, pull), score),
                new RecordedStanding(rank, 12),
                settings,
                traces,
                List.of(),
                "",
                List.of());
    }

    public static Innerduct innerduct(String id, double cableIn, double lbPerFt) {
        return new Innerduct(
                id,
                1.660 * 25.4,
                0.123 * 25.4,
                List.of(new Cable(id + "-c", cableIn * 25.4, lbPerFt * LB_PER_FT_KG_PER_M, Service.LIVE)));
    }

    static Span span(String id, List<Innerduct> innerducts, Line ground) {
        Duct duct = duct("D-7", new Contents(innerducts, List.of(), true));
        double lengthM = ground.planeLength();
        return new Span(
                id,
                duct,
                List.of("R-1", "R-2"),
                vault("V-1"),
                vault("V-2"),
                lonLat(ground),
                ground,
                lengthM,
                lengthM,
                0.12,
                0,
                "QL-B");
    }

    /** Returns simple capstan, no wander, no breakaway, neighbors' full weight, and the density that makes 0.263 lb/ft. */
    static PullSettings exampleSettings() {
        double density = 0.263 * LB_PER_FT_KG_PER_M / innerduct("x", 0.5, 0.08).massKgPerM(1);
        return new PullSettings(
                ShippedConfig.get().pull().friction(),
                Friction.DRY,
                0,
                1,
                0,
                true,
                false,
                density,
                0.15,
                7.6,
                10,
                new NeighborSettings(1, 2),
                ShippedConfig.get().pull().limits());
    }

    /** Returns the example's line: left by 45 degrees, right by 45 degrees, the arcs in chords; 600 ft. */
    static Line exampleLine() {
        double arcFt = 3 * Math.PI / 4;
        var pen = new Pen();
        pen.ahead((150 - arcFt / 2) * FT_M);
        pen.turn(45, 3 * FT_M);
        pen.ahead((350 - arcFt) * FT_M);
        pen.turn(-45, 3 * FT_M);
        pen.ahead((100 - arcFt / 2) * FT_M);
        return pen.line();
    }

    static Bends exampleBends() {
        return new Bends(
                List.of(bend(45, Bend.Turn.LEFT, 150 * FT_M, false), bend(45, Bend.Turn.RIGHT, 500 * FT_M, true)));
    }

    static Bend bend(double deg, Bend.Turn turn, double middleM, boolean assumed) {
        double arcM = Math.toRadians(deg) * 0.9144;
        return new Bend(Angle.ofDeg(deg), turn, middleM - arcM / 2, arcM, 0.9144, assumed);
    }

    private static Duct duct(String id, Contents contents) {
        return new Duct(
                id,
                "B-1",
                BoreShape.ROUND,
                102.26,
                "pvc40",
                "pvc",
                false,
                contents,
                false,
                Condition.SOUND,
                "asphalt",
                "OWN",
                OptionalInt.of(1987),
                Set.of(Term.CABLE_MASS, Term.INSIDE_DIAMETER));
    }

    private static Vault vault(String id) {
        return new Vault(0, id, -30, 40, List.of(), OptionalDouble.empty(), "");
    }

    private static Line lonLat(Line ground) {
        double[] xy = new double[2 * ground.size()];
        for (int i = 0; i < ground.size(); i++) {
            xy[2 * i] = -30 + ground.x(i) / 85_394;
            xy[2 * i + 1] = 40 + ground.y(i) / 111_035;
        }
        return Line.ofXy(xy);
    }

    /** Draws a line of straights and arcs, an arc in twelve chords. */
    private static final class Pen {
        private static final int CHORDS = 12;

        private final ArrayList<Double> xy = new ArrayList<>(List.of(0.0, 0.0));
        private double headingRad;
        private double traveledM;

        void ahead(double lengthM) {
            int last = xy.size();
            xy.add(xy.get(last - 2) + lengthM * Math.cos(headingRad));
            xy.add(xy.get(last - 1) + lengthM * Math.sin(headingRad));
            traveledM += lengthM;
        }

        void turn(double deg, double radiusM) {
            double stepRad = Math.toRadians(deg) / CHORDS;
            for (int i = 0; i < CHORDS; i++) {
                headingRad += stepRad / 2;
                ahead(2 * radiusM * Math.sin(Math.abs(stepRad) / 2));
                headingRad += stepRad / 2;
            }
        }

        Line line() {
            return Line.ofXy(xy.stream().mapToDouble(Double::doubleValue).toArray());
        }
    }
}

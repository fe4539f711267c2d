package org.spanroom.bend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Line;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.BendSettings;
import org.spanroom.model.bend.Bends;

/** What must be true of the bends of any line, however it lies. */
class BendFinderLawsTest {
    private static final double BORE_MM = 102.26;
    private static final double SAME_DEG = 0.05;

    private final BendFinder finder = new BendFinder(ShippedConfig.get().bend());

    static LongStream seeds() {
        return LongStream.range(0, 120);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void placeAndHeadingDoNotMatter(long seed) {
        Line line = line(seed);
        double cos = Math.cos((double) seed);
        double sin = Math.sin((double) seed);

        Line moved = mapped(line, (x, y) -> cos * x - sin * y + 1234, (x, y) -> sin * x + cos * y - 987);

        same(find(moved), find(line).list(), 1);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theMirrorSwapsLeftAndRight(long seed) {
        Line line = line(seed);

        List<Bend> mirrored = new ArrayList<>();
        for (Bend bend : find(mapped(line, (x, y) -> x, (x, y) -> -y)).list()) {
            mirrored.add(withOtherSide(bend, bend.startM()));
        }

        same(find(line), mirrored, 1);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void fromTheOtherEndTheSameBendsComeInOppositeOrder(long seed) {
        Line line = line(seed);

        List<Bend> back = new ArrayList<>();
        for (Bend bend : find(line.reversed()).list()) {
            back.add(withOtherSide(bend, Math.max(0, line.planeLength() - bend.startM() - bend.arcLengthM())));
        }
        Collections.reverse(back);

        same(find(line), back, 1);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void scaleDoesNotMatterWhenTheSettingsScaleToo(long seed) {
        Line line = line(seed);
        BendSettings s = ShippedConfig.get().bend();
        var doubled = new BendSettings(
                2 * s.drawingToleranceM(),
                s.minimumDeflectionDeg(),
                2 * s.sweepRadiusLargeBoreM(),
                2 * s.sweepRadiusSmallBoreM(),
                s.largeBoreFromMm(),
                2 * s.endStubM(),
                2 * s.joinStraightM(),
                2 * s.longestChordM(),
                2 * s.chordCutM());

        Bends large = new BendFinder(doubled).find(mapped(line, (x, y) -> 2 * x, (x, y) -> 2 * y), BORE_MM);

        same(large, find(line).list(), 2);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void bendsLieWithinTheLineAndApart(long seed) {
        Line line = line(seed);

        Bends bends = find(line);

        BendFinderTest.liesInOrder(bends.list(), line.planeLength());
        assertThat(bends.list()).allSatisfy(bend -> {
            assertThat(bend.deflection().deg()).isGreaterThanOrEqualTo(2);
            if (bend.radiusAssumed()) {
                assertThat(bend.arcLengthM())
                        .isCloseTo(bend.radiusM() * bend.deflection().rad(), within(1e-9));
            }
        });
    }

    /** No one draws so, but a file may hold it. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void scribbleIsRead(long seed) {
        var random = new Random(seed);
        double[] xy = new double[2 * (2 + random.nextInt(60))];
        double spanM = Math.pow(10, 4 * random.nextDouble() - 1);
        for (int i = 0; i < xy.length; i++) {
            xy[i] = random.nextInt(4) == 0 && i > 1 ? xy[i - 2] : spanM * random.nextDouble();
        }
        Line line = Line.ofXy(xy);

        BendFinderTest.liesInOrder(find(line).list(), line.planeLength());
    }

    private Bends find(Line line) {
        return finder.find(line, BORE_MM);
    }

    /** One to four bends, as corners and arcs, with noise of up to 5 cm. */
    private static Line line(long seed) {
        var random = new Random(31 * seed + 7);
        Drawing drawing = Drawing.heading(360 * random.nextDouble());
        for (int bend = random.nextInt(4); bend >= 0; bend--) {
            drawing.straight(40 + 100 * random.nextDouble(), 2 + random.nextInt(8));
            double turnDeg = (random.nextBoolean() ? 1 : -1) * (8 + 80 * random.nextDouble());
            if (random.nextBoolean()) {
                drawing.turn(turnDeg);
            } else {
                drawing.arc(turnDeg, 3 + 40 * random.nextDouble(), 4 + random.nextInt(12));
            }
        }
        return drawing.straight(40 + 100 * random.nextDouble(), 2 + random.nextInt(8))
                .line(0.05 * random.nextDouble(), seed);
    }

    private static Line mapped(Line line, DoubleBinaryOperator toX, DoubleBinaryOperator toY) {
        double[] xy = new double[2 * line.size()];
        for (int i = 0; i < line.size(); i++) {
            xy[2 * i] = toX.applyAsDouble(line.x(i), line.y(i));
            xy[2 * i + 1] = toY.applyAsDouble(line.x(i), line.y(i));
        }
        return Line.ofXy(xy);
    }

    private static Bend withOtherSide(Bend bend, double startM) {
        Bend.Turn turn = bend.turn() == Bend.Turn.LEFT ? Bend.Turn.RIGHT : Bend.Turn.LEFT;
        return new Bend(bend.deflection(), turn, startM, bend.arcLengthM(), bend.radiusM(), bend.radiusAssumed());
    }

    private static void same(Bends found, List<Bend> expected, double scaleRatio) {
        assertThat(found.list()).hasSameSizeAs(expected);
        for (int i = 0; i < expected.size(); i++) {
            Bend one = found.list().get(i);
            Bend other = expected.get(i);
            assertThat(one.turn()).isEqualTo(other.turn());
            assertThat(one.radiusAssumed()).isEqualTo(other.radiusAssumed());
            assertThat(one.deflection().deg()).isCloseTo(other.deflection().deg(), within(SAME_DEG));
            assertThat(one.radiusM())
                    .isCloseTo(scaleRatio * other.radiusM(), within(0.02 * scaleRatio * other.radiusM()));
            assertThat(one.middleM()).isCloseTo(scaleRatio * other.middleM(), within(0.5));
        }
    }
}

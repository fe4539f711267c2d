package org.spanroom.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.Locale;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A compact line is the line that it was made of, bit for bit; the reader of decimal numbers is the JDK's. */
class CompactLineTest {
    static Stream<Arguments> seedsAndPlaces() {
        return LongStream.range(0, 12)
                .boxed()
                .flatMap(seed -> Stream.of(6, 7, 8, 9).map(places -> arguments(seed, places)));
    }

    @ParameterizedTest
    @MethodSource("seedsAndPlaces")
    void decimalOrdinatesComeOutBitForBit(long seed, int places) {
        var random = new Random(seed);
        double lon = random.nextDouble(-179, 179);
        double lat = random.nextDouble(-89, 89);
        double wideDeg = new double[] {0.9, 0.01, 1e-4}[(int) seed % 3];
        double[] xy = new double[2 * (2 + random.nextInt(40))];
        for (int i = 0; i < xy.length; i++) {
            double near = (i % 2 == 0 ? lon : lat) + random.nextDouble(-wideDeg, wideDeg);
            xy[i] = Double.parseDouble(String.format(Locale.ROOT, "%." + places + "f", near));
        }
        Line line = Line.ofXy(xy);
        Line compact = line.compact();
        assertNotSame(line, compact, "it was to be packed");
        assertEquals(line.size(), compact.size());
        for (int vertex = 0; vertex < line.size(); vertex++) {
            assertEquals(Double.doubleToRawLongBits(line.x(vertex)), Double.doubleToRawLongBits(compact.x(vertex)));
            assertEquals(Double.doubleToRawLongBits(line.y(vertex)), Double.doubleToRawLongBits(compact.y(vertex)));
        }
        assertEquals(line, compact);
        assertEquals(compact, line);
        assertEquals(line.hashCode(), compact.hashCode());
        assertEquals(line.reversed(), compact.reversed());
        assertEquals(line.planeLength(), compact.planeLength());
        assertSame(compact, compact.compact());
    }

    @ParameterizedTest
    @MethodSource("seedsAndPlaces")
    void heightsComeOutBitForBitToo(long seed, int places) {
        var random = new Random(seed);
        double[] xyz = new double[3 * (2 + random.nextInt(40))];
        for (int i = 0; i < xyz.length; i++) {
            double near = i % 3 == 2 ? random.nextDouble(-400, 4000) : random.nextDouble(7.2, 8.4);
            String shown = String.format(Locale.ROOT, "%." + (i % 3 == 2 ? places - 6 : places) + "f", near);
            xyz[i] = Double.parseDouble(shown);
        }
        Line line = Line.ofXyz(xyz);
        Line compact = line.compact();
        assertNotSame(line, compact, "it was to be packed");
        for (int vertex = 0; vertex < line.size(); vertex++) {
            assertEquals(Double.doubleToRawLongBits(line.x(vertex)), Double.doubleToRawLongBits(compact.x(vertex)));
            assertEquals(Double.doubleToRawLongBits(line.y(vertex)), Double.doubleToRawLongBits(compact.y(vertex)));
            assertEquals(Double.doubleToRawLongBits(line.z(vertex)), Double.doubleToRawLongBits(compact.z(vertex)));
        }
        assertEquals(line, compact);
        assertEquals(line.reversed(), compact.reversed());
    }

    /** Steps are held in two, three or four bytes: the last and the first number of each. */
    @ParameterizedTest
    @ValueSource(ints = {0x7F, 0x80, 0x7FFF, 0x8000, 0x8001, 0x7FFFFF, 0x800000, 0x800001, 0x1_000_0000})
    void stepsOfEveryWidthComeOut(int step) {
        for (int signed : new int[] {step, -step}) {
            Line line = Line.ofXy(0, 0, signed / 1e6, 1e-6, -1e-6, -signed / 1e6);
            Line compact = line.compact();
            assertNotSame(line, compact, "it was to be packed");
            assertEquals(line, compact);
            assertEquals(compact, line);
        }
    }

    @Test
    void whatWouldNotComeOutStaysAsItIs() {
        for (Line line : new Line[] {
            Line.ofXy(1.0 / 3, 0, 1, 1),
            Line.ofXy(0, 0, 1, Math.nextUp(1.0)),
            Line.ofXy(-0.0, 0, 1, 1),
            Line.ofXy(0, 0, 1e-10, 1),
            Line.ofXy(-170.123456789, 0, 170.123456789, 0),
            Line.ofXy(0, 0, 1e300, 0),
            Line.ofXyz(0, 0, 1.0 / 3, 1, 1, 1),
            Line.ofXyz(0, 0, 0, 1, 1, 4e6)
        }) {
            assertSame(line, line.compact());
        }
    }
}

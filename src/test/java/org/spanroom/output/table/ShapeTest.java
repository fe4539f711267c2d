package org.spanroom.output.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.spanroom.model.Line;

class ShapeTest {
    private static final Line OUTER = Line.ofXy(0, 0, 10, 0, 10, 10, 0, 10, 0, 0);
    private static final Line HOLE = Line.ofXy(2, 2, 4, 2, 4, 4, 2, 2);

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void ringsTurnAsAskedHoweverTheyWereDrawn(boolean counterClockwise) {
        for (Line outer : List.of(OUTER, OUTER.reversed())) {
            for (Line hole : List.of(HOLE, HOLE.reversed())) {
                Shape turned = Shape.polygon(List.of(outer, hole)).oriented(counterClockwise);

                assertThat(Orientation.isCCW(ring(turned, 0))).isEqualTo(counterClockwise);
                assertThat(Orientation.isCCW(ring(turned, 1))).isEqualTo(!counterClockwise);
            }
        }
    }

    @Test
    void heightsAreKeptOnlyIfAllLinesHaveThem() {
        Line high = Line.ofXyz(0, 0, 5, 1, 1, 6);

        assertThat(Shape.line(high).z(1)).isEqualTo(6);
        assertThat(Shape.lines(List.of(high, OUTER)).hasZ()).isFalse();
        assertThat(Shape.lines(List.of(high, OUTER)).x(1)).isEqualTo(1);
        assertThat(Shape.lines(List.of(high, OUTER)).partStart(1)).isEqualTo(2);
    }

    private static Coordinate[] ring(Shape shape, int part) {
        var ring = new Coordinate[shape.partEnd(part) - shape.partStart(part)];
        for (int i = 0; i < ring.length; i++) {
            int vertex = shape.partStart(part) + i;
            ring[i] = new Coordinate(shape.x(vertex), shape.y(vertex));
        }
        return ring;
    }
}

package org.spanroom.output.explain;

import java.util.ArrayDeque;
import java.util.List;

/**
 * A diagram of quantities along a span, in the units that its numbers have, from 0 at the bottom to a round number above the largest,
 * with bends and a limit.
 */
final class Chart {
    private static final int TICKS = 4;
    private static final int SIZE_PX = 11;
    /** How far above the largest quantity the limit may be to be still worth showing, as a factor. */
    private static final double LIMIT_WORTH_SHOWING_RATIO = 1.6;

    private static final Svg.Pen BEND = new Svg.Pen("#909090", 0.8, "1.5 3");
    private static final Svg.Pen LIMIT = new Svg.Pen("#000000", 1.8, "2 3");

    private final Svg svg;
    private final Box frame;
    private final double length;

    Chart(Svg svg, Box frame, double length) {
        this.svg = svg;
        this.frame = frame;
        this.length = length;
    }

    /**
     * What one diagram shows.
     *
     * @param profiles points of distance along the span and quantity, a list for each line
     * @param pens one for each line
     * @param bends where the bends are along the span, in order
     * @param limit where the limit lies; infinite where there is none
     */
    record Content(String name, List<List<double[]>> profiles, List<Svg.Pen> pens, List<Double> bends, double limit) {
        double most() {
            return profiles.stream()
                    .flatMap(List::stream)
                    .mapToDouble(point -> point[1])
                    .max()
                    .orElse(0);
        }

        /** Returns the top of the diagram, a round number. */
        double top() {
            double worth = limit <= LIMIT_WORTH_SHOWING_RATIO * most() ? Math.max(most(), limit) : most();
            return TICKS * RoundNumbers.above(Math.max(worth, 1e-3) / TICKS);
        }

        boolean showsLimit() {
            return limit <= top();
        }
    }

    void draw(Content content) {
        double top = content.top();
        axes(top);
        bends(content.bends());
        for (int i = 0; i < content.profiles().size(); i++) {
            svg.path(
                    content.profiles().get(i).stream()
                            .map(point -> new double[] {x(point[0]), y(point[1], top)})
                            .toList(),
                    content.pens().get(i));
        }
        if (content.showsLimit()) {
            svg.stroke(frame.leftPx(), y(content.limit(), top), frame.rightPx(), y(content.limit(), top), LIMIT);
        }
        svg.label(frame.leftPx(), frame.topPx() - 24, "start", 12, content.name());
    }

    /** Writes words about the limit above the diagram at its right. */
    void limitNote(String words) {
        svg.label(frame.rightPx(), frame.topPx() - 24, "end", SIZE_PX, words);
    }

    private void axes(double top) {
        for (int tick = 0; tick <= TICKS; tick++) {
            double yPx = y(tick * top / TICKS, top);
            svg.stroke(frame.leftPx(), yPx, frame.rightPx(), yPx, tick == 0 ? Svg.Pen.AXIS : Svg.Pen.THIN);
            svg.label(frame.leftPx() - 8, yPx + 4, "end", SIZE_PX, RoundNumbers.plain(tick * top / TICKS));
        }
        svg.stroke(frame.leftPx(), frame.topPx(), frame.leftPx(), frame.bottomPx(), Svg.Pen.AXIS);
        svg.stroke(frame.rightPx(), frame.topPx(), frame.rightPx(), frame.bottomPx(), Svg.Pen.AXIS);
        double step = RoundNumbers.above(length / 10);
        for (int i = 0; i * step <= length * (1 + 1e-9); i++) {
            double xPx = x(i * step);
            svg.stroke(xPx, frame.bottomPx(), xPx, frame.bottomPx() + 4, Svg.Pen.AXIS);
            svg.label(xPx, frame.bottomPx() + 16, "middle", SIZE_PX, RoundNumbers.plain(i * step));
        }
    }

    /** Marks bends with their numbers; those that lie too close for two labels share one. */
    private void bends(List<Double> at) {
        var shared = new ArrayDeque<int[]>();
        for (int i = 0; i < at.size(); i++) {
            svg.stroke(x(at.get(i)), frame.topPx(), x(at.get(i)), frame.bottomPx(), BEND);
            int[] range = {i, i};
            while (!shared.isEmpty() && bendLabel(shared.peekLast(), at).overlaps(bendLabel(range, at))) {
                range[0] = shared.removeLast()[0];
            }
            shared.addLast(range);
        }
        for (int[] range : shared) {
            Box box = bendLabel(range, at);
            double middlePx = (box.leftPx() + box.rightPx()) / 2;
            svg.label(middlePx, box.bottomPx(), "middle", SIZE_PX, numbers(range));
        }
    }

    private Box bendLabel(int[] range, List<Double> at) {
        double middlePx = (x(at.get(range[0])) + x(at.get(range[1]))) / 2;
        double widthPx = Svg.widthPx(numbers(range), SIZE_PX) + 4;
        return Box.around(middlePx, frame.topPx() - 5 - SIZE_PX / 2.0, widthPx, SIZE_PX);
    }

    private static String numbers(int[] range) {
        return range[0] == range[1] ? Integer.toString(range[0] + 1) : (range[0] + 1) + "\u2013" + (range[1] + 1);
    }

    private double x(double at) {
        return frame.leftPx() + (frame.rightPx() - frame.leftPx()) * at / length;
    }

    private double y(double quantity, double top) {
        return frame.bottomPx() - (frame.bottomPx() - frame.topPx()) * quantity / top;
    }
}

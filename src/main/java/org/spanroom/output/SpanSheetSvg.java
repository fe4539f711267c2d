package org.spanroom.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Bend;
import org.spanroom.model.Line;
import org.spanroom.model.PullTrace;
import org.spanroom.model.Reckoning;
import org.spanroom.model.Span;

/**
 * One sheet of one span: the plan with its bends, and below it the pull on the hardest innerduct and the tension of its cable
 * along the span, pulled from either end.
 */
public final class SpanSheetSvg {
    private static final double WIDTH_PX = 1000;
    private static final double HEIGHT_PX = 760;
    private static final Svg.Pen WAY = new Svg.Pen("#1f4e79", 2.2, "");
    private static final Svg.Pen FROM_A = new Svg.Pen("#b3541e", 2.2, "");
    private static final Svg.Pen FROM_B = new Svg.Pen("#1f6f54", 2.2, "7 4");

    private final Reckoning reckoning;
    private final Svg svg;

    private SpanSheetSvg(Reckoning reckoning) {
        this.reckoning = reckoning;
        this.svg = new Svg(WIDTH_PX, HEIGHT_PX, "Span " + span().id());
    }

    /** Returns the sheet as SVG text. */
    public static String draw(Reckoning reckoning) {
        return new SpanSheetSvg(reckoning).sheet();
    }

    private String sheet() {
        heading();
        new Plan(40, 80, 920, 250).draw();
        var hardest = hardestPull();
        if (hardest == null) {
            svg.label(500, 440, "middle", 14, "No innerduct is there to be pulled.");
        } else {
            forceDiagrams(hardest);
        }
        svg.label(
                40,
                745,
                "start",
                11,
                "Planning figures, uncertain by a factor of two. They authorise nobody to enter or to "
                        + "pull: local codes, the owner's rules and licensed practice decide.");
        return svg.finish();
    }

    private void heading() {
        var span = span();
        svg.label(40, 34, "start", 20, "Span " + span.id());
        String rank = reckoning.ranked().rank().isPresent()
                ? "rank " + reckoning.ranked().rank().getAsInt() + " of " + reckoning.spansInRun()
                : "not ranked";
        svg.label(
                40,
                56,
                "start",
                13,
                String.format(
                        Locale.ROOT,
                        "%.1f m from %s (A) to %s (B), %d bends, %.0f degrees in all, %s",
                        span.lengthM(),
                        span.from().id(),
                        span.to().id(),
                        reckoning.ranked().assessment().bends().list().size(),
                        reckoning.ranked().assessment().bends().total().deg(),
                        rank));
    }

    private void forceDiagrams(PullTrace trace) {
        svg.label(
                40,
                364,
                "start",
                13,
                "Innerduct " + trace.pull().turn() + " in the order of pulling, friction "
                        + trace.friction().name().toLowerCase(Locale.ROOT)
                        + ", as the pull begins (breakaway not included)");
        svg.stroke(640, 360, 675, 360, FROM_A);
        svg.label(680, 364, "start", 12, "pulled out at A");
        svg.stroke(800, 360, 835, 360, FROM_B);
        svg.label(840, 364, "start", 12, "pulled out at B");
        var pull = new Chart(svg, 90, 385, 870, 140, span().lengthM(), "innerduct, N");
        pull.draw(List.of(profile(trace.fromA(), false), profile(trace.fromB(), false)), List.of(FROM_A, FROM_B));
        var hold = new Chart(svg, 90, 570, 870, 110, span().lengthM(), "live cable, N");
        hold.draw(List.of(profile(trace.fromA(), true), profile(trace.fromB(), true)), List.of(FROM_A, FROM_B));
        svg.label(525, 722, "middle", 12, "metres from A");
    }

    private static List<double[]> profile(PullTrace.Way way, boolean ofCable) {
        var points = new ArrayList<double[]>();
        for (PullTrace.Section section : way.sections()) {
            for (PullTrace.Point point : List.of(section.near(), section.far())) {
                points.add(new double[] {point.atM(), ofCable ? point.cableN() : point.innerductN()});
            }
        }
        return points;
    }

    private @Nullable PullTrace hardestPull() {
        PullTrace hardest = null;
        double mostN = -1;
        for (PullTrace trace : reckoning.traces()) {
            double n = trace.pull().fromA().forces(trace.friction()).pullN();
            if (n > mostN) {
                mostN = n;
                hardest = trace;
            }
        }
        return hardest;
    }

    private Span span() {
        return reckoning.ranked().span();
    }

    /** The drawn line from above, north up, bends numbered. */
    private final class Plan {
        private final Line ground = span().ground();
        private final double leftPx;
        private final double topPx;
        private final double heightPx;
        private final double widthPx;
        private double westM = Double.MAX_VALUE;
        private double northM = -Double.MAX_VALUE;
        private double pxPerM;
        private double shiftXPx;
        private double shiftYPx;

        Plan(double leftPx, double topPx, double widthPx, double heightPx) {
            this.leftPx = leftPx;
            this.topPx = topPx;
            this.widthPx = widthPx;
            this.heightPx = heightPx;
        }

        void draw() {
            fit();
            var points = new ArrayList<double[]>();
            for (int vertex = 0; vertex < ground.size(); vertex++) {
                points.add(place(ground.x(vertex), ground.y(vertex)));
            }
            svg.path(points, WAY);
            end(points.get(0), "A");
            end(points.get(points.size() - 1), "B");
            int number = 1;
            for (Bend bend : reckoning.ranked().assessment().bends().list()) {
                mark(number++, bend);
            }
            scaleBar();
            svg.stroke(leftPx + widthPx - 10, topPx + 34, leftPx + widthPx - 10, topPx + 8, Svg.Pen.AXIS);
            svg.label(leftPx + widthPx - 10, topPx + 2, "middle", 12, "N");
        }

        private void fit() {
            double eastM = -Double.MAX_VALUE;
            double southM = Double.MAX_VALUE;
            for (int vertex = 0; vertex < ground.size(); vertex++) {
                westM = Math.min(westM, ground.x(vertex));
                eastM = Math.max(eastM, ground.x(vertex));
                southM = Math.min(southM, ground.y(vertex));
                northM = Math.max(northM, ground.y(vertex));
            }
            pxPerM = Math.min(
                    (widthPx - 60) / Math.max(1, eastM - westM), (heightPx - 60) / Math.max(1, northM - southM));
            shiftXPx = leftPx + (widthPx - pxPerM * (eastM - westM)) / 2;
            shiftYPx = topPx + (heightPx - pxPerM * (northM - southM)) / 2;
        }

        private double[] place(double xM, double yM) {
            return new double[] {shiftXPx + (xM - westM) * pxPerM, shiftYPx + (northM - yM) * pxPerM};
        }

        private void end(double[] at, String name) {
            svg.circle(at[0], at[1], 9, "#ffffff", Svg.Pen.AXIS);
            svg.label(at[0], at[1] + 4, "middle", 12, name);
        }

        private void mark(int number, Bend bend) {
            double[] at = placeAlong(bend.middleM());
            svg.circle(at[0], at[1], 4, "#b3541e", Svg.Pen.NONE);
            svg.label(
                    at[0] + 7,
                    at[1] - 7,
                    "start",
                    11,
                    String.format(
                            Locale.ROOT,
                            "%d: %.0f deg %s, R %.1f m%s",
                            number,
                            bend.deflection().deg(),
                            bend.turn().name().toLowerCase(Locale.ROOT),
                            bend.radiusM(),
                            bend.radiusAssumed() ? " assumed" : ""));
        }

        private double[] placeAlong(double atM) {
            double leftM = atM;
            for (int vertex = 0; vertex + 1 < ground.size(); vertex++) {
                double stepM = ground.stepLength(vertex);
                if (leftM <= stepM && stepM > 0) {
                    double share = leftM / stepM;
                    return place(
                            ground.x(vertex) + share * (ground.x(vertex + 1) - ground.x(vertex)),
                            ground.y(vertex) + share * (ground.y(vertex + 1) - ground.y(vertex)));
                }
                leftM -= stepM;
            }
            return place(ground.x(ground.size() - 1), ground.y(ground.size() - 1));
        }

        private void scaleBar() {
            double barM = Chart.roundBelow(120 / pxPerM);
            double yPx = topPx + heightPx - 4;
            svg.stroke(leftPx, yPx, leftPx + barM * pxPerM, yPx, new Svg.Pen("#404040", 3, ""));
            svg.label(leftPx + barM * pxPerM + 6, yPx + 4, "start", 11, String.format(Locale.ROOT, "%.0f m", barM));
        }
    }
}

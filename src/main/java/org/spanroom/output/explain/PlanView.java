package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.Line;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.network.Span;
import org.spanroom.model.rank.SpanExplanation;

/** A span's drawn line from above, north up, with vaults, numbered bends and a scale bar. */
final class PlanView {
    private static final Svg.Pen WAY = new Svg.Pen("#303030", 2.2, "");
    private static final Svg.Pen LEADER = new Svg.Pen("#808080", 0.7, "");
    private static final int LABEL_PX = 12;
    private static final double MARGIN_PX = 34;
    private static final double SCALE_STRIP_PX = 26;
    private static final double LONGEST_BAR_PX = 140;
    private static final double LONGEST_NAME_PX = 170;

    private final Svg svg;
    private final Box frame;
    private final Span span;
    private final List<Bend> bends;
    private final Line ground;
    private final UnitSystem units;
    private double westM = Double.MAX_VALUE;
    private double eastM = -Double.MAX_VALUE;
    private double southM = Double.MAX_VALUE;
    private double northM = -Double.MAX_VALUE;
    private double pxPerM = 1;

    PlanView(Svg svg, Box frame, SpanExplanation explained, UnitSystem units) {
        this.units = units;
        this.svg = svg;
        this.frame = frame;
        this.span = explained.span();
        this.bends = explained.assessment().bends().list();
        this.ground = span.ground();
    }

    void draw() {
        fit();
        var way = new ArrayList<double[]>();
        for (int vertex = 0; vertex < ground.size(); vertex++) {
            way.add(place(ground.x(vertex), ground.y(vertex)));
        }
        svg.path(way, WAY);
        var labels = new LabelPlacing(frame, way);
        northArrow(labels);
        double[] first = way.get(0);
        double[] last = way.get(way.size() - 1);
        List<double[]> marks = bends.stream().map(bend -> along(bend.middleM())).toList();
        for (double[] mark : marks) {
            svg.circle(mark[0], mark[1], 3.2, "#303030", Svg.Pen.NONE);
            labels.take(Box.around(mark[0], mark[1], 8, 8));
        }
        vault(first, "A");
        vault(last, "B");
        labels.take(Box.around(first[0], first[1], 20, 20));
        labels.take(Box.around(last[0], last[1], 20, 20));
        name(labels, first, span.from().id());
        name(labels, last, span.to().id());
        for (int i = 0; i < marks.size(); i++) {
            number(labels, marks.get(i), i + 1);
        }
        scaleBar();
    }

    private void fit() {
        for (int vertex = 0; vertex < ground.size(); vertex++) {
            westM = Math.min(westM, ground.x(vertex));
            eastM = Math.max(eastM, ground.x(vertex));
            southM = Math.min(southM, ground.y(vertex));
            northM = Math.max(northM, ground.y(vertex));
        }
        double roomX = frame.rightPx() - frame.leftPx() - 2 * MARGIN_PX;
        double roomY = frame.bottomPx() - frame.topPx() - 2 * MARGIN_PX;
        pxPerM = Math.min(roomX / Math.max(1, eastM - westM), roomY / Math.max(1, northM - southM));
    }

    private double[] place(double xM, double yM) {
        double middleX = (frame.leftPx() + frame.rightPx()) / 2;
        double middleY = (frame.topPx() + frame.bottomPx()) / 2;
        return new double[] {
            middleX + (xM - (westM + eastM) / 2) * pxPerM, middleY - (yM - (southM + northM) / 2) * pxPerM
        };
    }

    private double[] along(double atM) {
        double restM = atM;
        for (int vertex = 0; vertex + 1 < ground.size(); vertex++) {
            double stepM = ground.stepLength(vertex);
            if (restM <= stepM && stepM > 0) {
                double share = restM / stepM;
                return place(
                        ground.x(vertex) + share * (ground.x(vertex + 1) - ground.x(vertex)),
                        ground.y(vertex) + share * (ground.y(vertex + 1) - ground.y(vertex)));
            }
            restM -= stepM;
        }
        return place(ground.x(ground.size() - 1), ground.y(ground.size() - 1));
    }

    private void vault(double[] at, String end) {
        svg.circle(at[0], at[1], 9, "#ffffff", Svg.Pen.AXIS);
        svg.label(at[0], at[1] + 4, "middle", LABEL_PX, end);
    }

    private void name(LabelPlacing labels, double[] at, String vault) {
        String words = Svg.fitted(vault, LABEL_PX, LONGEST_NAME_PX);
        Box box = labels.place(at, Svg.widthPx(words, LABEL_PX) + 4, LABEL_PX + 4);
        svg.label((box.leftPx() + box.rightPx()) / 2, box.bottomPx() - 4, "middle", LABEL_PX, words);
    }

    private void number(LabelPlacing labels, double[] at, int number) {
        String words = Integer.toString(number);
        Box box = labels.place(at, Svg.widthPx(words, LABEL_PX) + 3, LABEL_PX + 2);
        double xPx = (box.leftPx() + box.rightPx()) / 2;
        double yPx = (box.topPx() + box.bottomPx()) / 2;
        double distancePx = Math.hypot(xPx - at[0], yPx - at[1]);
        if (distancePx > 20) {
            double shareEnd = 1 - 9 / distancePx;
            svg.stroke(at[0], at[1], at[0] + shareEnd * (xPx - at[0]), at[1] + shareEnd * (yPx - at[1]), LEADER);
        }
        svg.label(xPx, yPx + 4.3, "middle", LABEL_PX, words);
    }

    private void northArrow(LabelPlacing labels) {
        double xPx = frame.rightPx() - 14;
        double topPx = frame.topPx() + 20;
        svg.label(xPx, topPx - 5, "middle", LABEL_PX, "N");
        svg.stroke(xPx, topPx + 26, xPx, topPx + 6, Svg.Pen.AXIS);
        svg.area(
                List.of(new double[] {xPx, topPx}, new double[] {xPx - 4, topPx + 9}, new double[] {xPx + 4, topPx + 9
                }),
                "#404040");
        labels.take(new Box(xPx - 10, frame.topPx(), frame.rightPx(), topPx + 28));
    }

    private void scaleBar() {
        double shownPerM = units.value(1, "m");
        double bar = RoundNumbers.below(LONGEST_BAR_PX / pxPerM * shownPerM);
        double yPx = frame.bottomPx() + SCALE_STRIP_PX / 2;
        double leftPx = frame.leftPx();
        double rightPx = leftPx + bar / shownPerM * pxPerM;
        svg.stroke(leftPx, yPx, rightPx, yPx, Svg.Pen.AXIS);
        svg.stroke(leftPx, yPx - 4, leftPx, yPx + 4, Svg.Pen.AXIS);
        svg.stroke(rightPx, yPx - 4, rightPx, yPx + 4, Svg.Pen.AXIS);
        svg.label(rightPx + 6, yPx + 4, "start", 11, RoundNumbers.plain(bar) + " " + units.unit("m"));
    }
}

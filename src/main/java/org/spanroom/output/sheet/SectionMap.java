package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.Line;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.Street;
import org.spanroom.model.network.Vault;
import org.spanroom.output.explain.Box;
import org.spanroom.output.explain.LabelPlacing;
import org.spanroom.output.explain.RoundNumbers;
import org.spanroom.output.explain.Svg;

/**
 * A sketch of a section from above, north up: its spans thick, other spans thin, streets behind, both vaults, a scale bar. Places are
 * projected on a plane about the middle of the section, which is true to a thousandth over the few hundred meters that it shows.
 */
final class SectionMap {
    static final double WIDTH_MM = 80;
    private static final double HEIGHT_MM = 66;
    /** At 96 to the inch letters of 12 are 9 pt. */
    private static final double PX_PER_MM = 96 / 25.4;

    private static final double WIDTH_PX = WIDTH_MM * PX_PER_MM;
    private static final double HEIGHT_PX = HEIGHT_MM * PX_PER_MM;
    private static final double MARGIN_PX = 40;
    private static final double SCALE_PX = 24;
    private static final int LABEL_PX = 12;
    private static final double LONGEST_BAR_PX = 110;
    private static final double LONGEST_NAME_PX = 150;
    private static final int MOST_STREET_NAMES = 6;
    private static final double M_PER_DEG = 111_195;

    private static final Svg.Pen STREET = new Svg.Pen("#d0d0d0", 9, "");
    private static final Svg.Pen OTHER = new Svg.Pen("#606060", 1, "5 3");
    private static final Svg.Pen HALO = new Svg.Pen("#ffffff", 6, "");
    private static final Svg.Pen OWN = new Svg.Pen("#000000", 3, "");
    private static final Svg.Pen EDGE = new Svg.Pen("#606060", 0.8, "");

    private final Svg svg = new Svg(WIDTH_PX, HEIGHT_PX, "");
    private final Box frame = new Box(0, 0, WIDTH_PX, HEIGHT_PX - SCALE_PX);
    private final SectionWork section;
    private final UnitSystem units;
    private final double middleLonDeg;
    private final double middleLatDeg;
    private final double pxPerM;

    private SectionMap(SectionWork section, UnitSystem units) {
        this.section = section;
        this.units = units;
        Bounds bounds = Bounds.of(section);
        middleLonDeg = (bounds.westDeg + bounds.eastDeg) / 2;
        middleLatDeg = (bounds.southDeg + bounds.northDeg) / 2;
        double wideM = (bounds.eastDeg - bounds.westDeg) * M_PER_DEG * Math.cos(Math.toRadians(middleLatDeg));
        double highM = (bounds.northDeg - bounds.southDeg) * M_PER_DEG;
        pxPerM = Math.min(
                (frame.rightPx() - 2 * MARGIN_PX) / Math.max(1, wideM),
                (frame.bottomPx() - 2 * MARGIN_PX) / Math.max(1, highM));
    }

    /** What the section reaches over. */
    private static final class Bounds {
        private double westDeg = Double.MAX_VALUE;
        private double eastDeg = -Double.MAX_VALUE;
        private double southDeg = Double.MAX_VALUE;
        private double northDeg = -Double.MAX_VALUE;

        static Bounds of(SectionWork section) {
            var bounds = new Bounds();
            for (DuctWork duct : section.ducts()) {
                Line line = duct.span().lonLat();
                for (int vertex = 0; vertex < line.size(); vertex++) {
                    bounds.take(line.x(vertex), line.y(vertex));
                }
            }
            bounds.take(
                    section.vaultA().vault().lonDeg(), section.vaultA().vault().latDeg());
            bounds.take(
                    section.vaultB().vault().lonDeg(), section.vaultB().vault().latDeg());
            return bounds;
        }

        private void take(double lonDeg, double latDeg) {
            westDeg = Math.min(westDeg, lonDeg);
            eastDeg = Math.max(eastDeg, lonDeg);
            southDeg = Math.min(southDeg, latDeg);
            northDeg = Math.max(northDeg, latDeg);
        }
    }

    static SheetDrawing draw(SectionWork section, UnitSystem units) {
        return SheetDrawing.of(new SectionMap(section, units).svg(), WIDTH_MM);
    }

    private String svg() {
        var names = new ArrayList<String>();
        var places = new ArrayList<double[]>();
        for (Street street : section.around().streets()) {
            List<List<double[]>> parts = parts(street.lonLat());
            parts.forEach(part -> svg.path(part, STREET));
            if (!street.name().isBlank() && names.size() < MOST_STREET_NAMES) {
                longest(parts).ifPresent(part -> {
                    names.add(street.name());
                    places.add(middle(part));
                });
            }
        }
        parts(section.around().spans()).forEach(part -> svg.path(part, OTHER));
        var own = new ArrayList<double[]>();
        for (DuctWork duct : section.ducts()) {
            List<double[]> way = way(duct.span().lonLat());
            svg.path(way, HALO);
            svg.path(way, OWN);
            own.addAll(way);
        }
        var labels = new LabelPlacing(frame, own);
        northArrow(labels);
        vaults(labels);
        for (int street = 0; street < names.size(); street++) {
            name(labels, places.get(street), names.get(street));
        }
        scaleBar();
        svg.path(
                List.of(
                        new double[] {0.5, 0.5},
                        new double[] {frame.rightPx() - 0.5, 0.5},
                        new double[] {frame.rightPx() - 0.5, frame.bottomPx()},
                        new double[] {0.5, frame.bottomPx()},
                        new double[] {0.5, 0.5}),
                EDGE);
        return svg.finish();
    }

    private void vaults(LabelPlacing labels) {
        double[] a = place(section.vaultA().vault());
        double[] b = place(section.vaultB().vault());
        vault(labels, a, "A");
        vault(labels, b, "B");
        name(labels, a, section.vaultA().vault().id());
        name(labels, b, section.vaultB().vault().id());
    }

    private void vault(LabelPlacing labels, double[] at, String end) {
        svg.circle(at[0], at[1], 9, "#ffffff", Svg.Pen.AXIS);
        svg.label(at[0], at[1] + 4.3, "middle", LABEL_PX, end);
        labels.take(Box.around(at[0], at[1], 20, 20));
    }

    private void name(LabelPlacing labels, double[] at, String name) {
        String words = Svg.fitted(name, LABEL_PX, LONGEST_NAME_PX);
        Box box = labels.place(at, Svg.widthPx(words, LABEL_PX) + 4, LABEL_PX + 4);
        svg.area(
                List.of(
                        new double[] {box.leftPx(), box.topPx()},
                        new double[] {box.rightPx(), box.topPx()},
                        new double[] {box.rightPx(), box.bottomPx()},
                        new double[] {box.leftPx(), box.bottomPx()}),
                "#ffffff");
        svg.label((box.leftPx() + box.rightPx()) / 2, box.bottomPx() - 4, "middle", LABEL_PX, words);
    }

    private void northArrow(LabelPlacing labels) {
        double xPx = frame.rightPx() - 14;
        double topPx = 20;
        svg.circle(xPx, topPx + 8, 13, "#ffffff", Svg.Pen.NONE);
        svg.label(xPx, topPx - 4, "middle", LABEL_PX, "N");
        svg.stroke(xPx, topPx + 26, xPx, topPx + 6, Svg.Pen.AXIS);
        svg.area(
                List.of(new double[] {xPx, topPx}, new double[] {xPx - 4, topPx + 9}, new double[] {xPx + 4, topPx + 9
                }),
                "#000000");
        labels.take(new Box(xPx - 12, 0, frame.rightPx(), topPx + 28));
    }

    private void scaleBar() {
        double shownPerM = units.value(1, "m");
        double bar = RoundNumbers.below(LONGEST_BAR_PX / pxPerM * shownPerM);
        double yPx = HEIGHT_PX - SCALE_PX / 2;
        double rightPx = 2 + bar / shownPerM * pxPerM;
        svg.stroke(2, yPx, rightPx, yPx, Svg.Pen.AXIS);
        svg.stroke(2, yPx - 4, 2, yPx + 4, Svg.Pen.AXIS);
        svg.stroke(rightPx, yPx - 4, rightPx, yPx + 4, Svg.Pen.AXIS);
        svg.label(rightPx + 6, yPx + 4, "start", LABEL_PX, RoundNumbers.plain(bar) + " " + units.unit("m"));
    }

    private double[] place(Vault vault) {
        return place(vault.lonDeg(), vault.latDeg());
    }

    private double[] place(double lonDeg, double latDeg) {
        double eastM = (lonDeg - middleLonDeg) * M_PER_DEG * Math.cos(Math.toRadians(middleLatDeg));
        double northM = (latDeg - middleLatDeg) * M_PER_DEG;
        return new double[] {frame.rightPx() / 2 + eastM * pxPerM, frame.bottomPx() / 2 - northM * pxPerM};
    }

    private List<double[]> way(Line lonLat) {
        var way = new ArrayList<double[]>();
        for (int vertex = 0; vertex < lonLat.size(); vertex++) {
            way.add(place(lonLat.x(vertex), lonLat.y(vertex)));
        }
        return way;
    }

    /** Returns what of lines is inside the frame. */
    private List<List<double[]>> parts(List<Line> lines) {
        return lines.stream()
                .flatMap(line -> FrameClip.inside(frame, way(line)).stream())
                .toList();
    }

    private static Optional<List<double[]>> longest(List<List<double[]>> parts) {
        return parts.stream().max((one, other) -> Double.compare(lengthPx(one), lengthPx(other)));
    }

    private static double lengthPx(List<double[]> part) {
        double length = 0;
        for (int i = 1; i < part.size(); i++) {
            length += Math.hypot(part.get(i)[0] - part.get(i - 1)[0], part.get(i)[1] - part.get(i - 1)[1]);
        }
        return length;
    }

    private static double[] middle(List<double[]> part) {
        double restPx = lengthPx(part) / 2;
        for (int i = 1; i < part.size(); i++) {
            double[] from = part.get(i - 1);
            double[] to = part.get(i);
            double stepPx = Math.hypot(to[0] - from[0], to[1] - from[1]);
            if (restPx <= stepPx && stepPx > 0) {
                double share = restPx / stepPx;
                return new double[] {from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])};
            }
            restPx -= stepPx;
        }
        return part.get(0);
    }
}

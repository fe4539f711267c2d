package org.spanroom.output.explain;

import java.util.List;
import java.util.Optional;
import org.spanroom.model.bore.Arrangement;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PlacedCircle;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.network.BoreShape;

/** Draws one cross-section to scale about a point. Kinds differ in brightness, outline and letter as well as in color. */
final class CrossSectionPanel {
    /** How wide the bore is drawn. */
    static final double BORE_PX = 360;

    static final Svg.Pen OUTLINE = new Svg.Pen("#202020", 1.2, "");
    static final Svg.Pen FABRIC = new Svg.Pen("#202020", 1, "4 2");
    static final Svg.Pen DEAD = new Svg.Pen("#202020", 1.2, "2 2");
    static final String INNERDUCT_WALL = "#e0a458";
    static final String CABLE = "#33475b";
    static final String DEAD_CABLE = "#c9c9c9";
    static final String NEW_CABLE = "#9fd3c7";
    static final String EMPTY = "#ffffff";

    private static final Svg.Pen BORE = new Svg.Pen("#202020", 5, "");
    private static final String BAND = "#4d8c7f";

    /** Width of the band of fabric between two cells, over that of the narrower one. */
    private static final double BAND_RATIO = 0.5;

    private final Svg svg;
    private final double xPx;
    private final double yPx;
    private final int labelPx;

    /** @param labelPx size of the letters in circles; narrow circles have none */
    CrossSectionPanel(Svg svg, double xPx, double yPx, int labelPx) {
        this.svg = svg;
        this.xPx = xPx;
        this.yPx = yPx;
        this.labelPx = labelPx;
    }

    /** Returns half the width that a drawing takes, the line of the bore included. */
    static double halfPx() {
        return BORE_PX / 2 + BORE.widthPx();
    }

    /** Draws what a bore holds and returns it; where no arrangement is known, says so. */
    Optional<Arrangement> draw(Packing packing) {
        packing.arrangement()
                .ifPresentOrElse(
                        this::draw,
                        () -> svg.label(xPx, yPx, "middle", labelPx + 1, "No arrangement: the contents do not fit."));
        return packing.arrangement();
    }

    private void draw(Arrangement drawn) {
        double pxPerMm = BORE_PX / drawn.boreMm();
        bore(drawn.shape());
        joints(drawn, pxPerMm);
        for (PlacedCircle circle : drawn.circles()) {
            circle(circle, xPx + circle.xMm() * pxPerMm, yPx - circle.yMm() * pxPerMm, pxPerMm);
        }
    }

    /** The fabric between neighboring cells of a sleeve: a band from middle to middle, below the cells. */
    private void joints(Arrangement drawn, double pxPerMm) {
        for (Arrangement.Joint joint : drawn.joints()) {
            PlacedCircle one = drawn.circles().get(joint.one());
            PlacedCircle other = drawn.circles().get(joint.other());
            double wideMm = BAND_RATIO * Math.min(one.outsideDiameterMm(), other.outsideDiameterMm());
            svg.stroke(
                    xPx + one.xMm() * pxPerMm,
                    yPx - one.yMm() * pxPerMm,
                    xPx + other.xMm() * pxPerMm,
                    yPx - other.yMm() * pxPerMm,
                    new Svg.Pen(BAND, wideMm * pxPerMm, ""));
        }
    }

    private void bore(BoreShape shape) {
        double halfPx = BORE_PX / 2 + BORE.widthPx() / 2;
        if (shape == BoreShape.SQUARE) {
            double[] corner = {xPx - halfPx, yPx - halfPx};
            svg.path(
                    List.of(
                            corner,
                            new double[] {xPx + halfPx, yPx - halfPx},
                            new double[] {xPx + halfPx, yPx + halfPx},
                            new double[] {xPx - halfPx, yPx + halfPx},
                            corner),
                    BORE);
        } else {
            svg.circle(xPx, yPx, halfPx, EMPTY, BORE);
        }
    }

    private void circle(PlacedCircle circle, double atXPx, double atYPx, double pxPerMm) {
        double outsidePx = circle.outsideDiameterMm() / 2 * pxPerMm;
        double insidePx = circle.insideDiameterMm() / 2 * pxPerMm;
        if (circle.kind() == Kind.INNERDUCT) {
            svg.circle(atXPx, atYPx, outsidePx, INNERDUCT_WALL, OUTLINE);
            svg.circle(atXPx, atYPx, insidePx, EMPTY, OUTLINE);
            return;
        }
        double cablePx = insidePx > 0 ? insidePx : outsidePx;
        if (insidePx > 0) {
            svg.circle(atXPx, atYPx, outsidePx, EMPTY, FABRIC);
        }
        svg.circle(atXPx, atYPx, cablePx, fill(circle.kind()), circle.kind() == Kind.DEAD_CABLE ? DEAD : OUTLINE);
        if (circle.kind() == Kind.NEW_CABLE) {
            letter(atXPx, atYPx, cablePx, Integer.toString(circle.sleeve()));
        } else if (circle.kind() == Kind.RESERVED) {
            letter(atXPx, atYPx, cablePx, "R");
        } else if (circle.kind() == Kind.DEAD_CABLE) {
            double armPx = cablePx * 0.5;
            svg.stroke(atXPx - armPx, atYPx - armPx, atXPx + armPx, atYPx + armPx, OUTLINE);
            svg.stroke(atXPx - armPx, atYPx + armPx, atXPx + armPx, atYPx - armPx, OUTLINE);
        }
    }

    private void letter(double atXPx, double atYPx, double cablePx, String letter) {
        if (cablePx > labelPx * 2 / 3.0) {
            svg.label(atXPx, atYPx + labelPx / 3.0, "middle", labelPx, letter);
        }
    }

    private static String fill(Kind kind) {
        return switch (kind) {
            case INNERDUCT -> INNERDUCT_WALL;
            case CABLE -> CABLE;
            case DEAD_CABLE -> DEAD_CABLE;
            case NEW_CABLE -> NEW_CABLE;
            case RESERVED -> EMPTY;
        };
    }
}

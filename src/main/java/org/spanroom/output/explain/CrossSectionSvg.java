package org.spanroom.output.explain;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.bore.Arrangement;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.network.BoreShape;

/**
 * A duct's cross-section before and after, side by side and to scale: the very arrangement that the count of new cables
 * rests on. Kinds differ in brightness, outline and letter as well as in color, so that a print in gray reads too.
 */
public final class CrossSectionSvg {
    private static final double WIDTH_PX = 940;
    static final double HEIGHT_PX = 560;
    private static final double BORE_PX = 360;
    private static final double MIDDLE_Y_PX = 275;
    private static final double BEFORE_X_PX = 240;
    private static final double AFTER_X_PX = 700;

    private static final Svg.Pen BORE = new Svg.Pen("#202020", 5, "");
    private static final Svg.Pen OUTLINE = new Svg.Pen("#202020", 1.2, "");
    private static final Svg.Pen FABRIC = new Svg.Pen("#202020", 1, "4 2");
    private static final Svg.Pen DEAD = new Svg.Pen("#202020", 1.2, "2 2");

    private static final String INNERDUCT_WALL = "#e0a458";
    private static final String CABLE = "#33475b";
    private static final String DEAD_CABLE = "#c9c9c9";
    private static final String NEW_CABLE = "#9fd3c7";
    private static final String BAND = "#4d8c7f";

    /** Width of the band of fabric between two cells, over that of the narrower one. */
    private static final double BAND_RATIO = 0.5;

    private static final String EMPTY = "#ffffff";

    private final Room room;
    private final CrossSection section;
    private final String reason;
    private final UnitSystem units;
    private final Svg svg;

    private CrossSectionSvg(String heading, Room room, CrossSection section, String reason, UnitSystem units) {
        this.units = units;
        this.room = room;
        this.reason = reason;
        this.section = section;
        this.svg = new Svg(WIDTH_PX, HEIGHT_PX, heading);
        svg.label(30, 34, "start", 18, heading);
    }

    /**
     * Returns the drawing as SVG text; nothing where the contents are unknown.
     *
     * @param reason why the duct is not worth recovering, shown where nothing new goes in
     */
    public static Optional<String> draw(String heading, Room room, String reason, UnitSystem units) {
        return room.crossSection().map(section -> new CrossSectionSvg(heading, room, section, reason, units).sheet());
    }

    private String sheet() {
        panel(BEFORE_X_PX, "Now", section.before());
        caption(BEFORE_X_PX, beforeWords(), verdict(section.before()));
        Optional<PullChoice> proposal = room.proposal().filter(choice -> choice.newCables() > 0);
        if (proposal.isPresent()) {
            panel(AFTER_X_PX, "After", proposal.get().after());
            caption(
                    AFTER_X_PX,
                    afterWords(proposal.get()),
                    verdict(proposal.get().after()));
        } else {
            svg.label(AFTER_X_PX, MIDDLE_Y_PX, "middle", 13, "Not recovered:");
            svg.label(AFTER_X_PX, MIDDLE_Y_PX + 20, "middle", 12, reason);
        }
        section.contradiction()
                .ifPresent(words ->
                        svg.label(30, 516, "start", 11, "The records contradict each other: " + units.sentence(words)));
        legend();
        return svg.finish();
    }

    private void panel(double xPx, String name, Packing packing) {
        svg.label(xPx, 72, "middle", 15, name);
        Optional<Arrangement> arrangement = packing.arrangement();
        if (arrangement.isEmpty()) {
            svg.label(xPx, MIDDLE_Y_PX, "middle", 13, "No arrangement: the contents do not fit.");
            return;
        }
        Arrangement drawn = arrangement.get();
        double pxPerMm = BORE_PX / drawn.boreMm();
        bore(xPx, drawn.shape());
        joints(drawn, xPx, pxPerMm);
        for (PlacedCircle circle : drawn.circles()) {
            circle(circle, xPx + circle.xMm() * pxPerMm, MIDDLE_Y_PX - circle.yMm() * pxPerMm, pxPerMm);
        }
        scaleBar(xPx, pxPerMm);
    }

    /** The fabric between neighboring cells of a sleeve: a band from middle to middle, below the cells. */
    private void joints(Arrangement drawn, double xPx, double pxPerMm) {
        for (Arrangement.Joint joint : drawn.joints()) {
            PlacedCircle one = drawn.circles().get(joint.one());
            PlacedCircle other = drawn.circles().get(joint.other());
            double wideMm = BAND_RATIO * Math.min(one.outsideDiameterMm(), other.outsideDiameterMm());
            svg.stroke(
                    xPx + one.xMm() * pxPerMm,
                    MIDDLE_Y_PX - one.yMm() * pxPerMm,
                    xPx + other.xMm() * pxPerMm,
                    MIDDLE_Y_PX - other.yMm() * pxPerMm,
                    new Svg.Pen(BAND, wideMm * pxPerMm, ""));
        }
    }

    private void bore(double xPx, BoreShape shape) {
        double halfPx = BORE_PX / 2 + BORE.widthPx() / 2;
        if (shape == BoreShape.SQUARE) {
            double[] corner = {xPx - halfPx, MIDDLE_Y_PX - halfPx};
            svg.path(
                    List.of(
                            corner,
                            new double[] {xPx + halfPx, MIDDLE_Y_PX - halfPx},
                            new double[] {xPx + halfPx, MIDDLE_Y_PX + halfPx},
                            new double[] {xPx - halfPx, MIDDLE_Y_PX + halfPx},
                            corner),
                    BORE);
        } else {
            svg.circle(xPx, MIDDLE_Y_PX, halfPx, EMPTY, BORE);
        }
    }

    private void circle(PlacedCircle circle, double xPx, double yPx, double pxPerMm) {
        double outsidePx = circle.outsideDiameterMm() / 2 * pxPerMm;
        double insidePx = circle.insideDiameterMm() / 2 * pxPerMm;
        if (circle.kind() == Kind.INNERDUCT) {
            svg.circle(xPx, yPx, outsidePx, INNERDUCT_WALL, OUTLINE);
            svg.circle(xPx, yPx, insidePx, EMPTY, OUTLINE);
            return;
        }
        double cablePx = insidePx > 0 ? insidePx : outsidePx;
        if (insidePx > 0) {
            svg.circle(xPx, yPx, outsidePx, EMPTY, FABRIC);
        }
        svg.circle(xPx, yPx, cablePx, fill(circle.kind()), circle.kind() == Kind.DEAD_CABLE ? DEAD : OUTLINE);
        if (circle.kind() == Kind.NEW_CABLE && cablePx > 8) {
            svg.label(xPx, yPx + 4, "middle", 12, Integer.toString(circle.sleeve()));
        } else if (circle.kind() == Kind.RESERVED && cablePx > 8) {
            svg.label(xPx, yPx + 4, "middle", 12, "R");
        } else if (circle.kind() == Kind.DEAD_CABLE) {
            double armPx = cablePx * 0.5;
            svg.stroke(xPx - armPx, yPx - armPx, xPx + armPx, yPx + armPx, OUTLINE);
            svg.stroke(xPx - armPx, yPx + armPx, xPx + armPx, yPx - armPx, OUTLINE);
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

    private void scaleBar(double xPx, double pxPerMm) {
        double pxPerUnit = pxPerMm / units.value(1, "mm");
        double bar = Chart.roundBelow(0.3 * BORE_PX / pxPerUnit);
        double yPx = 92;
        double leftPx = xPx + BORE_PX / 2 - bar * pxPerUnit;
        svg.stroke(leftPx, yPx, leftPx + bar * pxPerUnit, yPx, new Svg.Pen("#404040", 3, ""));
        svg.label(leftPx - 6, yPx + 4, "end", 11, Chart.plain(bar) + " " + units.unit("mm"));
    }

    private void caption(double xPx, String words, String verdict) {
        svg.label(xPx, 480, "middle", 12, words);
        svg.label(xPx, 497, "middle", 12, verdict);
    }

    private String beforeWords() {
        return String.format(
                Locale.ROOT,
                "%.1f %% of the bore filled; positions today: %d, %d of them beside the contents",
                100 * section.now().fillRatio(),
                section.now().positionsAfter(),
                Math.min(
                        section.now().positionsAfter(),
                        section.now().positions().beside()));
    }

    private static String afterWords(PullChoice choice) {
        return String.format(
                Locale.ROOT,
                "%s; %s, %s, positions gained: %d; limited by %s",
                choice.words(),
                Counted.of(choice.sleeves(), "sleeve"),
                Counted.of(choice.newCables(), "new cable"),
                choice.positionsGained(),
                choice.bindingRule().replace('_', ' '));
    }

    private String verdict(Packing packing) {
        if (packing.outcome() == PackingOutcome.FITS) {
            return "fits, with " + units.words(packing.marginMm(), 1, "mm") + " of inside diameter to spare";
        }
        if (packing.outcome() == PackingOutcome.DOES_NOT_FIT) {
            return "proven not to fit: bore " + units.words(-packing.marginMm(), 2, "mm") + " too small";
        }
        return "undecided: the best known needs " + units.words(-packing.marginMm(), 2, "mm")
                + " more diameter; the proven minimum is within " + units.words(packing.gapMm(), 2, "mm") + " of it";
    }

    private void legend() {
        double yPx = 540;
        svg.circle(40, yPx, 8, INNERDUCT_WALL, OUTLINE);
        svg.circle(40, yPx, 5.5, EMPTY, OUTLINE);
        svg.label(54, yPx + 4, "start", 11, "rigid innerduct");
        svg.circle(180, yPx, 8, CABLE, OUTLINE);
        svg.label(194, yPx + 4, "start", 11, "cable in place");
        svg.circle(320, yPx, 8, DEAD_CABLE, DEAD);
        svg.label(334, yPx + 4, "start", 11, "dead cable");
        svg.circle(440, yPx, 9.5, EMPTY, FABRIC);
        svg.circle(440, yPx, 8, NEW_CABLE, OUTLINE);
        svg.label(454, yPx + 4, "start", 11, "position for a new cable, number of its sleeve; band: fabric");
        svg.label(800, yPx + 4, "start", 11, "R: reserved cell");
    }
}

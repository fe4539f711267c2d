package org.spanroom.output.explain;

import java.util.Locale;
import java.util.Optional;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;

/**
 * A duct's cross-section before and after, side by side and to scale: the very arrangement that the count of new cables
 * rests on. Kinds differ in brightness, outline and letter as well as in color, so that a print in gray reads too.
 */
public final class CrossSectionSvg {
    private static final double WIDTH_PX = 940;
    static final double HEIGHT_PX = 560;
    private static final double MIDDLE_Y_PX = 275;
    private static final double BEFORE_X_PX = 240;
    private static final double AFTER_X_PX = 700;

    private static final int LABEL_PX = 12;

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
        var panel = new CrossSectionPanel(svg, xPx, MIDDLE_Y_PX, LABEL_PX);
        panel.draw(packing).ifPresent(drawn -> scaleBar(xPx, CrossSectionPanel.BORE_PX / drawn.boreMm()));
    }

    private void scaleBar(double xPx, double pxPerMm) {
        double pxPerUnit = pxPerMm / units.value(1, "mm");
        double bar = RoundNumbers.below(0.3 * CrossSectionPanel.BORE_PX / pxPerUnit);
        double yPx = 92;
        double leftPx = xPx + CrossSectionPanel.BORE_PX / 2 - bar * pxPerUnit;
        svg.stroke(leftPx, yPx, leftPx + bar * pxPerUnit, yPx, new Svg.Pen("#404040", 3, ""));
        svg.label(leftPx - 6, yPx + 4, "end", 11, RoundNumbers.plain(bar) + " " + units.unit("mm"));
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
        svg.circle(40, yPx, 8, CrossSectionPanel.INNERDUCT_WALL, CrossSectionPanel.OUTLINE);
        svg.circle(40, yPx, 5.5, CrossSectionPanel.EMPTY, CrossSectionPanel.OUTLINE);
        svg.label(54, yPx + 4, "start", 11, "rigid innerduct");
        svg.circle(180, yPx, 8, CrossSectionPanel.CABLE, CrossSectionPanel.OUTLINE);
        svg.label(194, yPx + 4, "start", 11, "cable in place");
        svg.circle(320, yPx, 8, CrossSectionPanel.DEAD_CABLE, CrossSectionPanel.DEAD);
        svg.label(334, yPx + 4, "start", 11, "dead cable");
        svg.circle(440, yPx, 9.5, CrossSectionPanel.EMPTY, CrossSectionPanel.FABRIC);
        svg.circle(440, yPx, 8, CrossSectionPanel.NEW_CABLE, CrossSectionPanel.OUTLINE);
        svg.label(454, yPx + 4, "start", 11, "position for a new cable, number of its sleeve; band: fabric");
        svg.label(800, yPx + 4, "start", 11, "R: reserved cell");
    }
}

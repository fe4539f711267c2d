package org.spanroom.output.explain;

import org.spanroom.model.bore.Packing;

/** One cross-section as a small drawing of its own, on a light ground, drawn as in the sheet of a span. */
public final class CrossSectionPicture {
    /** Large enough to be read where the drawing is shown at half its size. */
    private static final int LABEL_PX = 18;

    private static final int MARGIN_PX = 3;

    private CrossSectionPicture() {}

    /** Returns the drawing as SVG text, a hundred bytes for each circle or two, without a size of its own. */
    public static String draw(String title, Packing packing) {
        double halfPx = CrossSectionPanel.halfPx() + MARGIN_PX;
        var svg = new Svg(2 * halfPx, title, new Svg.Shared(CrossSectionPanel.OUTLINE, LABEL_PX, 0));
        new CrossSectionPanel(svg, halfPx, halfPx, LABEL_PX).draw(packing);
        return svg.finish();
    }
}

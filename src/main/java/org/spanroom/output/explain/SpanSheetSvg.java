package org.spanroom.output.explain;

import java.util.List;
import java.util.Optional;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.LimitUse;
import org.spanroom.model.pull.PullTrace;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.SpanExplanation;

/**
 * One sheet of one span: the plan with its bends, and below it the pull on the hardest innerduct and the tension of its cable
 * along the span, pulled from either end; at the foot the duct's cross-section before and after, where its contents are known. Figures
 * in its words come from the same tree as those of the text.
 */
public final class SpanSheetSvg {
    private static final double WIDTH_PX = 1000;
    private static final double HEIGHT_PX = 808;
    private static final double TITLE_PX = 34;
    private static final double ASSUMPTION_PX = 18;
    private static final double LEFT_PX = 40;
    private static final double RIGHT_PX = 960;
    private static final Box PLAN = new Box(LEFT_PX, 90, 650, 312);
    private static final Box PULL = new Box(90, 448, RIGHT_PX, 568);
    private static final Box HOLD = new Box(90, 644, RIGHT_PX, 744);
    private static final int MOST_BENDS_LISTED = 13;
    private static final Svg.Pen OUT_AT_A = new Svg.Pen("#8c2d04", 2.4, "");
    private static final Svg.Pen OUT_AT_B = new Svg.Pen("#08519c", 2.4, "9 4");

    private final SpanExplanation explained;
    private final UnitSystem units;
    private final ExplanationSection tree;
    private final Optional<String> crossSection;
    private final double heightPx;
    private final Svg svg;

    private SpanSheetSvg(SpanExplanation explained, UnitSystem units) {
        this.units = units;
        this.explained = explained;
        this.tree = Explanation.of(explained, units);
        this.crossSection = CrossSectionSvg.draw(
                "Cross-section of duct " + words("duct/duct"),
                explained.assessment().room(),
                explained
                        .ranked()
                        .verdict()
                        .findBasic()
                        .map(Exclusion::explanation)
                        .orElse(""),
                units);
        this.heightPx = HEIGHT_PX
                + (crossSection.isPresent() ? CrossSectionSvg.HEIGHT_PX : 0)
                + (words("contents_assumption").isEmpty() ? 0 : ASSUMPTION_PX);
        this.svg = new Svg(WIDTH_PX, heightPx, tree.title());
    }

    /** Returns the sheet as SVG text. */
    public static String draw(SpanExplanation explained, UnitSystem units) {
        return new SpanSheetSvg(explained, units).sheet();
    }

    private String sheet() {
        heading();
        new PlanView(svg, PLAN, explained, units).draw();
        bendList();
        findHardest().ifPresentOrElse(this::forces, () -> text(400, 13, words("pull/summary")));
        crossSection.ifPresent(drawing -> svg.inset(LEFT_PX - 10, HEIGHT_PX - 30, drawing));
        svg.label(LEFT_PX, heightPx - 12, "start", 11, words("caution"));
        return svg.finish();
    }

    private void heading() {
        text(TITLE_PX, 20, tree.title());
        text(
                56,
                13,
                words("length_m") + "; bends: " + words("bend_count") + ", " + words("bend_total_deg") + " in total; "
                        + words("standing"));
        if (!explained.traces().isEmpty()) {
            text(76, 12, "Pulling: " + words("pull/summary"));
        }
        String assumption = words("contents_assumption");
        if (!assumption.isEmpty()) {
            svg.label(RIGHT_PX, TITLE_PX, "end", 14, "Contents assumed: not a result");
            svg.label(LEFT_PX, heightPx - 28, "start", 10, "Contents: " + assumption);
        }
    }

    private void bendList() {
        double xPx = PLAN.rightPx() + 24;
        double yPx = PLAN.topPx() + 12;
        List<List<ExplanationPart>> bends = ((ExplanationTable) tree.part("bends")).rows();
        svg.label(xPx, yPx, "start", 12, bends.isEmpty() ? "No bends" : "Bends, " + lengths() + " from A");
        for (int i = 0; i < bends.size(); i++) {
            yPx += 16;
            if (i + 1 == MOST_BENDS_LISTED && bends.size() > MOST_BENDS_LISTED) {
                svg.label(xPx, yPx, "start", 12, "and " + (bends.size() - i) + " more; the text lists them");
                return;
            }
            bend(new ExplanationSection("", "", bends.get(i)), xPx, yPx);
        }
    }

    private void bend(ExplanationSection bend, double xPx, double yPx) {
        svg.label(xPx + 16, yPx, "end", 12, bend.words("number"));
        svg.label(xPx + 74, yPx, "end", 12, ExplanationWords.fixed(bend.number("middle_m"), 1));
        svg.label(
                xPx + 84,
                yPx,
                "start",
                12,
                ExplanationWords.fixed(bend.number("deflection_deg"), 0) + "\u00B0 " + bend.words("turn") + ", radius "
                        + bend.words("radius_m") + (bend.words("radius_assumed").equals("yes") ? " assumed" : ""));
    }

    private void forces(PullTrace trace) {
        int pulls = explained.traces().size();
        String count = trace.pull().turn() + " of " + pulls + " in the order of pulling";
        text(
                364,
                13,
                "Innerduct " + Svg.fitted(trace.pull().innerduct().id(), 13, 300) + ", " + count
                        + (pulls > 1 ? ", the most demanding" : ""));
        text(
                383,
                12,
                "Steady forces as the pull begins, friction " + trace.friction().key() + ". Vertical dotted "
                        + "lines: bends.");
        legend(560, OUT_AT_A, "out at A, cable held at B");
        legend(770, OUT_AT_B, "out at B, cable held at A");
        diagram(PULL, trace, "Tension of the innerduct, " + units.unit("N"), PullProfile.INNERDUCT);
        if (trace.pull().innerduct().isEmpty()) {
            svg.label(HOLD.leftPx(), HOLD.topPx(), "start", 12, "This innerduct has no cable.");
        } else {
            diagram(HOLD, trace, "Tension of its cable, " + units.unit("N"), PullProfile.CABLE);
        }
        svg.label((PULL.leftPx() + RIGHT_PX) / 2, HOLD.bottomPx() + 32, "middle", 12, lengths() + " from A");
    }

    private void legend(double xPx, Svg.Pen pen, String words) {
        svg.stroke(xPx, 379, xPx + 34, 379, pen);
        svg.label(xPx + 40, 383, "start", 12, words);
    }

    private void diagram(Box frame, PullTrace trace, String name, PullProfile profile) {
        Optional<LimitUse> use = profile.findLimit(trace.fromA());
        var profiles = List.of(shown(profile.points(trace.fromA())), shown(profile.points(trace.fromB())));
        double steady = use.map(limit -> profile.steadyN(
                        limit, trace.fromA(), explained.pulling().breakawayRatio()))
                .orElse(Double.POSITIVE_INFINITY);
        var content = new Chart.Content(
                name, profiles, List.of(OUT_AT_A, OUT_AT_B), bendPlaces(trace), units.value(steady, "N"));
        var chart = new Chart(svg, frame, units.value(explained.span().lengthM(), "m"));
        chart.draw(content);
        use.ifPresentOrElse(
                limit -> chart.limitNote(note(limit, steady, content.showsLimit())),
                () -> chart.limitNote(profile == PullProfile.CABLE ? "no live cable, so no limit applies" : ""));
    }

    private String note(LimitUse limit, double steadyN, boolean isShown) {
        String words = "limit " + units.words(limit.allowedSi(), 0, "N") + " for the "
                + limit.kind().meaning();
        if (Math.abs(steadyN / limit.allowedSi() - 1) > 1e-9) {
            words += " at breakaway, which is " + units.words(steadyN, 0, "N") + " steady";
        }
        return isShown ? "dotted line: " + words : words + " (above the chart)";
    }

    /** Returns points of distance and force in the units that are shown. */
    private List<double[]> shown(List<PullProfile.Point> profile) {
        return profile.stream()
                .map(point -> new double[] {units.value(point.atM(), "m"), units.value(point.forceN(), "N")})
                .toList();
    }

    private String lengths() {
        return units.isUs() ? "feet" : "meters";
    }

    private List<Double> bendPlaces(PullTrace trace) {
        return trace.fromB().sections().stream()
                .filter(section -> section.kind() == PullTrace.SectionKind.BEND)
                .map(section ->
                        units.value((section.near().atM() + section.far().atM()) / 2, "m"))
                .toList();
    }

    /** Finds the innerduct that asks most of itself, of the machine and of its cable at the better end. */
    private Optional<PullTrace> findHardest() {
        SpanEnd end = explained.assessment().pull().outcome().findBetterEnd().orElse(SpanEnd.A);
        PullTrace hardest = null;
        for (PullTrace trace : explained.traces()) {
            if (hardest == null
                    || trace.pull().from(end).forceRatio()
                            > hardest.pull().from(end).forceRatio()) {
                hardest = trace;
            }
        }
        return Optional.ofNullable(hardest);
    }

    private void text(double yPx, int sizePx, String words) {
        svg.label(LEFT_PX, yPx, "start", sizePx, Svg.fitted(words, sizePx, RIGHT_PX - LEFT_PX));
    }

    private String words(String path) {
        return tree.words(path);
    }
}

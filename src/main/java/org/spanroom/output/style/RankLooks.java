package org.spanroom.output.style;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.spanroom.output.style.Symbol.Form;
import org.spanroom.output.style.Symbol.Marker;
import org.spanroom.output.style.Symbol.MiddleMark;
import org.spanroom.output.style.Symbol.Side;
import org.spanroom.output.style.Symbol.Stroke;
import org.spanroom.output.table.GeometryKind;

/** How spans and sections look: by the class of their rank, the best above the others. */
final class RankLooks {
    /** From here on ducts of one bank are apart, and have labels. */
    static final int STREET = 4000;

    private static final int CLOSE = 2000;
    private static final int DISTRICT = 15_000;
    private static final int QUARTER = 8000;
    private static final double STEP_MM = 1.3;
    private static final String DARK_HEX = "#22262b";

    private RankLooks() {}

    /** Returns the look of a table of spans; of what the table has no column for, nothing is shown. */
    static MapStyle spans(GeometryKind geometry, Set<String> columns) {
        Optional<Side> side = columns.contains("bank_place")
                ? Optional.of(new Side("bank_place", STEP_MM, ScaleRange.upTo(STREET)))
                : Optional.empty();
        var rules = new ArrayList<>(classes("rank", side));
        int level = rules.size();
        if (columns.contains("cautions")) {
            rules.add(new StyleRule(
                    "Contents assumed",
                    new Condition.Mentions("cautions", "contents_assumed"),
                    level,
                    ScaleRange.upTo(DISTRICT),
                    List.of(Stroke.of(DARK_HEX, 0.3).dashed(0.3, 1.3).beside(side))));
        }
        if (columns.contains("pull_outcome")) {
            var mark = new Marker(Form.CROSS, DARK_HEX, DARK_HEX, 1.5, 0.25);
            rules.add(new StyleRule(
                    "Pull fails from both ends",
                    Condition.equal("pull_outcome", "neither"),
                    level + 1,
                    ScaleRange.upTo(CLOSE),
                    List.of(new MiddleMark(mark, side))));
        }
        List<LabelRule> labels = List.of(
                label("rank", 0, 1, ScaleRange.between(CLOSE, STREET), 8, 9, side),
                label("rank", 0, 1, ScaleRange.upTo(CLOSE), 8.5, 9, side),
                label("rank", 2, 4, ScaleRange.upTo(CLOSE), 7.5, 4, side));
        return new MapStyle("Spans by rank", geometry, rules, labels);
    }

    /** Returns the look of the sections of a run: each by its best span. */
    static MapStyle sections(GeometryKind geometry) {
        List<LabelRule> labels = List.of(
                label("best_rank", 0, 0, ScaleRange.ALL, 9, 10, Optional.empty()),
                label("best_rank", 1, 1, ScaleRange.upTo(QUARTER), 8, 7, Optional.empty()),
                label("best_rank", 2, 2, ScaleRange.upTo(STREET), 7.5, 4, Optional.empty()));
        return new MapStyle("Sections by their best span", geometry, classes("best_rank", Optional.empty()), labels);
    }

    /** Returns the look of spans whose rank changed from one run to another. */
    static MapStyle moves(GeometryKind geometry) {
        List<PaletteClass> moves = Palette.moves();
        Condition before = Condition.above("rank_before", 0);
        Condition after = Condition.above("rank_after", 0);
        return new MapStyle(
                "Spans by how their rank changed",
                geometry,
                List.of(
                        move(moves.get(0), 3, Condition.both(new Condition.Empty("rank_before"), after)),
                        move(moves.get(1), 1, Condition.above("rank_gain", 0)),
                        move(moves.get(2), 0, Condition.atMost("rank_gain", 0)),
                        move(moves.get(3), 2, Condition.both(before, new Condition.Empty("rank_after")))),
                List.of(new LabelRule("rank_after", after, ScaleRange.upTo(CLOSE), 8, false, 5, Optional.empty())));
    }

    private static StyleRule move(PaletteClass move, int level, Condition condition) {
        return StyleRule.of(move.label(), condition, level, Stroke.of(move.lightHex(), move.widthMm()));
    }

    private static List<StyleRule> classes(String column, Optional<Side> side) {
        List<PaletteClass> ranks = Palette.rankClasses();
        var rules = new ArrayList<StyleRule>();
        for (int place = 0; place < ranks.size(); place++) {
            PaletteClass rank = ranks.get(place);
            boolean excluded = place == ranks.size() - 1;
            Stroke line = Stroke.of(rank.lightHex(), rank.widthMm()).beside(side);
            rules.add(StyleRule.of(
                    rank.label(),
                    excluded ? new Condition.Empty(column) : within(column, place, place),
                    ranks.size() - 1 - place,
                    excluded ? line.dashed(1.2, 0.8) : line));
        }
        return rules;
    }

    private static LabelRule label(
            String column, int from, int to, ScaleRange scales, double sizePt, int priority, Optional<Side> side) {
        return new LabelRule(column, within(column, from, to), scales, sizePt, from == 0, priority, side);
    }

    /** Returns rows of some classes of ranked spans, both ends included. */
    private static Condition within(String column, int from, int to) {
        List<Integer> limits = Palette.rankLimits();
        if (to >= limits.size()) {
            return Condition.above(column, limits.get(from - 1));
        }
        Condition last = Condition.atMost(column, limits.get(to));
        return from == 0 ? last : Condition.both(Condition.above(column, limits.get(from - 1)), last);
    }
}

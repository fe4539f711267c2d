package org.spanroom.output.style;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.output.style.Symbol.Form;
import org.spanroom.output.style.Symbol.Marker;
import org.spanroom.output.style.Symbol.Stroke;
import org.spanroom.output.table.GeometryKind;

/** How the layers look that commands make of a run: ways, corridors, connections and the annual program. */
final class ProgramLooks {
    private static final int CITY = 40_000;
    private static final int DISTRICT = 15_000;
    private static final int STREET = 4000;
    private static final String OUTLINE_HEX = "#ffffff";

    private ProgramLooks() {}

    /** Returns the look of spans of the program, by year. */
    static MapStyle program(GeometryKind geometry) {
        return new MapStyle(
                "Program by year", geometry, years(false), List.of(label("week", ScaleRange.upTo(STREET), 8, 5)));
    }

    /** Returns the look of sections in which the program builds, by year. */
    static MapStyle newDucts(GeometryKind geometry) {
        return new MapStyle(
                "New ducts by year", geometry, years(true), List.of(label("ducts", ScaleRange.upTo(STREET), 8, 5)));
    }

    private static List<StyleRule> years(boolean dashed) {
        List<PaletteClass> years = Palette.years();
        var rules = new ArrayList<StyleRule>();
        for (PaletteClass year : years) {
            int number = rules.size() + 1;
            Stroke line = Stroke.of(year.lightHex(), year.widthMm());
            rules.add(StyleRule.of(
                    year.label(),
                    number == years.size() ? Condition.above("year", number - 1) : Condition.equal("year", number),
                    years.size() - number,
                    dashed ? line.dashed(2.4, 1.2) : line));
        }
        return rules;
    }

    static MapStyle programVaults() {
        PaletteClass vault = Palette.vaults().get(0);
        return new MapStyle(
                "Vaults of the program",
                GeometryKind.POINT,
                List.of(StyleRule.of(
                                "Vault with work",
                                new Condition.Always(),
                                0,
                                new Marker(Form.CIRCLE, OUTLINE_HEX, vault.lightHex(), 2, 0.45))
                        .at(ScaleRange.upTo(DISTRICT))),
                List.of(label("vault", ScaleRange.upTo(STREET), 7, 2)));
    }

    /** Returns the look of spans in reserve. */
    static MapStyle reserve(GeometryKind geometry) {
        PaletteClass next = Palette.years().get(3);
        return new MapStyle(
                "Reserve",
                geometry,
                List.of(StyleRule.of(
                        "In reserve",
                        new Condition.Always(),
                        0,
                        Stroke.of(next.lightHex(), 0.7).dashed(0.8, 0.8))),
                List.of(label("place", ScaleRange.upTo(DISTRICT), 8, 5)));
    }

    static MapStyle corridors(GeometryKind geometry) {
        PaletteClass corridor = Palette.corridors().get(0);
        PaletteClass island = Palette.corridors().get(1);
        return new MapStyle(
                "Corridors",
                geometry,
                List.of(
                        StyleRule.of(
                                corridor.label(),
                                Condition.equal("island", false),
                                1,
                                Stroke.of(corridor.lightHex(), corridor.widthMm())),
                        StyleRule.of(
                                island.label(),
                                Condition.equal("island", true),
                                0,
                                Stroke.of(island.lightHex(), island.widthMm()))),
                List.of(label("corridor", ScaleRange.upTo(CITY), 9, 8)));
    }

    /** Returns the look of sections by what is done there. */
    static MapStyle actions(String title, GeometryKind geometry) {
        var rules = new ArrayList<StyleRule>();
        List<PaletteClass> actions = Palette.actions();
        for (PaletteClass action : actions) {
            Stroke line = Stroke.of(action.lightHex(), action.widthMm());
            rules.add(StyleRule.of(
                    action.label(),
                    Condition.equal("action", action.key()),
                    actions.size() - rules.size(),
                    "build".equals(action.key()) ? line.dashed(2.4, 1.2) : line));
        }
        PaletteClass excluded = Palette.rankClasses().get(Palette.rankClasses().size() - 1);
        rules.add(StyleRule.of(
                "No way through",
                new Condition.Empty("action"),
                0,
                Stroke.of(excluded.lightHex(), excluded.widthMm()).dashed(1.2, 0.8)));
        return new MapStyle(title, geometry, rules, List.of());
    }

    static MapStyle connections(GeometryKind geometry) {
        List<StyleRule> rules = List.of(
                served(Palette.connections().get(1), true),
                served(Palette.connections().get(0), false));
        return new MapStyle("Connections", geometry, rules, List.of(label("name", ScaleRange.upTo(CITY), 8, 7)));
    }

    private static StyleRule served(PaletteClass look, boolean served) {
        Stroke line = Stroke.of(look.lightHex(), look.widthMm());
        return StyleRule.of(
                look.label(), Condition.equal("served", served), served ? 0 : 1, served ? line : line.dashed(1.6, 1));
    }

    private static LabelRule label(String column, ScaleRange scales, double sizePt, int priority) {
        return new LabelRule(column, new Condition.Always(), scales, sizePt, true, priority, Optional.empty());
    }
}

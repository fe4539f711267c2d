package org.spanroom.output.style;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.output.style.Symbol.Form;
import org.spanroom.output.style.Symbol.Hatch;
import org.spanroom.output.style.Symbol.Marker;
import org.spanroom.output.style.Symbol.Stroke;
import org.spanroom.output.table.GeometryKind;

/** How the layers look that go with the spans of a run: vaults, bends, zones, findings and what to look at first. */
final class PlaceLooks {
    private static final int CITY = 40_000;
    private static final int DISTRICT = 15_000;
    private static final int QUARTER = 8000;
    private static final int STREET = 4000;
    private static final int CLOSE = 1500;
    private static final String OUTLINE_HEX = "#ffffff";
    private static final String DARK_HEX = "#22262b";
    private static final int FULL_TURN_DEG = 180;

    private PlaceLooks() {}

    static MapStyle vaults() {
        PaletteClass vault = Palette.vaults().get(1);
        return new MapStyle(
                "Vaults",
                GeometryKind.POINT,
                List.of(StyleRule.of(
                                "Vault",
                                new Condition.Always(),
                                0,
                                new Marker(Form.SQUARE, OUTLINE_HEX, vault.lightHex(), 1.5, 0.3))
                        .at(ScaleRange.upTo(QUARTER))),
                List.of(label("vault_id", ScaleRange.upTo(CLOSE), 7, 2)));
    }

    static MapStyle vaultSurvey() {
        PaletteClass first = Palette.vaults().get(0);
        return new MapStyle(
                "Vaults to open first",
                GeometryKind.POINT,
                List.of(StyleRule.of(
                        first.label(),
                        new Condition.Always(),
                        0,
                        new Marker(Form.STAR, first.lightHex(), OUTLINE_HEX, 4, 0.3))),
                List.of(label("visit", ScaleRange.upTo(CITY), 8.5, 8)));
    }

    static MapStyle bends() {
        var drawn = new Marker(Form.CIRCLE, OUTLINE_HEX, DARK_HEX, 1.5, 0.3);
        var assumed = new Marker(Form.TRIANGLE, OUTLINE_HEX, DARK_HEX, 1.7, 0.3);
        return new MapStyle(
                "Bends",
                GeometryKind.POINT,
                List.of(
                        StyleRule.of("Bend, radius as drawn", Condition.equal("radius_assumed", false), 1, drawn)
                                .at(ScaleRange.upTo(STREET)),
                        StyleRule.of("Bend, radius assumed", Condition.equal("radius_assumed", true), 0, assumed)
                                .at(ScaleRange.upTo(STREET))),
                List.of());
    }

    static MapStyle permits(GeometryKind geometry) {
        var rules = new ArrayList<StyleRule>();
        List<PaletteClass> zones = Palette.zones();
        for (PaletteClass zone : zones) {
            rules.add(StyleRule.of(
                            zone.label(),
                            kind(zone),
                            rules.size(),
                            Stroke.of(zone.lightHex(), 2.2 - 0.25 * rules.size()))
                    .at(ScaleRange.upTo(DISTRICT)));
        }
        return new MapStyle("Stretches in permit zones", geometry, rules, List.of());
    }

    static MapStyle zones() {
        var rules = new ArrayList<StyleRule>();
        List<PaletteClass> zones = Palette.zones();
        for (PaletteClass zone : zones) {
            int angleDeg = rules.size() * FULL_TURN_DEG / zones.size();
            rules.add(StyleRule.of(
                    zone.label(),
                    kind(zone),
                    zones.size() - 1 - rules.size(),
                    new Hatch(zone.lightHex(), zone.widthMm(), 2.2, angleDeg)));
        }
        return new MapStyle(
                "Permit zones", GeometryKind.POLYGON, rules, List.of(label("name", ScaleRange.upTo(STREET), 7, 1)));
    }

    private static Condition kind(PaletteClass zone) {
        if (!zone.equals(Palette.zones().get(Palette.zones().size() - 1))) {
            return Condition.among("kind", Palette.zoneKinds(zone));
        }
        return Condition.notAmong(
                "kind",
                Palette.zones().stream()
                        .filter(other -> !other.equals(zone))
                        .flatMap(other -> Palette.zoneKinds(other).stream())
                        .toList());
    }

    static MapStyle findings() {
        var rules = new ArrayList<StyleRule>();
        List<PaletteClass> severities = Palette.severities();
        for (PaletteClass severity : severities) {
            boolean note = rules.size() == severities.size() - 1;
            var mark = new Marker(
                    note ? Form.CIRCLE : Form.TRIANGLE, severity.lightHex(), OUTLINE_HEX, 3 - 0.7 * rules.size(), 0.25);
            rules.add(StyleRule.of(
                            severity.label(),
                            Condition.equal("severity", severity.key()),
                            severities.size() - 1 - rules.size(),
                            mark)
                    .at(note ? ScaleRange.upTo(DISTRICT) : ScaleRange.ALL));
        }
        return new MapStyle("Findings", GeometryKind.POINT, rules, List.of());
    }

    static MapStyle fieldChecks() {
        List<PaletteClass> checks = Palette.fieldChecks();
        List<StyleRule> rules = checks.stream()
                .map(check -> StyleRule.of(
                        check.label(),
                        Condition.equal("unknown", check.key()),
                        0,
                        new Marker(Form.SQUARE, check.lightHex(), OUTLINE_HEX, 3, 0.35)))
                .toList();
        return new MapStyle(
                "What to measure first",
                GeometryKind.POINT,
                rules,
                List.of(label("rank", ScaleRange.upTo(DISTRICT), 8, 8)));
    }

    private static LabelRule label(String column, ScaleRange scales, double sizePt, int priority) {
        return new LabelRule(column, new Condition.Always(), scales, sizePt, false, priority, Optional.empty());
    }
}

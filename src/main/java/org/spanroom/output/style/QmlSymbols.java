package org.spanroom.output.style;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.spanroom.output.table.GeometryKind;

/** Writes the symbols of rules as QGIS has them. */
final class QmlSymbols {
    private static final String CLEAR = "0,0,0,0";

    private final Xml xml;
    private final QmlOptions options;
    private final UnaryOperator<String> names;

    QmlSymbols(Xml xml, UnaryOperator<String> names) {
        this.xml = xml;
        this.options = new QmlOptions(xml);
        this.names = names;
    }

    /**
     * Writes what a rule draws.
     *
     * @param number by which the rule knows it
     */
    void symbol(int number, StyleRule rule, GeometryKind geometry) {
        String type = switch (geometry) {
            case POINT -> "marker";
            case LINE, MULTILINE -> "line";
            default -> "fill";
        };
        open(Integer.toString(number), type);
        for (int place = 0; place < rule.symbols().size(); place++) {
            layer(rule.symbols().get(place), rule.level(), "@" + number + "@" + place);
        }
        xml.close();
    }

    private void open(String name, String type) {
        xml.open("symbol", "name", name, "type", type, "alpha", "1", "clip_to_extent", "1", "force_rhr", "0");
    }

    private void layer(Symbol symbol, int level, String inner) {
        if (symbol instanceof Symbol.Stroke stroke) {
            layer("SimpleLine", level, line(stroke), offset(stroke.side()), Optional.empty());
        } else if (symbol instanceof Symbol.Marker marker) {
            layer("SimpleMarker", level, marker(marker), Map.of(), Optional.empty());
        } else if (symbol instanceof Symbol.MiddleMark mark) {
            layer(
                    "MarkerLine",
                    level,
                    middle(),
                    offset(mark.side()),
                    Optional.of(new Inner(inner, "marker", mark.marker())));
        } else if (symbol instanceof Symbol.Hatch hatch) {
            var lines = Symbol.Stroke.of(hatch.hex(), hatch.widthMm() / 2);
            layer("LinePatternFill", level, pattern(hatch), Map.of(), Optional.of(new Inner(inner, "line", lines)));
            layer("SimpleFill", level, outline(hatch), Map.of(), Optional.empty());
        }
    }

    /** A symbol that the layer of another symbol repeats. */
    private record Inner(String name, String type, Symbol symbol) {}

    private void layer(
            String kind, int level, Map<String, String> settings, Map<String, String> found, Optional<Inner> inner) {
        xml.open("layer", "class", kind, "pass", Integer.toString(level), "locked", "0", "enabled", "1");
        options.settings(settings);
        options.expressions("data_defined_properties", found);
        inner.ifPresent(repeated -> {
            open(repeated.name(), repeated.type());
            layer(repeated.symbol(), 0, repeated.name() + "@0");
            xml.close();
        });
        xml.close();
    }

    private Map<String, String> offset(Optional<Symbol.Side> side) {
        return side.map(column -> Map.of("offset", QgisWords.offset(column, names)))
                .orElse(Map.of());
    }

    private static Map<String, String> line(Symbol.Stroke stroke) {
        return settings(
                List.of("line_color", QgisWords.color(stroke.hex())),
                List.of("line_style", "solid"),
                List.of("line_width", QgisWords.number(stroke.widthMm())),
                List.of("line_width_unit", "MM"),
                List.of("joinstyle", "round"),
                List.of("capstyle", stroke.dash().isPresent() ? "flat" : "round"),
                List.of("offset", "0"),
                List.of("offset_unit", "MM"),
                List.of("use_custom_dash", stroke.dash().isPresent() ? "1" : "0"),
                List.of(
                        "customdash",
                        stroke.dash()
                                .map(dash -> QgisWords.number(dash.dashMm()) + ";" + QgisWords.number(dash.gapMm()))
                                .orElse("5;2")),
                List.of("customdash_unit", "MM"));
    }

    private static Map<String, String> marker(Symbol.Marker marker) {
        return settings(
                List.of("name", marker.form().qgisName()),
                List.of("color", QgisWords.color(marker.hex())),
                List.of("outline_color", QgisWords.color(marker.outlineHex())),
                List.of("outline_style", "solid"),
                List.of("outline_width", QgisWords.number(marker.outlineMm())),
                List.of("outline_width_unit", "MM"),
                List.of("size", QgisWords.number(marker.sizeMm())),
                List.of("size_unit", "MM"));
    }

    private static Map<String, String> middle() {
        return settings(
                List.of("placement", "centralpoint"),
                List.of("rotate", "1"),
                List.of("offset", "0"),
                List.of("offset_unit", "MM"));
    }

    private static Map<String, String> pattern(Symbol.Hatch hatch) {
        return settings(
                List.of("angle", Integer.toString(hatch.angleDeg())),
                List.of("distance", QgisWords.number(hatch.spacingMm())),
                List.of("distance_unit", "MM"));
    }

    private static Map<String, String> outline(Symbol.Hatch hatch) {
        return settings(
                List.of("color", CLEAR),
                List.of("style", "no"),
                List.of("outline_color", QgisWords.color(hatch.hex())),
                List.of("outline_style", "solid"),
                List.of("outline_width", QgisWords.number(hatch.widthMm())),
                List.of("outline_width_unit", "MM"));
    }

    /** In the order in which they are given, so that the same style is the same text. */
    @SafeVarargs
    private static Map<String, String> settings(List<String>... pairs) {
        var settings = new LinkedHashMap<String, String>();
        for (List<String> pair : pairs) {
            settings.put(pair.get(0), pair.get(1));
        }
        return settings;
    }
}

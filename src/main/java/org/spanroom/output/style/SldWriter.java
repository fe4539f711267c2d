package org.spanroom.output.style;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.function.UnaryOperator;

/**
 * Writes a style as OGC Styled Layer Descriptor 1.0.0 (OGC 02-070; the order of elements from memory).
 *
 * <p>Version 1.0 knows no lines moved aside and no hatches: ducts of one bank lie on one another, the best on top, and areas are filled
 * with a color that shows what is below.
 */
final class SldWriter {
    /** The standard's pixel is 0.28 mm. */
    private static final double PIXEL_MM = 0.28;

    private static final double POINT_MM = 25.4 / 72;
    private static final String FILL_OPACITY_RATIO = "0.15";
    private static final String HALO_HEX = "#ffffff";

    private final UnaryOperator<String> names;
    private final Xml xml;

    private SldWriter(Xml xml, UnaryOperator<String> names) {
        this.xml = xml;
        this.names = names;
    }

    /**
     * Returns a document.
     *
     * @param layer name of the layer
     * @param names finds what a column is called in the file that the style is for
     */
    static String document(String layer, MapStyle style, UnaryOperator<String> names) {
        return Xml.document(xml -> new SldWriter(xml, names).descriptor(layer, style));
    }

    private void descriptor(String layer, MapStyle style) {
        xml.open(
                "StyledLayerDescriptor",
                "version",
                "1.0.0",
                "xmlns",
                "http://www.opengis.net/sld",
                "xmlns:ogc",
                "http://www.opengis.net/ogc");
        xml.open("NamedLayer");
        xml.text("Name", layer);
        xml.open("UserStyle");
        xml.text("Name", layer);
        xml.text("Title", style.title());
        xml.text("IsDefault", "1");
        var levels = new TreeMap<Integer, List<StyleRule>>();
        style.rules()
                .forEach(rule -> levels.computeIfAbsent(rule.level(), level -> new ArrayList<>())
                        .add(rule));
        levels.values().forEach(rules -> xml.element("FeatureTypeStyle", () -> rules.forEach(this::rule)));
        if (!style.labels().isEmpty()) {
            xml.element("FeatureTypeStyle", () -> style.labels().forEach(label -> label(label, style)));
        }
        xml.close();
        xml.close();
        xml.close();
    }

    private void rule(StyleRule rule) {
        xml.open("Rule");
        xml.text("Title", rule.label());
        head(rule.condition(), rule.scales());
        rule.symbols().forEach(this::symbol);
        xml.close();
    }

    private void head(Condition condition, ScaleRange scales) {
        if (!(condition instanceof Condition.Always)) {
            xml.element("ogc:Filter", () -> condition(condition));
        }
        if (scales.nearest() > 0) {
            xml.text("MinScaleDenominator", Integer.toString(scales.nearest()));
        }
        if (scales.farthest() > 0) {
            xml.text("MaxScaleDenominator", Integer.toString(scales.farthest()));
        }
    }

    private void condition(Condition condition) {
        if (condition instanceof Condition.Compare compare) {
            xml.open("ogc:" + compare.comparison().element());
            xml.text("ogc:PropertyName", names.apply(compare.column()));
            xml.text("ogc:Literal", compare.value().toString());
            xml.close();
        } else if (condition instanceof Condition.Empty empty) {
            xml.element("ogc:PropertyIsNull", () -> xml.text("ogc:PropertyName", names.apply(empty.column())));
        } else if (condition instanceof Condition.Mentions mentions) {
            xml.open("ogc:PropertyIsLike", "wildCard", "*", "singleChar", "?", "escape", "!");
            xml.text("ogc:PropertyName", names.apply(mentions.column()));
            xml.text("ogc:Literal", "*" + mentions.word() + "*");
            xml.close();
        } else if (condition instanceof Condition.And and) {
            all("ogc:And", and.parts());
        } else if (condition instanceof Condition.Or or) {
            all("ogc:Or", or.parts());
        }
    }

    /** The standard wants two parts or more. */
    private void all(String element, List<Condition> parts) {
        if (parts.size() == 1) {
            condition(parts.get(0));
        } else {
            xml.element(element, () -> parts.forEach(this::condition));
        }
    }

    private void symbol(Symbol symbol) {
        if (symbol instanceof Symbol.Stroke stroke) {
            xml.element("LineSymbolizer", () -> xml.element("Stroke", () -> stroke(stroke)));
        } else if (symbol instanceof Symbol.MiddleMark mark) {
            xml.element("PointSymbolizer", () -> xml.element("Graphic", () -> graphic(mark.marker())));
        } else if (symbol instanceof Symbol.Marker marker) {
            xml.element("PointSymbolizer", () -> xml.element("Graphic", () -> graphic(marker)));
        } else if (symbol instanceof Symbol.Hatch hatch) {
            xml.open("PolygonSymbolizer");
            xml.element("Fill", () -> {
                parameter("fill", hatch.hex());
                parameter("fill-opacity", FILL_OPACITY_RATIO);
            });
            xml.element("Stroke", () -> stroke(Symbol.Stroke.of(hatch.hex(), hatch.widthMm())));
            xml.close();
        }
    }

    private void stroke(Symbol.Stroke stroke) {
        parameter("stroke", stroke.hex());
        parameter("stroke-width", pixels(stroke.widthMm()));
        parameter("stroke-linejoin", "round");
        stroke.dash()
                .ifPresent(dash -> parameter("stroke-dasharray", pixels(dash.dashMm()) + " " + pixels(dash.gapMm())));
    }

    private void graphic(Symbol.Marker marker) {
        xml.open("Mark");
        xml.text("WellKnownName", marker.form().wellKnownName());
        xml.element("Fill", () -> parameter("fill", marker.hex()));
        xml.element("Stroke", () -> {
            parameter("stroke", marker.outlineHex());
            parameter("stroke-width", pixels(marker.outlineMm()));
        });
        xml.close();
        xml.text("Size", pixels(marker.sizeMm()));
    }

    private void label(LabelRule label, MapStyle style) {
        xml.open("Rule");
        head(label.condition(), label.scales());
        xml.open("TextSymbolizer");
        xml.element("Label", () -> xml.text("ogc:PropertyName", names.apply(label.column())));
        xml.element("Font", () -> {
            parameter("font-family", "sans-serif");
            parameter("font-size", pixels(label.sizePt() * POINT_MM));
            parameter("font-weight", label.bold() ? "bold" : "normal");
        });
        xml.element("LabelPlacement", () -> placement(style));
        xml.element("Halo", () -> {
            xml.text("Radius", "1.5");
            xml.element("Fill", () -> parameter("fill", HALO_HEX));
        });
        xml.element("Fill", () -> parameter("fill", QmlLabels.TEXT_HEX));
        xml.close();
        xml.close();
    }

    private void placement(MapStyle style) {
        switch (style.geometry()) {
            case LINE, MULTILINE -> xml.element("LinePlacement", () -> xml.text("PerpendicularOffset", "0"));
            default ->
                xml.element("PointPlacement", () -> {
                    xml.element("AnchorPoint", () -> {
                        xml.text("AnchorPointX", "0");
                        xml.text("AnchorPointY", "0.5");
                    });
                    xml.element("Displacement", () -> {
                        xml.text("DisplacementX", "6");
                        xml.text("DisplacementY", "0");
                    });
                });
        }
    }

    private void parameter(String name, String value) {
        xml.text("CssParameter", value, "name", name);
    }

    private static String pixels(double mm) {
        return BigDecimal.valueOf(mm / PIXEL_MM)
                .setScale(2, RoundingMode.HALF_UP)
                .toPlainString();
    }
}

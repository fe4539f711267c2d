package org.spanroom.output.style;

import java.util.List;
import java.util.function.UnaryOperator;
import org.spanroom.output.table.GeometryKind;

/** Writes a style as QGIS, from 3.16 on, keeps it: colors and labels only, so that a layer's other settings stay as they are. */
final class QmlWriter {
    static final String TYPE = "<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>";
    static final String VERSION = "3.22.0-Bialowieza";

    private final Xml xml;
    private final UnaryOperator<String> names;

    QmlWriter(Xml xml, UnaryOperator<String> names) {
        this.xml = xml;
        this.names = names;
    }

    /**
     * Returns a document.
     *
     * @param names finds what a column is called in the file that the style is for
     */
    static String document(MapStyle style, UnaryOperator<String> names) {
        return Xml.document(xml -> {
            xml.type(TYPE);
            xml.open("qgis", "version", VERSION, "styleCategories", "Symbology|Labeling");
            new QmlWriter(xml, names).look(style);
            xml.text("layerGeometryType", geometryType(style.geometry()));
            xml.close();
        });
    }

    /** Writes how a layer is drawn and labeled, for a style and for a project. */
    void look(MapStyle style) {
        List<StyleRule> rules = style.rules();
        xml.open("renderer-v2", "type", "RuleRenderer", "symbollevels", "1", "forceraster", "0", "enableorderby", "0");
        xml.open("rules", "key", "rules");
        for (int place = 0; place < rules.size(); place++) {
            rule(place, rules.get(place));
        }
        xml.close();
        xml.open("symbols");
        var symbols = new QmlSymbols(xml, names);
        for (int place = 0; place < rules.size(); place++) {
            symbols.symbol(place, rules.get(place), style.geometry());
        }
        xml.close();
        xml.close();
        if (!style.labels().isEmpty()) {
            new QmlLabels(xml, names).write(style.labels(), style.geometry());
        }
    }

    private void rule(int place, StyleRule rule) {
        xml.leaf(
                "rule",
                "key",
                "rule_" + place,
                "symbol",
                Integer.toString(place),
                "label",
                rule.label(),
                "filter",
                QgisWords.expression(rule.condition(), names),
                "scalemindenom",
                Integer.toString(rule.scales().nearest()),
                "scalemaxdenom",
                Integer.toString(rule.scales().farthest()));
    }

    private static String geometryType(GeometryKind geometry) {
        return switch (geometry) {
            case POINT -> "0";
            case LINE, MULTILINE -> "1";
            default -> "2";
        };
    }
}

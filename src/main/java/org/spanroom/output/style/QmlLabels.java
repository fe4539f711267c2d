package org.spanroom.output.style;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.spanroom.output.table.GeometryKind;

/** Writes the labels of a layer as QGIS has them. The face is that of the user's screen, so that none is missing. */
final class QmlLabels {
    static final String TEXT_HEX = "#22262b";

    private static final String HALO_HEX = "#ffffff";
    /** On the line, above, below, and sides as the line runs: the numbers of QGIS. */
    private static final String ON_LINE = "1";

    private static final double HALF_TEXT_MM = 1.1;

    private final Xml xml;
    private final UnaryOperator<String> names;

    QmlLabels(Xml xml, UnaryOperator<String> names) {
        this.xml = xml;
        this.names = names;
    }

    void write(List<LabelRule> labels, GeometryKind geometry) {
        xml.open("labeling", "type", "rule-based");
        xml.open("rules", "key", "labels");
        for (int place = 0; place < labels.size(); place++) {
            LabelRule label = labels.get(place);
            xml.open(
                    "rule",
                    "key",
                    "label_" + place,
                    "filter",
                    QgisWords.expression(label.condition(), names),
                    "scalemindenom",
                    Integer.toString(label.scales().nearest()),
                    "scalemaxdenom",
                    Integer.toString(label.scales().farthest()));
            settings(label, geometry);
            xml.close();
        }
        xml.close();
        xml.close();
    }

    private void settings(LabelRule label, GeometryKind geometry) {
        xml.open("settings", "calloutType", "simple");
        text(label);
        placement(label, geometry);
        rendering();
        new QmlOptions(xml).expressions("dd_properties", sides(label));
        xml.close();
    }

    private void text(LabelRule label) {
        xml.open(
                "text-style",
                "fieldName",
                names.apply(label.column()),
                "isExpression",
                "0",
                "fontSize",
                QgisWords.number(label.sizePt()),
                "fontSizeUnit",
                "Point",
                "fontWeight",
                label.bold() ? "75" : "50",
                "textColor",
                QgisWords.color(TEXT_HEX),
                "textOpacity",
                "1");
        xml.leaf(
                "text-buffer",
                "bufferDraw",
                "1",
                "bufferSize",
                "0.7",
                "bufferSizeUnits",
                "MM",
                "bufferColor",
                QgisWords.color(HALO_HEX),
                "bufferOpacity",
                "1",
                "bufferJoinStyle",
                "128");
        xml.close();
    }

    private void rendering() {
        xml.leaf(
                "rendering",
                "drawLabels",
                "1",
                "obstacle",
                "0",
                "mergeLines",
                "0",
                "labelPerPart",
                "0",
                "displayAll",
                "0",
                "limitNumLabels",
                "0",
                "scaleVisibility",
                "0");
    }

    private void placement(LabelRule label, GeometryKind geometry) {
        boolean line = geometry == GeometryKind.LINE || geometry == GeometryKind.MULTILINE;
        xml.leaf(
                "placement",
                "placement",
                line ? label.side().isPresent() ? "2" : "4" : "0",
                "placementFlags",
                ON_LINE,
                "dist",
                line ? "0" : "1.2",
                "distUnits",
                "MM",
                "repeatDistance",
                "0",
                "overrunDistance",
                "0",
                "priority",
                Integer.toString(label.priority()));
    }

    /** A label lies on the line of its own duct, which may be drawn aside. */
    private Map<String, String> sides(LabelRule label) {
        var found = new TreeMap<String, String>();
        label.side().ifPresent(side -> {
            String place = "coalesce(" + QgisWords.column(side.column(), names) + ", 0)";
            found.put(
                    "LabelDistance",
                    "max(abs(" + place + ") * " + QgisWords.number(side.stepMm()) + " - "
                            + QgisWords.number(HALF_TEXT_MM) + ", 0)");
            found.put(
                    "LinePlacementFlags",
                    "CASE WHEN " + place + " = 0 THEN 'OL' WHEN " + place + " < 0 THEN 'AL,LO' ELSE 'BL,LO' END");
        });
        return found;
    }
}

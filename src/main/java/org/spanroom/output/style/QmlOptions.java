package org.spanroom.output.style;

import java.util.Map;

/** The two forms in which QGIS keeps settings: options, read since 3.20, and properties, read by every 3.x. */
final class QmlOptions {
    private final Xml xml;

    QmlOptions(Xml xml) {
        this.xml = xml;
    }

    /** Writes the settings of a layer of a symbol, in both forms. */
    void settings(Map<String, String> settings) {
        xml.open("Option", "type", "Map");
        settings.forEach(this::text);
        xml.close();
        settings.forEach((name, value) -> xml.leaf("prop", "k", name, "v", value));
    }

    /** Writes settings that an expression finds for each row. */
    void expressions(String element, Map<String, String> expressions) {
        if (expressions.isEmpty()) {
            return;
        }
        xml.open(element);
        xml.open("Option", "type", "Map");
        text("name", "");
        xml.open("Option", "name", "properties", "type", "Map");
        expressions.forEach((name, expression) -> {
            xml.open("Option", "name", name, "type", "Map");
            xml.leaf("Option", "name", "active", "type", "bool", "value", "true");
            text("expression", expression);
            xml.leaf("Option", "name", "type", "type", "int", "value", "3");
            xml.close();
        });
        xml.close();
        text("type", "collection");
        xml.close();
        xml.close();
    }

    private void text(String name, String value) {
        xml.leaf("Option", "name", name, "type", "QString", "value", value);
    }
}

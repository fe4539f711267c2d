package org.spanroom.output.style;

/**
 * How one layer looks, in the two languages that desktop GIS read.
 *
 * @param sld a whole document, OGC Styled Layer Descriptor 1.0.0
 * @param qml a whole document, the desktop GIS's own style XML
 */
public record LayerStyle(String sld, String qml) {}

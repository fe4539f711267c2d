package org.spanroom.output.style;

/** What a map is drawn on; classes have a color for each. */
public enum Background {
    LIGHT,
    DARK
}

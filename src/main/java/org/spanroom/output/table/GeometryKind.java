package org.spanroom.output.table;

/** What the shapes of a table are. */
public enum GeometryKind {
    NONE,
    POINT,
    /** Each shape is one line. */
    LINE,
    /** Each shape is one line or several. */
    MULTILINE,
    /** Each shape is one polygon: its outer ring, then its holes. */
    POLYGON,
    /** Each shape is one polygon or several. */
    MULTIPOLYGON
}

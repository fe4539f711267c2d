package org.spanroom.model;

/** The shape of a duct's bore; old clay ducts may be square. */
public enum BoreShape {
    ROUND,
    SQUARE
}

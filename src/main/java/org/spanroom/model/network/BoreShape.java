package org.spanroom.model.network;

/** The shape of a duct's bore; old clay ducts may be square. */
public enum BoreShape {
    ROUND,
    SQUARE
}

package org.spanroom.model.network;

/** The recorded state of a duct's bore. */
public enum Condition {
    SOUND,
    OVAL,
    COLLAPSED,
    BLOCKED,
    UNKNOWN
}

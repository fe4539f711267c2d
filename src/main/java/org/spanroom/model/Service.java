package org.spanroom.model;

/** Whether a cable carries traffic. */
public enum Service {
    LIVE,
    DEAD,
    UNKNOWN
}

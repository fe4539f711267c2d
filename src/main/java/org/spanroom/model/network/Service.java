package org.spanroom.model.network;

/** Whether a cable carries traffic. */
public enum Service {
    LIVE,
    DEAD,
    UNKNOWN
}

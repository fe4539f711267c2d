package org.spanroom.model;

/** Which of two values counts where the drawing and the records disagree. */
public enum ValueSource {
    /** What the geometry says. */
    DRAWN,
    /** What the attributes say. */
    RECORDED
}

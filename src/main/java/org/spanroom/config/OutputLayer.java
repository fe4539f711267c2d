package org.spanroom.config;

/** A layer of the results. */
public enum OutputLayer {
    SPANS,
    VAULTS,
    BENDS,
    FINDINGS
}

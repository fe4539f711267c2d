package org.spanroom.finding;

/** How much a finding weighs. */
public enum Severity {
    /** The feature, or a part of it, is not in the results. */
    REJECTED,
    /** The feature is in the results, but something in it is missing, contradictory or assumed. */
    SUSPECT,
    /** Worth knowing; nothing to fix. */
    NOTE
}

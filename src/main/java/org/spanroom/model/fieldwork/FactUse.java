package org.spanroom.model.fieldwork;

/** What a fact changes. */
public enum FactUse {
    /** The state of the work on the span, so whether it stays a candidate. */
    STATUS,
    /** What the next ranking takes the duct and its contents to be. */
    DUCT,
    /** What the next ranking takes the vault to be. */
    VAULT,
    /** Rates, friction and totals, by what was planned and what was done. */
    PRODUCTION,
    /** Nothing that is calculated: it is kept for people. */
    RECORD
}

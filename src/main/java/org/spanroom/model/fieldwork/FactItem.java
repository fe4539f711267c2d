package org.spanroom.model.fieldwork;

/** What the cell {@code item} of a fact names. */
public enum FactItem {
    /** Nothing: the fact is about its whole subject. */
    NONE,
    /** An innerduct, by its name in the records. */
    INNERDUCT,
    /** A cable, by its name in the records. */
    CABLE,
    /** A sleeve, by a name of the crew's. */
    SLEEVE,
    /** A step of the work, by its word in the table step_hours. */
    STEP,
    /** The end of the span: a or b. */
    END,
    /** An innerduct and an end of the span: its name, a space, and a or b. */
    INNERDUCT_AT_END,
    /** A cable and an end of the span: its name, a space, and a or b. */
    CABLE_AT_END,
    /** An occasion or a purpose, in the crew's words, e.g. before entry, lane closure. */
    OCCASION
}

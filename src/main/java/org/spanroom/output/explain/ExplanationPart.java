package org.spanroom.output.explain;

/**
 * A part of an explanation, one of the kinds that every renderer handles.
 *
 * <p>A part has a key for programs and a label for people. One without a key is for people only, and one without a label for
 * programs only: each repeats, in the form that suits its reader, what another part says. A line, table or section without a key
 * that holds parts with keys puts these into the object around it.
 */
public sealed interface ExplanationPart
        permits ExplanationItem, ExplanationLine, ExplanationTable, ExplanationSection, ExplanationSections {
    String key();

    /** Returns whether people are shown anything of it. */
    boolean isShown();
}

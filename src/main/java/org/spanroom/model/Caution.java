package org.spanroom.model;

import java.util.Locale;

/** What to bear in mind before work on a span that is no reason to leave it out. The lower-case name is part of the output. */
public enum Caution {
    EMBARGO("an embargo forbids work that disturbs the cables"),
    CIRCUITS_AT_RISK("the cables carry recorded circuits"),
    JOINT_OWNERS("others own the duct too and must be asked"),
    CONTENTS_CANNOT_FIT("the recorded contents do not go into the recorded bore: a record is wrong"),
    PULL_FROM_OTHER_END("no live cable can be held for the better end: pull from the other, at the other end's forces"),
    BAD_FRICTION("friction in its bad state may stop the pull"),
    MAY_JAM("three equal innerducts may lock side by side: jam ratio between 2.8 and 3.2"),
    MANY_BENDS("the bends add up to more than the total to warn at"),
    LONG_SECTION("the span is longer than the section length to warn at"),
    WATER("the duct is flooded, or water stands in one of the vaults"),
    NIGHT_ONLY("work is allowed at night only"),
    EMPTY_DUCT_UNPROVED("an empty duct of unrecorded or oval bore lies in the same bank: look at that first"),
    CONTENTS_ASSUMED("how many innerducts or cables there are, or whether they are live, was assumed"),
    SIZES_ASSUMED("a size of duct, innerduct or cable was assumed");

    private final String explanation;

    Caution(String explanation) {
        this.explanation = explanation;
    }

    public String explanation() {
        return explanation;
    }

    /** Returns the word for this caution in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}

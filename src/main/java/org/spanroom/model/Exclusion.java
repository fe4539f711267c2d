package org.spanroom.model;

import java.util.Locale;

/**
 * Why a span is not ranked; each is a gate that the config can open. The lower-case name is part of the output.
 *
 * <p>The order is that in which reasons are told: first that nothing is there to recover, then that it cannot be done, then that
 * it may not be done, then that it need not be done or gives nothing.
 */
public enum Exclusion {
    CONTENTS_UNKNOWN("the records say nothing of what lies in the duct"),
    NO_INNERDUCT("no rigid innerduct lies in the duct"),
    NO_OUTER_DUCT("the innerduct is buried directly: no outer duct would stay"),
    DUCT_COLLAPSED("the duct is recorded as collapsed"),
    DUCT_BLOCKED("the duct is recorded as blocked"),
    INNERDUCT_FIXED("the innerduct is grouted in or otherwise held over its length"),
    SPLICE_INSIDE("a cable is spliced between the vaults: no innerduct passes over the splice"),
    NO_CABLE_HOLD("no live cable can be held at the vault that the pull needs as its anchor"),
    SERVICE_UNKNOWN("nobody knows whether a cable is live"),
    ALL_CABLES_DEAD("every cable is recorded as dead: remove the cables first, then the innerducts are plain scrap"),
    OWNER_CONSENT_MISSING("the owner, or a joint owner, has not agreed to the work"),
    LOOSE_CABLE_FORBIDDEN("the owner's rule lets no cable lie in the duct without an innerduct"),
    EMPTY_DUCT_IN_BANK("a sound empty duct lies in the same bank between the same vaults: use that first"),
    PULL_FAILS("on paper the innerducts can come out at neither end"),
    NO_ROOM_GAINED("nothing more fits after recovery than before");

    private final String explanation;

    Exclusion(String explanation) {
        this.explanation = explanation;
    }

    public String explanation() {
        return explanation;
    }

    /** Returns the word for this reason in columns, and the key of its gate in the config. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}

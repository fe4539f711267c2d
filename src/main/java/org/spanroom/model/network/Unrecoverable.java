package org.spanroom.model.network;

import java.util.Optional;

/** Why nothing can be pulled out of a duct, whatever its owner wants. */
public enum Unrecoverable {
    CONTENTS_UNKNOWN("duct contents not recorded"),
    NO_INNERDUCT("no rigid innerduct in the duct"),
    NO_OUTER_DUCT("direct-buried; no outer duct");

    private final String explanation;

    Unrecoverable(String explanation) {
        this.explanation = explanation;
    }

    public String explanation() {
        return explanation;
    }

    /** Finds the most basic reason for a duct; empty where a known innerduct can leave it. */
    public static Optional<Unrecoverable> of(Duct duct) {
        if (!duct.contents().known()) {
            return Optional.of(CONTENTS_UNKNOWN);
        }
        if (duct.contents().innerducts().isEmpty()) {
            return Optional.of(NO_INNERDUCT);
        }
        return duct.directBuried() ? Optional.of(NO_OUTER_DUCT) : Optional.empty();
    }
}

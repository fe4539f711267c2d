package org.spanroom.input.proposal;

/** Why a proposal is unsure; nothing where it is sure. */
record Doubt(String reason) {
    static final Doubt NONE = new Doubt("");

    boolean isNone() {
        return reason.isEmpty();
    }

    /** Returns this doubt, or another where there is none. */
    Doubt or(Doubt other) {
        return isNone() ? other : this;
    }

    static Doubt when(boolean doubtful, String reason) {
        return doubtful ? new Doubt(reason) : NONE;
    }
}

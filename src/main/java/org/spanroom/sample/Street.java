package org.spanroom.sample;

import java.util.List;

/** Legs that follow one another. */
record Street(Rank rank, List<Leg> legs) {
    /** What a street is for; ducts are laid in this order until there are enough. */
    enum Rank {
        /** Connects the district and carries the links to others. */
        MAIN,
        /** Leads to an earlier district. */
        LINK,
        /** Runs under other streets and shares no vault with those it crosses. */
        EXPRESS,
        /** Leaves a vault and comes back to it. */
        LOOP,
        SIDE
    }

    Street {
        legs = List.copyOf(legs);
    }
}

package org.spanroom.sample;

/** How a leg runs, where that matters to what is pulled through it. */
enum Course {
    PLAIN,
    /** Turns by 90 to 450 degrees in total. */
    CROOKED,
    /** Turns by 450 degrees on a short way: more than any code allows, while the forces may still be small. */
    WINDING,
    /** Has elbows tighter than a loaded cable of some thickness bears. */
    TIGHT,
    /** Climbs or falls so that a cable wants to slide. */
    STEEP,
    /** Longer than ducts are laid between vaults. */
    LONG;

    boolean hasCorners() {
        return this == CROOKED || this == WINDING || this == TIGHT;
    }
}

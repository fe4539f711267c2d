package org.spanroom.model.effort;

import java.util.Locale;

/** A part that hours, money or emissions are added up in. */
public sealed interface EffortPart permits EffortStep, CostItem, BuildItem, CarbonItem {
    /** What a part is counted in. */
    enum Kind {
        HOURS,
        COST,
        NEW_BUILD,
        CARBON
    }

    Kind kind();

    String name();

    int ordinal();

    /** Returns the word for this part in outputs. */
    default String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}

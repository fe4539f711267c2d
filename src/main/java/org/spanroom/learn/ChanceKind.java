package org.spanroom.learn;

import java.util.Locale;
import org.spanroom.model.rank.SpanChances;

/** A chance that opened ducts say something of. The lower-case name is its word in columns. */
enum ChanceKind {
    OTHER_SIZE,
    MORE_CABLE,
    MORE_CABLE_ASSUMED,
    BLOCKED,
    BLOCKED_UNKNOWN,
    CONTENTS_FEW,
    CONTENTS_TYPICAL,
    CONTENTS_MANY;

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Returns this one of the chances of a span. */
    double of(SpanChances chances) {
        return switch (this) {
            case OTHER_SIZE -> chances.otherSizeRatio();
            case MORE_CABLE -> chances.moreCableRatio();
            case MORE_CABLE_ASSUMED -> chances.moreCableAssumedRatio();
            case BLOCKED -> chances.blockedRatio();
            case BLOCKED_UNKNOWN -> chances.blockedUnknownRatio();
            case CONTENTS_FEW -> chances.fewRatio();
            case CONTENTS_TYPICAL -> chances.typicalRatio();
            case CONTENTS_MANY -> chances.manyRatio();
        };
    }
}

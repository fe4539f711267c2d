package org.spanroom.rank;

import java.util.Locale;
import org.spanroom.model.Assessment;

/** An absolute quantity of a span that its score judges. The lower-case name is the key in the config and in columns. */
enum Criterion {
    /** Cables that find a place afterwards and did not before. */
    ROOM_GAINED("cables"),
    /** Metres that one set-up at two vaults gives room on. */
    LENGTH("m"),
    /** All turning between the vaults, which makes every pull harder. */
    BENDS("degrees"),
    /** How far the tightest limit of the pull is used up from the better end; above 100 the pull fails. */
    EASE("percent used");

    private final String unit;

    Criterion(String unit) {
        this.unit = unit;
    }

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    String unit() {
        return unit;
    }

    double quantityOf(Assessment assessment) {
        return switch (this) {
            case ROOM_GAINED -> assessment.room().cablesGained();
            case LENGTH -> assessment.span().lengthM();
            case BENDS -> assessment.bends().total().deg();
            case EASE -> assessment.pull().utilisationPercent();
        };
    }
}

package org.spanroom.rank;

import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.Assessment;

/** An absolute quantity of a span that its score judges. The lower-case name is the key in the config and in columns. */
enum Criterion {
    /** Cables that find a place afterwards and did not before. */
    ROOM_GAINED("cables", assessment -> assessment.room().cablesGained()),
    /** Metres that one set-up at two vaults gives room on. */
    LENGTH("m", assessment -> assessment.span().lengthM()),
    /** All turning between the vaults, which makes every pull harder. */
    BENDS("degrees", assessment -> assessment.bends().total().deg());

    private final String unit;
    private final ToDoubleFunction<Assessment> quantity;

    Criterion(String unit, ToDoubleFunction<Assessment> quantity) {
        this.unit = unit;
        this.quantity = quantity;
    }

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    String unit() {
        return unit;
    }

    double quantityOf(Assessment assessment) {
        return quantity.applyAsDouble(assessment);
    }
}

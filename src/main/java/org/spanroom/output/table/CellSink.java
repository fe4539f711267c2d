package org.spanroom.output.table;

/** What a format does with a row's cells, in the order of the columns. */
interface CellSink {
    void empty();

    /** Takes a text that is not blank and holds no control characters but tab and line breaks. */
    void text(String text);

    void integer(long value);

    /** Takes a finite number that is to be written with so many digits after the point. */
    void real(double value, int decimals);

    /** Takes the same number as so many units of its last digit, fewer than 2<sup>53</sup>. */
    default void units(long units, int decimals) {
        real(Decimals.ofUnits(units, decimals), decimals);
    }

    void flag(boolean value);
}

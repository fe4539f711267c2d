package org.spanroom.output.style;

import java.util.Optional;

/**
 * Which rows of a layer have a label: the text of one column, once for each row.
 *
 * @param priority from 0 to 10; where there is no room for two labels, the one with the higher priority stays
 * @param side the column by which the row's line is moved aside; the label follows it
 */
record LabelRule(
        String column,
        Condition condition,
        ScaleRange scales,
        double sizePt,
        boolean bold,
        int priority,
        Optional<Symbol.Side> side) {}

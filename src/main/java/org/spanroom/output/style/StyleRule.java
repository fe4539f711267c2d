package org.spanroom.output.style;

import java.util.List;

/**
 * How some rows of a layer are drawn.
 *
 * @param label words of the legend
 * @param level the order of drawing: rows of a higher level lie above those of a lower one
 * @param symbols drawn one upon the other
 */
record StyleRule(String label, Condition condition, int level, ScaleRange scales, List<Symbol> symbols) {
    StyleRule {
        symbols = List.copyOf(symbols);
    }

    static StyleRule of(String label, Condition condition, int level, Symbol symbol) {
        return new StyleRule(label, condition, level, ScaleRange.ALL, List.of(symbol));
    }

    StyleRule at(ScaleRange range) {
        return new StyleRule(label, condition, level, range, symbols);
    }
}

package org.spanroom.pipeline;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import org.spanroom.model.Counted;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.rank.UncertaintySettings;

/** Amounts in sentences: rounded to three digits, since no more of a planning figure means anything. */
final class ReportWords {
    private static final MathContext THREE_DIGITS = new MathContext(3);
    private static final int MILLION_DIGITS = 6;
    private static final double MILLION = 1e6;

    private final String currency;

    ReportWords(String currency) {
        this.currency = currency;
    }

    /** Returns an amount: {@code USD 15.6 million}, {@code USD 9,230}. */
    String money(double money) {
        return currency + " " + amount(money);
    }

    /** Returns an amount with its range: {@code USD 15.6 million (13.4 million to 18.1 million)}. */
    String money(MoneyRange range) {
        return money(range.likelyMoney()) + " (" + spread(range) + ")";
    }

    /** Returns the ends of a range: {@code 13.4 million to 18.1 million}. */
    String spread(MoneyRange range) {
        return amount(range.lowMoney()) + " to " + amount(range.highMoney());
    }

    private static String amount(double money) {
        if (money == 0 || !Double.isFinite(money)) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(money).round(THREE_DIGITS);
        if (rounded.abs().doubleValue() < MILLION) {
            return String.format(Locale.ROOT, "%,d", rounded.longValue());
        }
        // Amounts beside one another keep the same digits: 53.0 beside 15.6.
        return rounded.movePointLeft(MILLION_DIGITS).toPlainString() + " million";
    }

    /** Returns which share of the draws a range of money holds: {@code 80 %}. */
    static String rangeShare(UncertaintySettings settings) {
        return percent(100 * (settings.moneyHighRatio() - settings.moneyLowRatio()));
    }

    /** Returns a chance without decimals: {@code 98 %}. */
    static String percent(double percent) {
        return Counted.fixed(percent, 0) + " %";
    }

    /** Returns a text that begins with a capital letter and ends with a full stop. */
    static String sentence(String text) {
        if (text.isEmpty()) {
            return text;
        }
        String begun = text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
        return begun.endsWith(".") ? begun : begun + ".";
    }
}

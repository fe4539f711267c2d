package org.spanroom.effort;

import org.spanroom.model.effort.EffortPart;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateRows;
import org.spanroom.model.effort.Rates;

/**
 * Multiplies quantities by rates, and records each line if asked: the one place where amounts are made, so that
 * what is explained is what was calculated.
 */
final class Account {
    private final Rates rates;
    private final Ledger ledger;

    Account(Rates rates, Ledger ledger) {
        this.rates = rates;
        this.ledger = ledger;
    }

    /** Returns an account that records no lines. */
    static Account silent(Rates rates) {
        return new Account(rates, Ledger.NONE);
    }

    /** Returns this account without a record of lines. */
    Account unwritten() {
        return silent(rates);
    }

    double rate(RateKey key, RateRows at) {
        return rates.inUnit(key, at);
    }

    /** Books quantity times rate, or over it, as the rate works, and returns the amount. */
    double book(EffortPart part, double quantity, RateKey key, RateRows at) {
        return book(part, "", quantity, key, at, 1);
    }

    /**
     * Books quantity times rate, or over it, of which a share counts, and returns the amount.
     *
     * @param place A or B for work at a vault, else empty
     */
    double book(EffortPart part, String place, double quantity, RateKey key, RateRows at, double factor) {
        double rate = rates.inUnit(key, at);
        double amount = (key.divides() ? quantity / rate : quantity * rate) * factor;
        ledger.note(part, place, quantity, key, at, factor, amount);
        return amount;
    }
}

package org.spanroom.effort;

import org.spanroom.model.effort.EffortPart;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateRows;

/** Records amounts as they are calculated. */
interface Ledger {
    Ledger NONE = (part, place, quantity, key, at, factor, amount) -> {};

    void note(EffortPart part, String place, double quantity, RateKey key, RateRows at, double factor, double amount);
}

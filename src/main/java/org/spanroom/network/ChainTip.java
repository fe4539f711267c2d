package org.spanroom.network;

import org.spanroom.model.Answer;
import org.spanroom.model.network.EndFacts;

/**
 * One end of an open chain.
 *
 * @param vault number of the vault where the chain ends and a span with it; {@link #NO_VAULT} where it ends without one
 * @param against whether the span that ends there runs against the chain
 * @param facts what is recorded of the duct there
 * @param uncut whether the route's own field says that all innerducts run uncut through the vault
 */
record ChainTip(int vault, boolean against, EndFacts facts, Answer uncut) {
    static final int NO_VAULT = -1;

    /** An end at no vault, of which no record can say anything. */
    static final ChainTip OPEN = new ChainTip(NO_VAULT, false, EndFacts.UNKNOWN, Answer.UNKNOWN);

    boolean isAtVault() {
        return vault != NO_VAULT;
    }
}

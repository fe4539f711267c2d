package org.spanroom.model.network;

import java.util.OptionalDouble;
import org.spanroom.model.Check;

/**
 * What the records say of one duct at one vault. Nothing of it is ever assumed.
 *
 * @param hole where the duct opens in the face of its bank: the number of its hole, such as 7, or row and column, such as 2/3; or empty
 * @param slackM length of each live cable of this duct that is stored there and can be drawn out of the vault; it counts before
 *     the slack of the vault
 */
public record EndFacts(String hole, OptionalDouble slackM) {
    /** Nothing is recorded. */
    public static final EndFacts UNKNOWN = new EndFacts("", OptionalDouble.empty());

    public EndFacts {
        slackM.ifPresent(slack -> Check.notNegative("slackM", slack));
    }
}

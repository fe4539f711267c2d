package org.spanroom.model.network;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.Answer;
import org.spanroom.model.Check;

/**
 * What the records say of a duct that decides whether it may be worked on, apart from sizes and contents.
 *
 * @param ownerConsent whether the owner, or each joint owner, has agreed to the work
 * @param looseCableAllowed whether the owner's rule lets cables lie in the duct without an innerduct
 * @param spliceInside whether a cable is spliced between the vaults, so that no innerduct passes over it
 * @param innerductFixed whether the innerduct is grouted in or otherwise held over its length
 * @param circuitsAtRisk how many circuits the cables carry; empty where it is not recorded
 * @param jointOwners who else owns the duct, or empty
 * @param embargoUntil day up to which no work may disturb the cables
 */
public record Circumstances(
        Answer ownerConsent,
        Answer looseCableAllowed,
        Answer spliceInside,
        Answer innerductFixed,
        OptionalInt circuitsAtRisk,
        String jointOwners,
        Optional<LocalDate> embargoUntil) {
    /** Nothing is recorded. */
    public static final Circumstances UNKNOWN = new Circumstances(
            Answer.UNKNOWN, Answer.UNKNOWN, Answer.UNKNOWN, Answer.UNKNOWN, OptionalInt.empty(), "", Optional.empty());

    public Circumstances {
        circuitsAtRisk.ifPresent(count -> Check.notNegative("circuitsAtRisk", count));
    }
}

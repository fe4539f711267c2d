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
 * @param looseCableAllowed whether the owner's rule allows cables in the duct without an innerduct
 * @param spliceInside whether a cable is spliced between the vaults, so that no innerduct passes over it
 * @param innerductFixed whether innerduct grouted in or otherwise fixed along its length
 * @param circuitsAtRisk how many circuits the cables carry; empty where it is not recorded
 * @param jointOwners who else owns the duct, or empty
 * @param embargoUntil day up to which no work may disturb the cables
 * @param besideAllowed whether the owner lets sleeves and cables be placed beside rigid innerducts
 * @param positionsReserved how many positions are promised to the owner or to customers; 0 where nothing is recorded
 */
public record Circumstances(
        Answer ownerConsent,
        Answer looseCableAllowed,
        Answer spliceInside,
        Answer innerductFixed,
        OptionalInt circuitsAtRisk,
        String jointOwners,
        Optional<LocalDate> embargoUntil,
        Answer besideAllowed,
        int positionsReserved) {
    /** Nothing is recorded. */
    public static final Circumstances UNKNOWN = new Circumstances(
            Answer.UNKNOWN, Answer.UNKNOWN, Answer.UNKNOWN, Answer.UNKNOWN, OptionalInt.empty(), "", Optional.empty());

    public Circumstances {
        Check.notNegative("positionsReserved", positionsReserved);
        circuitsAtRisk.ifPresent(count -> Check.notNegative("circuitsAtRisk", count));
    }

    /** Circumstances of a duct in which no position is reserved and of which no rule on placing beside innerducts is recorded. */
    public Circumstances(
            Answer ownerConsent,
            Answer looseCableAllowed,
            Answer spliceInside,
            Answer innerductFixed,
            OptionalInt circuitsAtRisk,
            String jointOwners,
            Optional<LocalDate> embargoUntil) {
        this(
                ownerConsent,
                looseCableAllowed,
                spliceInside,
                innerductFixed,
                circuitsAtRisk,
                jointOwners,
                embargoUntil,
                Answer.UNKNOWN,
                0);
    }
}

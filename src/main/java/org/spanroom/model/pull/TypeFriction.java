package org.spanroom.model.pull;

import org.spanroom.model.Check;
import org.spanroom.model.Term;
import org.spanroom.model.network.Duct;

/**
 * Friction in ducts of one type and age.
 *
 * @param ductType the recorded type; case does not matter
 * @param fromYear first year of installation
 * @param toYear last one
 */
public record TypeFriction(String ductType, int fromYear, int toYear, FrictionSets friction) {
    public TypeFriction {
        Check.notBlank("ductType", ductType);
        Check.within("toYear", toYear, fromYear, Integer.MAX_VALUE);
    }

    /** Returns whether a duct is of this type and age; both must be recorded. */
    boolean fits(Duct duct) {
        return !duct.assumed().contains(Term.DUCT_TYPE)
                && duct.type().strip().equalsIgnoreCase(ductType.strip())
                && duct.installedYear().isPresent()
                && duct.installedYear().getAsInt() >= fromYear
                && duct.installedYear().getAsInt() <= toYear;
    }
}

package org.spanroom.model.effort;

/** What emissions are calculated for. Those of ICE are added to one another; that of WARM is separate. */
public enum CarbonItem implements EffortPart {
    /** ICE: new ducts that are not laid. */
    DUCTS_AVOIDED,
    /** ICE: surface that is not restored. */
    SURFACE_AVOIDED,
    /** ICE: concrete around the ducts. */
    ENCASEMENT_AVOIDED,
    /** ICE: sleeves in the new ducts. */
    SLEEVES_AVOIDED,
    /** ICE: sleeves that recovery puts in, negative. */
    SLEEVES_LAID,
    /** WARM: innerduct that is recycled. */
    INNERDUCT_RECYCLED;

    @Override
    public Kind kind() {
        return Kind.CARBON;
    }
}

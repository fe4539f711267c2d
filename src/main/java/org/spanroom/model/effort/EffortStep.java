package org.spanroom.model.effort;

/** A step of the work on a span, in the order of the work. */
public enum EffortStep implements EffortPart {
    TRAFFIC_CONTROL,
    BRIEFING,
    OPENING,
    PUMPING,
    VENTILATING,
    AIR_TEST,
    /** The duct is rodded, or a camera goes through it, to prove the path before anything is freed. */
    PROOF,
    FREEING,
    /** Innerducts that run uncut through a vault are cut there, ring by ring around their live cables, before the first pull. */
    CUTTING,
    SET_UP,
    /** The first meters of each innerduct, slowly, with a watched gauge. */
    TEST_PULL,
    PULLING,
    /** Dead cables that leave the duct with the innerducts. */
    DEAD_CABLES,
    SLEEVES,
    CHIPPING,
    SEALING,
    TAKE_DOWN,
    CLOSING;

    @Override
    public Kind kind() {
        return Kind.HOURS;
    }
}

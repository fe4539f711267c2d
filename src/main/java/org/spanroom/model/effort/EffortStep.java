package org.spanroom.model.effort;

/** A step of the work on a span, in the order of the work. */
public enum EffortStep implements EffortPart {
    TRAFFIC_CONTROL,
    BRIEFING,
    OPENING,
    PUMPING,
    VENTILATING,
    AIR_TEST,
    FREEING,
    SET_UP,
    PULLING,
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

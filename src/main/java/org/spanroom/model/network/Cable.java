package org.spanroom.model.network;

import org.spanroom.model.Check;

/**
 * A cable that is in an innerduct or loose in a duct.
 *
 * @param massKgPerM mass per meter of length, in air
 * @param mayMove false where the cable may not be laid into a sleeve
 * @param tag what is written on the tag or jacket by which crews know it, or empty
 */
public record Cable(
        String id, double outsideDiameterMm, double massKgPerM, Service service, boolean mayMove, String tag) {
    public Cable {
        Check.positive("outsideDiameterMm", outsideDiameterMm);
        Check.notNegative("massKgPerM", massKgPerM);
    }

    /** A cable of whose tag nothing is recorded. */
    public Cable(String id, double outsideDiameterMm, double massKgPerM, Service service, boolean mayMove) {
        this(id, outsideDiameterMm, massKgPerM, service, mayMove, "");
    }

    /** A cable that may be laid into a sleeve. */
    public Cable(String id, double outsideDiameterMm, double massKgPerM, Service service) {
        this(id, outsideDiameterMm, massKgPerM, service, true);
    }

    /** Returns the same cable of another width. */
    public Cable withOutsideDiameterMm(double otherMm) {
        return new Cable(id, otherMm, massKgPerM, service, mayMove, tag);
    }

    /** Returns the same cable in another state of service. */
    public Cable withService(Service other) {
        return new Cable(id, outsideDiameterMm, massKgPerM, other, mayMove, tag);
    }

    /** Returns the same cable with another tag. */
    public Cable withTag(String other) {
        return new Cable(id, outsideDiameterMm, massKgPerM, service, mayMove, other);
    }

    public double areaMm2() {
        return Math.PI / 4 * outsideDiameterMm * outsideDiameterMm;
    }
}

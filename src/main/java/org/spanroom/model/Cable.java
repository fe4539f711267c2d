package org.spanroom.model;

/**
 * A cable that lies in an innerduct or loose in a duct.
 *
 * @param massKgPerM mass per metre of length, in air
 */
public record Cable(String id, double outsideDiameterMm, double massKgPerM, Service service) {
    public Cable {
        Check.positive("outsideDiameterMm", outsideDiameterMm);
        Check.notNegative("massKgPerM", massKgPerM);
    }

    public double areaMm2() {
        return Math.PI / 4 * outsideDiameterMm * outsideDiameterMm;
    }
}

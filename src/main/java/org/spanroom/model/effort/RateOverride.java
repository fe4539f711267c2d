package org.spanroom.model.effort;

import org.spanroom.model.Check;

/**
 * A rate that is another one at vaults, or in permit zones, of a kind.
 *
 * @param kind the vaults' recorded kind, or the zones' kind; case does not matter
 */
public record RateOverride(
        String kind, RateKey rate, double value, double low, double high, String source, String date) {
    public RateOverride {
        Check.notBlank("kind", kind);
        RateSettings.demandUsable(rate, new Rate(value, low, high, source, date));
    }

    /** Returns the rate that applies there. */
    public Rate there() {
        return new Rate(value, low, high, source, date);
    }

    boolean isFor(String otherKind) {
        return kind.strip().equalsIgnoreCase(otherKind.strip());
    }
}

package org.spanroom.pull;

import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.pull.PullSettings;

/**
 * Weights per meter of a duct's contents, in air or in water.
 *
 * <p>A flooded duct takes from each weight that of the water displaced (ASTM F1962 for pipes). A sealed innerduct displaces
 * its whole section and its cables are in air; an open one displaces its wall, and its cables float for themselves.
 */
final class Weights {
    /** Standard gravity (BIPM, exact). */
    static final double GRAVITY_M_PER_S2 = 9.80665;

    private static final double WATER_KG_PER_M3 = 1000;

    private final boolean open;
    private final boolean sealed;
    private final double densityKgPerM3;

    Weights(Duct duct, PullSettings settings) {
        this.open = duct.flooded() && !settings.sealedWhenFlooded();
        this.sealed = duct.flooded() && settings.sealedWhenFlooded();
        this.densityKgPerM3 = settings.innerductDensityKgPerM3();
    }

    /** Returns the weight of an innerduct's cables on its wall. */
    double cablesNPerM(Innerduct innerduct) {
        double total = 0;
        for (Cable cable : innerduct.cables()) {
            total += cableNPerM(cable, open);
        }
        return total;
    }

    /** Returns the weight of an innerduct and its cables on the duct's wall. */
    double bodyNPerM(Innerduct innerduct) {
        double massKgPerM = innerduct.massKgPerM(densityKgPerM3);
        double wetMm2 = sealed ? innerduct.areaMm2() : open ? wallAreaMm2(innerduct) : 0;
        return netNPerM(massKgPerM, wetMm2) + cablesNPerM(innerduct);
    }

    /** Returns the weight of a cable that is in the duct itself. */
    double looseNPerM(Cable cable) {
        return cableNPerM(cable, open || sealed);
    }

    private static double cableNPerM(Cable cable, boolean wet) {
        return netNPerM(cable.massKgPerM(), wet ? cable.areaMm2() : 0);
    }

    private static double wallAreaMm2(Innerduct innerduct) {
        double wallMm = innerduct.averageWallMm();
        return Math.PI * (innerduct.outsideDiameterMm() - wallMm) * wallMm;
    }

    private static double netNPerM(double massKgPerM, double displacedMm2) {
        return GRAVITY_M_PER_S2 * (massKgPerM - WATER_KG_PER_M3 * displacedMm2 * 1e-6);
    }
}

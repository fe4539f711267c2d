package org.spanroom.effort;

import static org.spanroom.effort.Lanes.add;
import static org.spanroom.effort.Lanes.addOver;
import static org.spanroom.effort.Lanes.set;
import static org.spanroom.effort.Lanes.setOver;

import java.util.Arrays;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.RateDraws;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateRows;
import org.spanroom.model.effort.VaultWork;
import org.spanroom.model.permit.ZoneRule;

/**
 * The hours on site of one span in every draw of the rates: the operations of {@link SiteWork#plan}, in the same order and hence with the
 * same rounding, each over all draws. Reusable; the results hold until the next span. For one thread.
 */
final class DrawnSiteWork {
    private final RateDraws draws;
    private final double[] dailyHours;
    private final double[] beforeHours;
    private final double[] pullHours;
    private final double[] deadCableHours;
    private final double[] sleeveHours;
    private final double[] afterHours;
    private final double[] usableHours;
    private final double[] usedHours;
    private final double[] part;
    private final double[] volumeM3;

    /** Hours on site, over all shifts. */
    final double[] siteHours;

    final double[] shifts;

    DrawnSiteWork(RateDraws draws) {
        this.draws = draws;
        dailyHours = new double[draws.count()];
        beforeHours = new double[draws.count()];
        pullHours = new double[draws.count()];
        deadCableHours = new double[draws.count()];
        sleeveHours = new double[draws.count()];
        afterHours = new double[draws.count()];
        usableHours = new double[draws.count()];
        usedHours = new double[draws.count()];
        part = new double[draws.count()];
        volumeM3 = new double[draws.count()];
        siteHours = new double[draws.count()];
        shifts = new double[draws.count()];
    }

    /** Calculates the hours and the shifts of a span. */
    void plan(EffortQuantities span) {
        RateRows rows = span.rows();
        daily(span, rows);
        before(span, rows);
        set(pullHours, 1, rate(RateKey.PULL_PREPARING_HOURS, rows));
        add(pullHours, 1, rate(RateKey.TEST_PULL_HOURS, rows));
        addOver(pullHours, span.lengthM(), rate(RateKey.PULL_FEED_M_PER_HOUR, rows));
        set(deadCableHours, span.deadCablesOut() > 0 ? 1 : 0, rate(RateKey.DEAD_CABLE_HOURS, rows));
        sleeves(span, rows);
        after(span, rows);
        usable(span, rows);
        used(span);
        fill(span);
    }

    private double[] rate(RateKey key, RateRows at) {
        return draws.inUnit(key, at);
    }

    private void daily(EffortQuantities span, RateRows rows) {
        set(dailyHours, 1, rate(RateKey.BRIEFING_HOURS, rows));
        dailyAt(span.from(), rows);
        add(dailyHours, part);
        dailyAt(span.to(), rows);
        add(dailyHours, part);
        add(dailyHours, 1, rate(RateKey.SET_UP_HOURS, rows));
        add(dailyHours, 1, rate(RateKey.TAKE_DOWN_HOURS, rows));
    }

    private void dailyAt(VaultWork vault, RateRows rows) {
        double[] elapsedRatio = rate(RateKey.VAULT_ELAPSED_RATIO, rows);
        RateRows at = vault.rows();
        set(part, rate(RateKey.TRAFFIC_CONTROL_HOURS, at), elapsedRatio);
        add(part, rate(RateKey.VAULT_OPENING_HOURS, at), elapsedRatio);
        if (vault.wet()) {
            pumping(vault, elapsedRatio);
        }
        if (vault.entered()) {
            ventilating(vault, elapsedRatio);
            add(part, vault.wet() ? 2 : 1, rate(RateKey.AIR_TEST_HOURS, at), elapsedRatio);
        }
        add(part, rate(RateKey.VAULT_CLOSING_HOURS, at), elapsedRatio);
    }

    private void pumping(VaultWork vault, double[] elapsedRatio) {
        double[] volume = volumeM3(vault);
        double[] waterRatio = rate(RateKey.VAULT_WATER_RATIO, vault.rows());
        double[] pumpM3PerHour = rate(RateKey.PUMP_M3_PER_HOUR, vault.rows());
        for (int i = 0; i < part.length; i++) {
            part[i] += volume[i] * waterRatio[i] / pumpM3PerHour[i] * elapsedRatio[i];
        }
    }

    private void ventilating(VaultWork vault, double[] elapsedRatio) {
        double[] volume = volumeM3(vault);
        double[] changes = rate(RateKey.PURGE_AIR_CHANGES, vault.rows());
        double[] blowerM3PerHour = rate(RateKey.BLOWER_M3_PER_HOUR, vault.rows());
        double[] leastHours = rate(RateKey.PURGE_LEAST_HOURS, vault.rows());
        for (int i = 0; i < part.length; i++) {
            part[i] += Math.max(volume[i] * changes[i] / blowerM3PerHour[i], leastHours[i]) * elapsedRatio[i];
        }
    }

    private double[] volumeM3(VaultWork vault) {
        if (vault.volumeM3().isEmpty()) {
            return rate(RateKey.VAULT_VOLUME_M3, vault.rows());
        }
        Arrays.fill(volumeM3, vault.volumeM3().getAsDouble());
        return volumeM3;
    }

    /** Sets water to what is pumped out of both vaults in one shift. */
    void waterM3(EffortQuantities span, double[] water) {
        waterM3(span.from(), water);
        if (span.to().wet()) {
            waterM3(span.to(), part);
            add(water, part);
        }
    }

    private void waterM3(VaultWork vault, double[] water) {
        if (vault.wet()) {
            set(water, volumeM3(vault), rate(RateKey.VAULT_WATER_RATIO, vault.rows()));
        } else {
            Arrays.fill(water, 0);
        }
    }

    private void before(EffortQuantities span, RateRows rows) {
        double[] elapsedRatio = rate(RateKey.VAULT_ELAPSED_RATIO, rows);
        int tests = span.ductWaterM3() > 0 ? 2 : 1;
        setOver(beforeHours, span.ductWaterM3(), rate(RateKey.PUMP_M3_PER_HOUR, rows));
        airTests(span.from(), tests, elapsedRatio);
        airTests(span.to(), tests, elapsedRatio);
        set(part, 1, rate(RateKey.PROOF_PREPARING_HOURS, rows));
        addOver(part, span.lengthM(), rate(RateKey.PROOF_M_PER_HOUR, rows));
        add(beforeHours, part);
        freeing(span.from(), span.cables(), elapsedRatio);
        freeing(span.to(), span.cables(), elapsedRatio);
        cutting(span.from(), elapsedRatio);
        cutting(span.to(), elapsedRatio);
    }

    private void airTests(VaultWork vault, int tests, double[] elapsedRatio) {
        if (vault.entered()) {
            add(beforeHours, tests, rate(RateKey.AIR_TEST_HOURS, vault.rows()), elapsedRatio);
        }
    }

    private void freeing(VaultWork vault, int cables, double[] elapsedRatio) {
        set(part, rate(RateKey.FREEING_VAULT_HOURS, vault.rows()), elapsedRatio);
        add(part, cables, rate(RateKey.FREEING_CABLE_HOURS, vault.rows()), elapsedRatio);
        add(beforeHours, part);
    }

    private void cutting(VaultWork vault, double[] elapsedRatio) {
        if (vault.innerductsToCut() > 0) {
            add(beforeHours, vault.innerductsToCut(), rate(RateKey.CUTTING_HOURS, vault.rows()), elapsedRatio);
        }
    }

    private void sleeves(EffortQuantities span, RateRows rows) {
        if (span.sleeves() == 0 || span.innerductsOut() > 1) {
            Arrays.fill(sleeveHours, 0);
            return;
        }
        set(sleeveHours, 1, rate(RateKey.SLEEVE_PREPARING_HOURS, rows));
        addOver(sleeveHours, span.lengthM(), rate(RateKey.RODDING_M_PER_HOUR, rows));
    }

    private void after(EffortQuantities span, RateRows rows) {
        double[] kgPerM3 = rate(RateKey.HDPE_KG_PER_M3, rows);
        double[] chippingKgPerHour = rate(RateKey.CHIPPING_KG_PER_HOUR, rows);
        double[] alongsideRatio = rate(RateKey.CHIPPING_ALONGSIDE_RATIO, rows);
        double[] elapsedRatio = rate(RateKey.VAULT_ELAPSED_RATIO, rows);
        for (int i = 0; i < afterHours.length; i++) {
            afterHours[i] = span.innerductM3() * kgPerM3[i] / chippingKgPerHour[i] * (1 - alongsideRatio[i]);
        }
        add(afterHours, rate(RateKey.SEALING_HOURS, span.from().rows()), elapsedRatio);
        add(afterHours, rate(RateKey.SEALING_HOURS, span.to().rows()), elapsedRatio);
    }

    private void usable(EffortQuantities span, RateRows rows) {
        boolean atNight = span.isUnder(ZoneRule.NIGHT_ONLY);
        double[] windowHours = rate(atNight ? RateKey.NIGHT_WINDOW_HOURS : RateKey.DAY_WINDOW_HOURS, rows);
        double[] leastRatio = rate(RateKey.LEAST_USABLE_RATIO, rows);
        for (int i = 0; i < usableHours.length; i++) {
            usableHours[i] = Math.max(windowHours[i] - dailyHours[i], windowHours[i] * leastRatio[i]);
        }
    }

    /** Adds up the work that is done once, piece by piece as shifts are filled. */
    private void used(EffortQuantities span) {
        System.arraycopy(beforeHours, 0, usedHours, 0, usedHours.length);
        for (int i = 0; i < span.innerductsOut(); i++) {
            add(usedHours, pullHours);
        }
        for (int i = 0; i < span.deadCablesOut(); i++) {
            add(usedHours, deadCableHours);
        }
        add(usedHours, sleeveHours);
        add(usedHours, afterHours);
    }

    private void fill(EffortQuantities span) {
        int pulls = span.innerductsOut();
        int deadCables = span.deadCablesOut();
        for (int i = 0; i < shifts.length; i++) {
            shifts[i] = isOneShift(i) ? 1 : shifts(span, i);
        }
        for (int i = 0; i < siteHours.length; i++) {
            double onceHours = beforeHours[i]
                    + pulls * pullHours[i]
                    + deadCables * deadCableHours[i]
                    + sleeveHours[i]
                    + afterHours[i];
            siteHours[i] = shifts[i] * dailyHours[i] + onceHours;
        }
    }

    /** Sums of hours that are not negative only grow: where the last one fits, each one before it did. */
    private boolean isOneShift(int draw) {
        return usedHours[draw] <= usableHours[draw] + ShiftFill.TOLERANCE_HOURS && afterHours[draw] >= 0;
    }

    private int shifts(EffortQuantities span, int draw) {
        var fill = new ShiftFill(usableHours[draw]);
        fill.broken(beforeHours[draw]);
        for (int i = 0; i < span.innerductsOut(); i++) {
            fill.whole(pullHours[draw]);
        }
        for (int i = 0; i < span.deadCablesOut(); i++) {
            fill.whole(deadCableHours[draw]);
        }
        fill.whole(sleeveHours[draw]);
        fill.broken(afterHours[draw]);
        return fill.shifts();
    }
}

package org.spanroom.effort;

import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateRows;
import org.spanroom.model.effort.VaultWork;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.permit.ZoneRule;

/**
 * The hours on site of one span, step by step.
 *
 * <p>Some work is done in every shift (traffic control, opening, pumping, ventilating, testing, setting up and down, closing), the rest
 * once. Work at the two vaults overlaps: it counts with the configured share. A vault that crews do not enter is neither ventilated
 * nor its air tested. A pull, its short test first, is not broken off at the end of a shift. Sleeves go in while the next-to-last innerduct comes out and take no time of their own; where fewer than two
 * innerducts come out they are rodded in. Common practice, no source; the rates say their own.
 */
final class SiteWork {
    private final EffortQuantities span;
    private final RateRows rows;
    private final Account account;
    private final double elapsedRatio;

    SiteWork(EffortQuantities span, Account account) {
        this.span = span;
        this.rows = span.rows();
        this.account = account;
        this.elapsedRatio = account.rate(RateKey.VAULT_ELAPSED_RATIO, rows);
    }

    /**
     * Hours of one span and the shifts that they take.
     *
     * @param fitsWindow whether a shift has time for the longest pull beside daily work
     */
    record Plan(double siteHours, int shifts, boolean fitsWindow) {}

    /** Returns the hours and the shifts. */
    Plan plan() {
        double dailyHours = daily(1);
        double beforeHours = before();
        double pullHours = span.innerductsOut() > 0 ? pulls(1) : 0;
        double deadCableHours = span.deadCablesOut() > 0 ? deadCables(1) : 0;
        double sleeveHours = sleeves();
        double afterHours = after();
        double leftHours = windowHours() - dailyHours;
        var fill = new ShiftFill(Math.max(leftHours, leastUsableHours()));
        fill.broken(beforeHours);
        for (int i = 0; i < span.innerductsOut(); i++) {
            fill.whole(pullHours);
        }
        for (int i = 0; i < span.deadCablesOut(); i++) {
            fill.whole(deadCableHours);
        }
        fill.whole(sleeveHours);
        fill.broken(afterHours);
        double onceHours = beforeHours
                + span.innerductsOut() * pullHours
                + span.deadCablesOut() * deadCableHours
                + sleeveHours
                + afterHours;
        double longestHours = Math.max(pullHours, Math.max(deadCableHours, sleeveHours));
        return new Plan(fill.shifts() * dailyHours + onceHours, fill.shifts(), leftHours >= longestHours);
    }

    /** Returns the hours where all is done in one shift, however long. */
    double inOneShiftHours() {
        return daily(1) + once();
    }

    /** Books every step, daily work once for each shift. */
    void book(int shifts) {
        daily(shifts);
        once();
    }

    private double once() {
        return before() + pulls(span.innerductsOut()) + deadCables(span.deadCablesOut()) + sleeves() + after();
    }

    private double leastUsableHours() {
        return windowHours() * account.rate(RateKey.LEAST_USABLE_RATIO, rows);
    }

    double windowHours() {
        return account.rate(isAtNight() ? RateKey.NIGHT_WINDOW_HOURS : RateKey.DAY_WINDOW_HOURS, rows);
    }

    /** Returns whether the shifts are nights. */
    boolean isAtNight() {
        return span.isUnder(ZoneRule.NIGHT_ONLY);
    }

    private double daily(int shifts) {
        return account.book(EffortStep.BRIEFING, shifts, RateKey.BRIEFING_HOURS, rows)
                + dailyAt(SpanEnd.A, shifts)
                + dailyAt(SpanEnd.B, shifts)
                + account.book(EffortStep.SET_UP, shifts, RateKey.SET_UP_HOURS, rows)
                + account.book(EffortStep.TAKE_DOWN, shifts, RateKey.TAKE_DOWN_HOURS, rows);
    }

    /** Returns the elapsed hours that daily work at one vault takes in this many shifts. */
    double dailyAt(SpanEnd end, int shifts) {
        VaultWork vault = span.at(end);
        return at(end, EffortStep.TRAFFIC_CONTROL, shifts, RateKey.TRAFFIC_CONTROL_HOURS)
                + at(end, EffortStep.OPENING, shifts, RateKey.VAULT_OPENING_HOURS)
                + at(end, EffortStep.PUMPING, shifts * waterM3(vault), RateKey.PUMP_M3_PER_HOUR)
                + ventilating(end, shifts)
                + airTests(end, vault.wet() ? 2 * shifts : shifts)
                + at(end, EffortStep.CLOSING, shifts, RateKey.VAULT_CLOSING_HOURS);
    }

    /** Returns the longer of the air changes' time and the least time; nothing where crews do not enter. */
    private double ventilating(SpanEnd end, int shifts) {
        VaultWork vault = span.at(end);
        if (!vault.entered()) {
            return 0;
        }
        Purge purge = Purge.of(volumeM3(vault), account, vault.rows());
        return purge.takesLonger()
                ? at(end, EffortStep.VENTILATING, shifts * purge.airM3(), RateKey.BLOWER_M3_PER_HOUR)
                : at(end, EffortStep.VENTILATING, shifts, RateKey.PURGE_LEAST_HOURS);
    }

    private double airTests(SpanEnd end, int tests) {
        return at(end, EffortStep.AIR_TEST, span.at(end).entered() ? tests : 0, RateKey.AIR_TEST_HOURS);
    }

    /**
     * Tests at the duct's mouths when its plugs come out, again when its water has run out; the proof of the path; freeing what
     * is in it; and cutting the innerducts that run uncut through a vault.
     */
    private double before() {
        int tests = span.ductWaterM3() > 0 ? 2 : 1;
        return account.book(EffortStep.PUMPING, span.ductWaterM3(), RateKey.PUMP_M3_PER_HOUR, rows)
                + airTests(SpanEnd.A, tests)
                + airTests(SpanEnd.B, tests)
                + proof()
                + freeing(SpanEnd.A)
                + freeing(SpanEnd.B)
                + cutting(SpanEnd.A)
                + cutting(SpanEnd.B);
    }

    private double proof() {
        return account.book(EffortStep.PROOF, 1, RateKey.PROOF_PREPARING_HOURS, rows)
                + account.book(EffortStep.PROOF, span.lengthM(), RateKey.PROOF_M_PER_HOUR, rows);
    }

    private double freeing(SpanEnd end) {
        return at(end, EffortStep.FREEING, 1, RateKey.FREEING_VAULT_HOURS)
                + at(end, EffortStep.FREEING, span.cables(), RateKey.FREEING_CABLE_HOURS);
    }

    /** Only what is recorded as uncut is booked; an innerduct of which nothing is recorded is taken to end in the vault. */
    private double cutting(SpanEnd end) {
        return at(end, EffortStep.CUTTING, span.at(end).innerductsToCut(), RateKey.CUTTING_HOURS);
    }

    private double pulls(int count) {
        return account.book(EffortStep.PULLING, count, RateKey.PULL_PREPARING_HOURS, rows)
                + account.book(EffortStep.TEST_PULL, count, RateKey.TEST_PULL_HOURS, rows)
                + account.book(EffortStep.PULLING, count * span.lengthM(), RateKey.PULL_FEED_M_PER_HOUR, rows);
    }

    private double deadCables(int count) {
        return account.book(EffortStep.DEAD_CABLES, count, RateKey.DEAD_CABLE_HOURS, rows);
    }

    private double sleeves() {
        if (span.sleeves() == 0 || span.innerductsOut() > 1) {
            return 0;
        }
        return account.book(EffortStep.SLEEVES, 1, RateKey.SLEEVE_PREPARING_HOURS, rows)
                + account.book(EffortStep.SLEEVES, span.lengthM(), RateKey.RODDING_M_PER_HOUR, rows);
    }

    private double after() {
        double massKg = span.innerductM3() * account.rate(RateKey.HDPE_KG_PER_M3, rows);
        double aloneRatio = 1 - account.rate(RateKey.CHIPPING_ALONGSIDE_RATIO, rows);
        return account.book(EffortStep.CHIPPING, "", massKg, RateKey.CHIPPING_KG_PER_HOUR, rows, aloneRatio)
                + at(SpanEnd.A, EffortStep.SEALING, 1, RateKey.SEALING_HOURS)
                + at(SpanEnd.B, EffortStep.SEALING, 1, RateKey.SEALING_HOURS);
    }

    /** Returns the water to be pumped out of a vault in one shift. */
    double waterM3(VaultWork vault) {
        return vault.wet() ? volumeM3(vault) * account.rate(RateKey.VAULT_WATER_RATIO, vault.rows()) : 0;
    }

    private double volumeM3(VaultWork vault) {
        return vault.volumeM3().isPresent()
                ? vault.volumeM3().getAsDouble()
                : account.rate(RateKey.VAULT_VOLUME_M3, vault.rows());
    }

    private double at(SpanEnd end, EffortStep step, double quantity, RateKey key) {
        String place = end == SpanEnd.A ? "A" : "B";
        return account.book(step, place, quantity, key, span.at(end).rows(), elapsedRatio);
    }
}

package org.spanroom.effort;

import org.spanroom.model.effort.BuildItem;
import org.spanroom.model.effort.BuildMethod;
import org.spanroom.model.effort.CarbonItem;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateRows;
import org.spanroom.model.effort.Surface;
import org.spanroom.model.permit.ZoneRule;

/**
 * The cost of new ducts on the same path for the positions needed, and the emissions of their materials.
 *
 * <p>The cheaper of two ways is taken: an open trench wherever one may be cut and boring elsewhere, or boring all along.
 */
final class BuildCost {
    /** A count that is so little above a whole number is that number. */
    static final double WHOLE_TOLERANCE = 1e-9;

    private final EffortQuantities span;
    private final RateRows rows;
    private final Account account;
    private final int ducts;

    BuildCost(EffortQuantities span, Account account) {
        this.span = span;
        this.rows = span.rows();
        this.account = account;
        this.ducts =
                (int) Math.ceil(span.positionsNeeded() / account.rate(RateKey.NEW_DUCT_CABLES, rows) - WHOLE_TOLERANCE);
    }

    /** Meters of each way of laying. */
    record Laying(double trenchM, double boreM) {
        BuildMethod method() {
            if (trenchM == 0 && boreM == 0) {
                return BuildMethod.NONE;
            }
            if (trenchM == 0) {
                return BuildMethod.BORING;
            }
            return boreM == 0 ? BuildMethod.OPEN_TRENCH : BuildMethod.TRENCH_AND_BORING;
        }
    }

    int ducts() {
        return ducts;
    }

    /** Returns the cheaper way; an open trench where both cost the same. */
    Laying cheapest() {
        if (ducts == 0) {
            return new Laying(0, 0);
        }
        double trenchM = Math.max(0, span.lengthM() - span.metersUnder(ZoneRule.CUT_BAN));
        var trench = new Laying(trenchM, span.lengthM() - trenchM);
        var boring = new Laying(0, span.lengthM());
        return layingMoney(trench) <= layingMoney(boring) ? trench : boring;
    }

    /** Books every item and returns their sum; nothing where nothing is gained. */
    double book(Laying laying) {
        if (ducts == 0) {
            return 0;
        }
        double lengthM = span.lengthM();
        double sleeveM = RecoveryCost.sleeveM(span.buildSleeves(), span, account);
        double permits = Math.max(span.buildPermits(), account.rate(RateKey.LEAST_PERMITS, rows));
        double officeHours = permits * account.rate(RateKey.BUILD_PERMIT_OFFICE_HOURS, rows);
        return placing(laying, account)
                + surface(laying, account)
                + account.book(BuildItem.FURTHER_DUCTS, (ducts - 1) * lengthM, RateKey.FURTHER_DUCT_MONEY_PER_M, rows)
                + account.book(BuildItem.VAULT_ENTRIES, 2 * ducts, RateKey.VAULT_ENTRY_MONEY, rows)
                + account.book(BuildItem.SLEEVES, sleeveM, RateKey.SLEEVE_MONEY_PER_M, rows)
                + account.book(BuildItem.PERMITS, permits, RateKey.BUILD_PERMIT_MONEY, rows)
                + account.book(BuildItem.PERMITS, officeHours, RateKey.OFFICE_MONEY_PER_HOUR, rows)
                + account.book(BuildItem.ENGINEERING, lengthM, RateKey.BUILD_ENGINEERING_MONEY_PER_M, rows);
    }

    private double layingMoney(Laying laying) {
        return placing(laying, account.unwritten()) + surface(laying, account.unwritten());
    }

    private double placing(Laying laying, Account into) {
        double pits = laying.boreM() > 0 ? account.rate(RateKey.BORING_PITS, rows) : 0;
        return into.book(BuildItem.PLACING, laying.trenchM(), trenchRate(span.surface()), rows)
                + into.book(BuildItem.PLACING, laying.boreM(), boringRate(span.surface()), rows)
                + into.book(BuildItem.PLACING, pits, RateKey.BORING_PIT_MONEY, rows);
    }

    private double surface(Laying laying, Account into) {
        double cutM2 = cutM2(laying);
        double feesM2 = span.surface() == Surface.ROADWAY ? cutM2 : 0;
        return into.book(BuildItem.RESTORATION, cutM2, restorationRate(span.surface()), rows)
                + into.book(BuildItem.CUT_FEES, feesM2, RateKey.CUT_FEE_MONEY_PER_M2, rows);
    }

    private double cutM2(Laying laying) {
        return laying.trenchM() * account.rate(RateKey.TRENCH_WIDTH_M, rows);
    }

    static RateKey trenchRate(Surface surface) {
        return switch (surface) {
            case ROADWAY -> RateKey.TRENCH_ROADWAY_MONEY_PER_M;
            case SIDEWALK -> RateKey.TRENCH_SIDEWALK_MONEY_PER_M;
            case VERGE -> RateKey.TRENCH_VERGE_MONEY_PER_M;
        };
    }

    static RateKey boringRate(Surface surface) {
        return switch (surface) {
            case ROADWAY -> RateKey.BORING_ROADWAY_MONEY_PER_M;
            case SIDEWALK -> RateKey.BORING_SIDEWALK_MONEY_PER_M;
            case VERGE -> RateKey.BORING_VERGE_MONEY_PER_M;
        };
    }

    static RateKey restorationRate(Surface surface) {
        return switch (surface) {
            case ROADWAY -> RateKey.RESTORATION_ROADWAY_MONEY_PER_M2;
            case SIDEWALK -> RateKey.RESTORATION_SIDEWALK_MONEY_PER_M2;
            case VERGE -> RateKey.RESTORATION_VERGE_MONEY_PER_M2;
        };
    }

    /**
     * Emissions of materials by ICE.
     *
     * @param totalKg of new build, less those of the sleeves that recovery lays
     * @param digKg the part of it that does not depend on how many ducts there are: surface and encasement
     */
    record Carbon(double totalKg, double digKg) {}

    /** Books the emissions of materials and returns them. */
    Carbon bookCarbon(Laying laying) {
        double pvcKg = ducts * laying.trenchM() * account.rate(RateKey.PVC_DUCT_KG_PER_M, rows);
        double hdpeKg = ducts * laying.boreM() * account.rate(RateKey.HDPE_DUCT_KG_PER_M, rows);
        int newSleeves = ducts == 0 ? 0 : span.buildSleeves();
        double ductKg = account.book(CarbonItem.DUCTS_AVOIDED, pvcKg, RateKey.PVC_CO2E_KG_PER_KG, rows)
                + account.book(CarbonItem.DUCTS_AVOIDED, hdpeKg, RateKey.HDPE_CO2E_KG_PER_KG, rows);
        double digKg = bookDigKg(laying);
        double totalKg = ductKg
                + digKg
                + sleeves(CarbonItem.SLEEVES_AVOIDED, newSleeves, 1)
                + sleeves(CarbonItem.SLEEVES_LAID, span.sleeves(), -1);
        return new Carbon(totalKg, digKg);
    }

    private double bookDigKg(Laying laying) {
        double cutM2 = cutM2(laying);
        return switch (span.surface()) {
            case ROADWAY ->
                kg(CarbonItem.SURFACE_AVOIDED, cutM2, RateKey.ASPHALT_KG_PER_M2, RateKey.ASPHALT_CO2E_KG_PER_KG)
                        + kg(CarbonItem.SURFACE_AVOIDED, cutM2, RateKey.BASE_KG_PER_M2, RateKey.BASE_CO2E_KG_PER_KG)
                        + kg(
                                CarbonItem.ENCASEMENT_AVOIDED,
                                laying.trenchM(),
                                RateKey.ENCASEMENT_KG_PER_M,
                                RateKey.ENCASEMENT_CO2E_KG_PER_KG);
            case SIDEWALK -> kg(CarbonItem.SURFACE_AVOIDED, cutM2, RateKey.SLAB_KG_PER_M2, RateKey.SLAB_CO2E_KG_PER_KG);
            case VERGE -> 0;
        };
    }

    private double kg(CarbonItem item, double extent, RateKey mass, RateKey emission) {
        return account.book(item, extent * account.rate(mass, rows), emission, rows);
    }

    private double sleeves(CarbonItem item, int count, double sign) {
        double massKg = RecoveryCost.sleeveM(count, span, account) * account.rate(RateKey.SLEEVE_KG_PER_M, rows);
        return account.book(item, "", massKg, RateKey.SLEEVE_CO2E_KG_PER_KG, rows, sign);
    }
}

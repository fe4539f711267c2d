package org.spanroom.effort;

import static org.spanroom.effort.Lanes.add;
import static org.spanroom.effort.Lanes.set;

import java.util.Arrays;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.RateDraws;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateRows;
import org.spanroom.model.effort.Surface;
import org.spanroom.model.permit.ZoneRule;

/**
 * What recovering a span and new build on its path cost in every draw of the rates. Each amount is that of {@link EffortAssessor#costMoney}
 * and {@link EffortAssessor#newBuildMoney} for the draw, to the last bit: the same operations in the same order, each over all draws, which takes
 * a fraction of the time of one draw after another. A change of a formula in {@link SiteWork}, {@link RecoveryCost} or {@link BuildCost} is
 * made here too. Reusable; for one thread.
 */
public final class DrawnCosts {
    private final RateDraws draws;
    private final DrawnSiteWork work;
    private final double[] laborHours;
    private final double[] part;
    private final double[] needed;
    private final double[] massKg;
    private final double[] recycledKg;
    private final double[] waterM3;

    public DrawnCosts(RateDraws draws) {
        this.draws = draws;
        work = new DrawnSiteWork(draws);
        laborHours = new double[draws.count()];
        part = new double[draws.count()];
        needed = new double[draws.count()];
        massKg = new double[draws.count()];
        recycledKg = new double[draws.count()];
        waterM3 = new double[draws.count()];
    }

    /** Returns how many draws there are. */
    public int count() {
        return draws.count();
    }

    private double[] rate(RateKey key, RateRows at) {
        return draws.inUnit(key, at);
    }

    /** Sets money to the cost of recovery by draw. */
    public void recovery(EffortQuantities span, double[] money) {
        RateRows rows = span.rows();
        work.plan(span);
        labor(span, rows, money);
        add(money, work.siteHours, rate(RateKey.TRAFFIC_CONTROL_MONEY_PER_HOUR, rows));
        add(money, work.siteHours, rate(RateKey.EQUIPMENT_MONEY_PER_HOUR, rows));
        permits(span.recoveryPermits(), RateKey.PERMIT_MONEY, RateKey.PERMIT_OFFICE_HOURS, rows);
        add(money, part);
        add(money, 1, rate(RateKey.ENGINEERING_MONEY, rows));
        sleeves(span.sleeves(), span, rows, money);
        add(money, rate(RateKey.LUBRICANT_MONEY_PER_LITER, rows), lubricantLiters(span, rows));
        add(money, 2, rate(RateKey.SEAL_MONEY, rows));
        disposal(span, rows);
        add(money, part);
        double[] overheadRatio = rate(RateKey.OVERHEAD_RATIO, rows);
        double[] recyclingMoneyPerKg = rate(RateKey.RECYCLING_MONEY_PER_KG, rows);
        for (int i = 0; i < money.length; i++) {
            money[i] = money[i] + money[i] * overheadRatio[i] - recycledKg[i] * recyclingMoneyPerKg[i];
        }
    }

    private void labor(EffortQuantities span, RateRows rows, double[] money) {
        double[] travelHours = rate(RateKey.TRAVEL_HOURS, rows);
        double[] persons = rate(RateKey.CREW_PERSONS, rows);
        for (int i = 0; i < laborHours.length; i++) {
            laborHours[i] = (work.siteHours[i] + work.shifts[i] * travelHours[i]) * persons[i];
        }
        set(money, laborHours, rate(RateKey.LABOR_MONEY_PER_HOUR, rows));
        if (span.isUnder(ZoneRule.NIGHT_ONLY)) {
            double[] premiumRatio = rate(RateKey.NIGHT_PREMIUM_RATIO, rows);
            for (int i = 0; i < money.length; i++) {
                money[i] *= 1 + premiumRatio[i];
            }
        }
    }

    /** Sets the part to what permits cost, those that are known to be needed or the least number. */
    private void permits(int known, RateKey feeMoney, RateKey officeHours, RateRows rows) {
        double[] least = rate(RateKey.LEAST_PERMITS, rows);
        double[] hours = rate(officeHours, rows);
        double[] officeMoneyPerHour = rate(RateKey.OFFICE_MONEY_PER_HOUR, rows);
        for (int i = 0; i < needed.length; i++) {
            needed[i] = Math.max(known, least[i]);
        }
        set(part, needed, rate(feeMoney, rows));
        for (int i = 0; i < part.length; i++) {
            part[i] += needed[i] * hours[i] * officeMoneyPerHour[i];
        }
    }

    private void sleeves(int sleeves, EffortQuantities span, RateRows rows, double[] money) {
        double lengthM = span.lengthM();
        double[] tailM = rate(RateKey.SLEEVE_TAIL_M, rows);
        double[] sleeveMoneyPerM = rate(RateKey.SLEEVE_MONEY_PER_M, rows);
        for (int i = 0; i < money.length; i++) {
            money[i] += sleeves * (lengthM + 2 * tailM[i]) * sleeveMoneyPerM[i];
        }
    }

    private double[] lubricantLiters(EffortQuantities span, RateRows rows) {
        set(part, span.innerductsOut() * span.lengthM(), rate(RateKey.LUBRICANT_LITERS_PER_M, rows));
        return part;
    }

    /** Sets the part to what is paid for what comes out, and the recycled mass. */
    private void disposal(EffortQuantities span, RateRows rows) {
        set(massKg, span.innerductM3(), rate(RateKey.HDPE_KG_PER_M3, rows));
        set(recycledKg, massKg, rate(RateKey.RECYCLED_RATIO, rows));
        Arrays.fill(part, 0);
        whole(rate(RateKey.BAG_KG, rows), rate(RateKey.BAG_MONEY, rows));
        whole(rate(RateKey.LOAD_KG, rows), rate(RateKey.LOAD_MONEY, rows));
        work.waterM3(span, waterM3);
        double ductWaterM3 = span.ductWaterM3();
        double[] tippingMoneyPerKg = rate(RateKey.TIPPING_MONEY_PER_KG, rows);
        double[] waterMoneyPerM3 = rate(RateKey.WATER_MONEY_PER_M3, rows);
        for (int i = 0; i < part.length; i++) {
            part[i] = part[i]
                    + (massKg[i] - recycledKg[i]) * tippingMoneyPerKg[i]
                    + (ductWaterM3 + work.shifts[i] * waterM3[i]) * waterMoneyPerM3[i];
        }
    }

    private void whole(double[] unitKg, double[] unitMoney) {
        for (int i = 0; i < part.length; i++) {
            part[i] += Math.ceil(massKg[i] / unitKg[i] * (1 - RecoveryCost.WHOLE_TOLERANCE_RATIO)) * unitMoney[i];
        }
    }

    /** Sets money to the cost of new build by draw. */
    public void newBuild(EffortQuantities span, double[] money) {
        RateRows rows = span.rows();
        double lengthM = span.lengthM();
        double trenchM = Math.max(0, lengthM - span.metersUnder(ZoneRule.CUT_BAN));
        laying(span, trenchM, lengthM - trenchM, money);
        laying(span, 0, lengthM, part);
        for (int i = 0; i < money.length; i++) {
            money[i] = Math.min(money[i], part[i]);
        }
        double[] ducts = ducts(span, rows);
        double[] furtherMoneyPerM = rate(RateKey.FURTHER_DUCT_MONEY_PER_M, rows);
        double[] entryMoney = rate(RateKey.VAULT_ENTRY_MONEY, rows);
        for (int i = 0; i < money.length; i++) {
            money[i] = money[i] + (ducts[i] - 1) * lengthM * furtherMoneyPerM[i] + 2 * ducts[i] * entryMoney[i];
        }
        sleeves(span.buildSleeves(), span, rows, money);
        double[] permitMoney = rate(RateKey.BUILD_PERMIT_MONEY, rows);
        double[] officeHours = rate(RateKey.BUILD_PERMIT_OFFICE_HOURS, rows);
        double[] officeMoneyPerHour = rate(RateKey.OFFICE_MONEY_PER_HOUR, rows);
        double[] least = rate(RateKey.LEAST_PERMITS, rows);
        int known = span.buildPermits();
        for (int i = 0; i < money.length; i++) {
            double permits = Math.max(known, least[i]);
            money[i] = money[i] + permits * permitMoney[i] + permits * officeHours[i] * officeMoneyPerHour[i];
        }
        add(money, lengthM, rate(RateKey.BUILD_ENGINEERING_MONEY_PER_M, rows));
        for (int i = 0; i < money.length; i++) {
            money[i] = ducts[i] == 0 ? 0 : money[i];
        }
    }

    /** Returns how many new ducts the positions need that are in demand. */
    private double[] ducts(EffortQuantities span, RateRows rows) {
        double[] cables = rate(RateKey.NEW_DUCT_CABLES, rows);
        for (int i = 0; i < needed.length; i++) {
            needed[i] = Math.ceil(span.positionsNeeded() / cables[i] - BuildCost.WHOLE_TOLERANCE);
        }
        return needed;
    }

    /** Sets money to the cost of laying a duct over some meters of trench and some of bore, with the surface. */
    private void laying(EffortQuantities span, double trenchM, double boreM, double[] money) {
        RateRows rows = span.rows();
        double[] trenchMoneyPerM = rate(BuildCost.trenchRate(span.surface()), rows);
        double[] boringMoneyPerM = rate(BuildCost.boringRate(span.surface()), rows);
        double[] pits = rate(RateKey.BORING_PITS, rows);
        double[] pitMoney = rate(RateKey.BORING_PIT_MONEY, rows);
        double[] widthM = rate(RateKey.TRENCH_WIDTH_M, rows);
        double[] restorationMoneyPerM2 = rate(BuildCost.restorationRate(span.surface()), rows);
        double[] feeMoneyPerM2 = rate(RateKey.CUT_FEE_MONEY_PER_M2, rows);
        double pitsRatio = boreM > 0 ? 1 : 0;
        double feesRatio = span.surface() == Surface.ROADWAY ? 1 : 0;
        for (int i = 0; i < money.length; i++) {
            double cutM2 = trenchM * widthM[i];
            double placing =
                    trenchM * trenchMoneyPerM[i] + boreM * boringMoneyPerM[i] + pitsRatio * pits[i] * pitMoney[i];
            double surface = cutM2 * restorationMoneyPerM2[i] + feesRatio * cutM2 * feeMoneyPerM2[i];
            money[i] = placing + surface;
        }
    }
}

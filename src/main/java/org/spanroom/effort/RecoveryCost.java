package org.spanroom.effort;

import org.spanroom.model.effort.CostItem;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.MaterialFlow;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateRows;

/** The cost of recovering one span, item by item, and the material that the items are based on. */
final class RecoveryCost {
    static final double WHOLE_TOLERANCE_RATIO = 1e-9;

    private final EffortQuantities span;
    private final RateRows rows;
    private final Account account;
    private final SiteWork work;

    RecoveryCost(EffortQuantities span, Account account) {
        this.span = span;
        this.rows = span.rows();
        this.account = account;
        this.work = new SiteWork(span, account.unwritten());
    }

    /** Books every item and returns their sum. */
    double book(SiteWork.Plan plan) {
        double siteHours = plan.siteHours();
        double money = labor(plan)
                + account.book(CostItem.TRAFFIC_CONTROL, siteHours, RateKey.TRAFFIC_CONTROL_MONEY_PER_HOUR, rows)
                + account.book(CostItem.EQUIPMENT, siteHours, RateKey.EQUIPMENT_MONEY_PER_HOUR, rows)
                + permits()
                + account.book(CostItem.ENGINEERING, 1, RateKey.ENGINEERING_MONEY, rows)
                + account.book(CostItem.SLEEVES, sleeveM(), RateKey.SLEEVE_MONEY_PER_M, rows)
                + account.book(CostItem.LUBRICANT, lubricantLiters(), RateKey.LUBRICANT_MONEY_PER_LITER, rows)
                + account.book(CostItem.SEALS, 2, RateKey.SEAL_MONEY, rows)
                + disposal(plan);
        double overhead = account.book(CostItem.OVERHEAD, money, RateKey.OVERHEAD_RATIO, rows);
        double credit = account.book(CostItem.RECYCLING, "", recycledKg(), RateKey.RECYCLING_MONEY_PER_KG, rows, -1);
        return money + overhead + credit;
    }

    /** Returns all persons' hours, travel included. */
    double laborHours(SiteWork.Plan plan) {
        double paidHours = plan.siteHours() + plan.shifts() * account.rate(RateKey.TRAVEL_HOURS, rows);
        return paidHours * account.rate(RateKey.CREW_PERSONS, rows);
    }

    /** Returns the cost of one hour on site: the whole crew, traffic control and machines, with overhead. */
    double siteHourMoney() {
        double crewMoney = account.rate(RateKey.CREW_PERSONS, rows)
                * account.rate(RateKey.LABOR_MONEY_PER_HOUR, rows)
                * premiumRatio();
        double onSiteMoney = account.rate(RateKey.TRAFFIC_CONTROL_MONEY_PER_HOUR, rows)
                + account.rate(RateKey.EQUIPMENT_MONEY_PER_HOUR, rows);
        return (crewMoney + onSiteMoney) * (1 + account.rate(RateKey.OVERHEAD_RATIO, rows));
    }

    private double premiumRatio() {
        return work.isAtNight() ? 1 + account.rate(RateKey.NIGHT_PREMIUM_RATIO, rows) : 1;
    }

    MaterialFlow material(SiteWork.Plan plan) {
        return new MaterialFlow(
                innerductKg(),
                recycledKg(),
                (int) whole(innerductKg(), RateKey.BAG_KG),
                (int) whole(innerductKg(), RateKey.LOAD_KG),
                waterM3(plan),
                sleeveM(),
                lubricantLiters(),
                recycledKg() * account.rate(RateKey.WARM_RECYCLED_KG_PER_KG, rows));
    }

    private double labor(SiteWork.Plan plan) {
        return account.book(CostItem.LABOR, "", laborHours(plan), RateKey.LABOR_MONEY_PER_HOUR, rows, premiumRatio());
    }

    private double permits() {
        double needed = Math.max(span.recoveryPermits(), account.rate(RateKey.LEAST_PERMITS, rows));
        double officeHours = needed * account.rate(RateKey.PERMIT_OFFICE_HOURS, rows);
        return account.book(CostItem.PERMITS, needed, RateKey.PERMIT_MONEY, rows)
                + account.book(CostItem.PERMITS, officeHours, RateKey.OFFICE_MONEY_PER_HOUR, rows);
    }

    private double disposal(SiteWork.Plan plan) {
        double massKg = innerductKg();
        return account.book(CostItem.DISPOSAL, whole(massKg, RateKey.BAG_KG), RateKey.BAG_MONEY, rows)
                + account.book(CostItem.DISPOSAL, whole(massKg, RateKey.LOAD_KG), RateKey.LOAD_MONEY, rows)
                + account.book(CostItem.DISPOSAL, massKg - recycledKg(), RateKey.TIPPING_MONEY_PER_KG, rows)
                + account.book(CostItem.DISPOSAL, waterM3(plan), RateKey.WATER_MONEY_PER_M3, rows);
    }

    private double waterM3(SiteWork.Plan plan) {
        return span.ductWaterM3() + plan.shifts() * (work.waterM3(span.from()) + work.waterM3(span.to()));
    }

    double innerductKg() {
        return span.innerductM3() * account.rate(RateKey.HDPE_KG_PER_M3, rows);
    }

    double recycledKg() {
        return innerductKg() * account.rate(RateKey.RECYCLED_RATIO, rows);
    }

    private double sleeveM() {
        return sleeveM(span.sleeves(), span, account);
    }

    /** Returns the length of this many sleeves with both ends. */
    static double sleeveM(int sleeves, EffortQuantities span, Account account) {
        return sleeves * (span.lengthM() + 2 * account.rate(RateKey.SLEEVE_TAIL_M, span.rows()));
    }

    private double lubricantLiters() {
        return span.innerductsOut() * span.lengthM() * account.rate(RateKey.LUBRICANT_LITERS_PER_M, rows);
    }

    private double whole(double massKg, RateKey unitKg) {
        return Math.ceil(massKg / account.rate(unitKg, rows) * (1 - WHOLE_TOLERANCE_RATIO));
    }
}

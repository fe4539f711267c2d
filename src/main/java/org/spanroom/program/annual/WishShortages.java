package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.List;

/** Says of what connections that have to be served are short in a plan that does not serve them. */
final class WishShortages {
    private final WishNetwork network;
    private final WishPlan plan;

    private WishShortages(WishNetwork network, WishPlan plan) {
        this.network = network;
        this.plan = plan;
    }

    static List<Shortage> of(WishNetwork network, WishPrices prices, SetUpLevels levels, YearPlan found) {
        var plan = new WishPlan(network, prices, levels);
        plan.set(found);
        plan.ignoreLimits();
        var shortages = new WishShortages(network, plan);
        List<Shortage> all = new ArrayList<>();
        for (int demand = 0; demand < network.demands(); demand++) {
            if (network.wish(demand).isMust() && plan.placed(demand) == null) {
                all.add(shortages.of(demand));
            }
        }
        return all;
    }

    private Shortage of(int demand) {
        int last = plan.lastYear(demand);
        WishPlan.Offer offer = last < 0 ? null : plan.offer(demand, last, Double.POSITIVE_INFINITY, null);
        int mark = plan.state().mark();
        if (offer == null || !plan.place(demand, offer)) {
            return new Shortage.NoWay(demand);
        }
        List<Double> shortBy = new ArrayList<>();
        for (int resource = 0; resource < network.problem().resources(); resource++) {
            double left = 0;
            for (int year = 0; year <= last; year++) {
                left += network.problem().limits().get(year).get(resource)
                        - plan.state().account().used(year, resource);
            }
            shortBy.add(Math.max(0, -left));
        }
        plan.state().undo(mark);
        plan.restore(demand, null);
        return new Shortage.NotServed(demand, shortBy);
    }
}

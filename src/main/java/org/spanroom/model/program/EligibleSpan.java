package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.List;

/**
 * A span that a program may recover.
 *
 * @param facts what is known of it
 * @param duct what its duct offers; its recovery is present
 * @param section number of its section in the network
 * @param bin its place among the ducts of the section
 * @param budgetMoney its cost as it counts against the budget, done alone
 * @param worthMoney what recovering it is worth by itself, in the first year; 0 where only a connection or a must makes it worth anything
 * @param leadDays days from applying for its permits, or from notice, to the first day of work
 * @param checkDays days that its field check comes before the work; 0 where none is listed
 * @param notBefore the first day on which it can be done: permits are issued, its field check is done, and no embargo applies
 * @param closures days on which it cannot be done
 * @param isMust whether it must be in the program
 */
public record EligibleSpan(
        SpanFacts facts,
        DuctOffer duct,
        int section,
        int bin,
        double budgetMoney,
        double worthMoney,
        int leadDays,
        int checkDays,
        LocalDate notBefore,
        List<Closure> closures,
        boolean isMust) {
    public EligibleSpan {
        closures = List.copyOf(closures);
    }

    public DuctOffer.Recovery recovery() {
        return duct.recovery().orElseThrow();
    }

    /** Returns its cost against the budget over its cost with all rates at their values. */
    public double budgetRatio() {
        double money = recovery().costs().money();
        return money > 0 ? budgetMoney / money : 1;
    }
}

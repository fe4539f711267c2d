package org.spanroom.pipeline;

import org.spanroom.model.effort.Cents;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.rank.SpanOffer;

/**
 * What new build costs where one trench or bore serves all ranked spans of a section: that of the span whose own new build costs most, and
 * the ducts of the others in the same trench or bore. All rates are at their values. Two numbers are kept of each span.
 */
final class SharedBuild {
    /** Memory for each span. */
    static final int SPAN_BYTES = 2 * Float.BYTES;

    private final float[] ownMoney;
    private final float[] besideMoney;

    SharedBuild(int spans) {
        ownMoney = new float[spans];
        besideMoney = new float[spans];
    }

    /** Takes a ranked span; each span once, several spans at a time by several threads. */
    void add(int number, Effort effort, SpanOffer.NewDuctCost newDuct) {
        add(number, effort.newBuildMoney(), effort.newBuild().ducts(), newDuct.furtherMoney());
    }

    /**
     * Takes a ranked span by its figures.
     *
     * @param buildMoney cost of its new build alone
     * @param ducts number of new ducts that it takes
     * @param furtherDuctMoney cost of one of them in a trench or bore of another
     */
    void add(int number, double buildMoney, double ducts, double furtherDuctMoney) {
        ownMoney[number] = (float) buildMoney;
        besideMoney[number] = (float) (ducts * furtherDuctMoney);
    }

    /**
     * Returns what new build costs for some spans of one section.
     *
     * @param numbers the ranked spans of the section
     */
    double cents(int... numbers) {
        double dearest = 0;
        double allBeside = 0;
        double besideOfDearest = 0;
        for (int number : numbers) {
            double beside = Math.min(ownMoney[number], besideMoney[number]);
            allBeside += beside;
            if (ownMoney[number] > dearest) {
                dearest = ownMoney[number];
                besideOfDearest = beside;
            }
        }
        return Cents.of(dearest + allBeside - besideOfDearest);
    }
}

package org.spanroom.corpus;

import java.util.Locale;

/** Counts of right readings over spans of one class, beside what an ideal reader would reach. */
final class Tally {
    int spans;
    int totalWithin2;
    int totalWithin5;
    int countRight;
    int exact;
    int steady;
    int farOff;
    int arcs;
    int radiusWithin;
    int knowable2;
    int knowable2Right;
    int knowable5;
    int knowable5Right;
    int knowableArcs;
    int knowableArcsRight;
    double idealWithin2;
    double idealWithin5;
    double idealRadius;

    void add(Reading reading) {
        spans++;
        totalWithin2 += reading.totalErrorDeg() <= 2 ? 1 : 0;
        totalWithin5 += reading.totalErrorDeg() <= 5 ? 1 : 0;
        countRight += reading.countRight() ? 1 : 0;
        exact += reading.exact() ? 1 : 0;
        steady += reading.steady() ? 1 : 0;
        farOff += reading.totalErrorDeg() > Reading.FAR_OFF_DEG ? 1 : 0;
        arcs += reading.arcs();
        radiusWithin += reading.radiiRight();
        boolean knows2 = reading.idealWithin2() >= Reading.TARGET_WITHIN_2;
        knowable2 += knows2 ? 1 : 0;
        knowable2Right += knows2 && reading.totalErrorDeg() <= 2 ? 1 : 0;
        boolean knows5 = reading.idealWithin5() >= Reading.TARGET_WITHIN_5;
        knowable5 += knows5 ? 1 : 0;
        knowable5Right += knows5 && reading.totalErrorDeg() <= 5 ? 1 : 0;
        knowableArcs += reading.knowableArcs();
        knowableArcsRight += reading.knowableRight();
        idealWithin2 += reading.idealWithin2();
        idealWithin5 += reading.idealWithin5();
        idealRadius += reading.idealRadii();
    }

    String row(String name) {
        return String.format(
                Locale.ROOT,
                "%-34s %6d  %s %s  %s %s  %s %s  %6d %6d  %6d  %s %s\n",
                name,
                spans,
                percent(totalWithin2, spans),
                percent(idealWithin2, spans),
                percent(totalWithin5, spans),
                percent(idealWithin5, spans),
                percent(countRight, spans),
                percent(exact, spans),
                farOff,
                spans - steady,
                arcs,
                percent(radiusWithin, arcs),
                percent(idealRadius, arcs));
    }

    /**
     * Returns one line for each target: over all spans, what an ideal reader reaches over the same, and over those spans or
     * arcs alone where an ideal reader's own chance is as high as the target.
     */
    String targets() {
        return String.format(
                        Locale.ROOT, "%-52s %6s %6s %6s %9s %6s\n", "", "target", "all", "ideal", "knowable", "right")
                + target("total deflection within 2 degrees, % of spans", Reading.TARGET_WITHIN_2)
                + percent(totalWithin2, spans) + percent(idealWithin2, spans)
                + knowable(knowable2, knowable2Right)
                + target("total deflection within 5 degrees, % of spans", Reading.TARGET_WITHIN_5)
                + percent(totalWithin5, spans) + percent(idealWithin5, spans)
                + knowable(knowable5, knowable5Right)
                + target("number of bends over 10 degrees right, % of spans", Reading.TARGET_COUNT)
                + percent(countRight, spans) + "\n"
                + target("radius within 15 % where five vertices show, % of arcs", Reading.TARGET_RADIUS)
                + percent(radiusWithin, arcs) + percent(idealRadius, arcs)
                + knowable(knowableArcs, knowableArcsRight);
    }

    private static String target(String name, double ratio) {
        return String.format(Locale.ROOT, "%-54s %4.0f  ", name, 100 * ratio);
    }

    private static String knowable(int whole, int right) {
        return String.format(Locale.ROOT, " %9d %s\n", whole, percent(right, whole));
    }

    static String header() {
        return String.format(
                Locale.ROOT,
                "%-34s %6s  %6s %6s  %6s %6s  %6s %6s  %6s %6s  %6s  %6s %6s\n",
                "class",
                "spans",
                "<=2dg",
                "ideal",
                "<=5dg",
                "ideal",
                "count",
                "exact",
                ">40dg",
                "shaky",
                "arcs",
                "r15%",
                "ideal");
    }

    static String percent(double part, int whole) {
        return whole == 0 ? "     -" : String.format(Locale.ROOT, "%6.1f", 100 * part / whole);
    }
}

package org.spanroom.corpus;

import java.util.Locale;

/** Counts of right readings over spans of one class, beside what an ideal reader would reach. */
final class Tally {
    int spans;
    int totalWithin2;
    int totalWithin5;
    int countRight;
    int arcs;
    int radiusWithin;
    double idealWithin2;
    double idealWithin5;
    double idealRadius;

    void add(Reading reading) {
        spans++;
        totalWithin2 += reading.totalErrorDeg() <= 2 ? 1 : 0;
        totalWithin5 += reading.totalErrorDeg() <= 5 ? 1 : 0;
        countRight += reading.countRight() ? 1 : 0;
        arcs += reading.arcs();
        radiusWithin += reading.radiiRight();
        idealWithin2 += reading.idealWithin2();
        idealWithin5 += reading.idealWithin5();
        idealRadius += reading.idealRadii();
    }

    String row(String name) {
        return String.format(
                        Locale.ROOT,
                        "%-34s %6d  %s %s  %s %s  %s  %6d  %s %s%n",
                        name,
                        spans,
                        percent(totalWithin2, spans),
                        percent(idealWithin2, spans),
                        percent(totalWithin5, spans),
                        percent(idealWithin5, spans),
                        percent(countRight, spans),
                        arcs,
                        percent(radiusWithin, arcs),
                        percent(idealRadius, arcs))
                .replace(System.lineSeparator(), "\n");
    }

    static String header() {
        return String.format(
                        Locale.ROOT,
                        "%-34s %6s  %6s %6s  %6s %6s  %6s  %6s  %6s %6s%n",
                        "class",
                        "spans",
                        "<=2dg",
                        "ideal",
                        "<=5dg",
                        "ideal",
                        "count",
                        "arcs",
                        "r15%",
                        "ideal")
                .replace(System.lineSeparator(), "\n");
    }

    private static String percent(double part, int whole) {
        return whole == 0 ? "     -" : String.format(Locale.ROOT, "%6.1f", 100 * part / whole);
    }
}

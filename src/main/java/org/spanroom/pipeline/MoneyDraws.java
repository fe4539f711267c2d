package org.spanroom.pipeline;

import java.util.Arrays;
import java.util.Optional;
import org.spanroom.effort.DrawnCosts;
import org.spanroom.model.OrderStatistics;
import org.spanroom.model.effort.Cents;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.rank.UncertaintySettings;

/** What recovery and new build cost in each draw of the rates: those of one span, or their sums over several. */
final class MoneyDraws {
    /** Of a span without innerducts to remove, or where nothing is drawn. */
    static final MoneyDraws NONE = new MoneyDraws(new double[0], new double[0]);

    private final double[] recoveryMoney;
    private final double[] newBuildMoney;

    private MoneyDraws(double[] recoveryMoney, double[] newBuildMoney) {
        this.recoveryMoney = recoveryMoney;
        this.newBuildMoney = newBuildMoney;
    }

    static MoneyDraws of(EffortQuantities span, DrawnCosts costs) {
        MoneyDraws draws = zeros(costs.count());
        costs.recovery(span, draws.recoveryMoney);
        costs.newBuild(span, draws.newBuildMoney);
        return draws;
    }

    private static MoneyDraws zeros(int count) {
        return new MoneyDraws(new double[count], new double[count]);
    }

    /** Sums over spans, drawing by drawing, in cents; for one thread at a time. */
    static final class Sums {
        private final double[] recoveryCents;
        private final double[] newBuildCents;

        Sums(int drawings) {
            recoveryCents = new double[drawings];
            newBuildCents = new double[drawings];
        }

        void add(MoneyDraws span) {
            for (int i = 0; i < span.recoveryMoney.length; i++) {
                recoveryCents[i] += Cents.of(span.recoveryMoney[i]);
                newBuildCents[i] += Cents.of(span.newBuildMoney[i]);
            }
        }

        void addAll(Sums other) {
            for (int i = 0; i < recoveryCents.length; i++) {
                recoveryCents[i] += other.recoveryCents[i];
                newBuildCents[i] += other.newBuildCents[i];
            }
        }

        MoneyDraws draws() {
            return new MoneyDraws(
                    Arrays.stream(recoveryCents).map(Cents::money).toArray(),
                    Arrays.stream(newBuildCents).map(Cents::money).toArray());
        }
    }

    /** Returns money saved for each unit of money spent on recovery, by drawing. */
    double[] savingRatios() {
        double[] ratios = savingMoney();
        for (int i = 0; i < ratios.length; i++) {
            ratios[i] = recoveryMoney[i] > 0 ? ratios[i] / recoveryMoney[i] : 0;
        }
        return ratios;
    }

    /** Returns the ranges between the percentiles of the settings; empty where nothing was drawn. */
    Optional<MoneyRanges> ranges(UncertaintySettings settings) {
        return ranges(settings, new OrderStatistics());
    }

    /** Returns the same ranges, found by what a thread finds them by. */
    Optional<MoneyRanges> ranges(UncertaintySettings settings, OrderStatistics by) {
        return recoveryMoney.length == 0
                ? Optional.empty()
                : Optional.of(new MoneyRanges(
                        range(recoveryMoney, settings, by),
                        range(newBuildMoney, settings, by),
                        range(savingMoney(), settings, by)));
    }

    private double[] savingMoney() {
        double[] saved = new double[recoveryMoney.length];
        for (int i = 0; i < saved.length; i++) {
            saved[i] = newBuildMoney[i] - recoveryMoney[i];
        }
        return saved;
    }

    private static MoneyRange range(double[] drawnMoney, UncertaintySettings settings, OrderStatistics by) {
        return MoneyRange.of(drawnMoney, settings.moneyLowRatio(), settings.moneyHighRatio(), by);
    }
}

package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.TreeMap;
import org.spanroom.config.RunConfig;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.ScoringSettings;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.report.ReportScore;
import org.spanroom.rank.Rescoring;

/**
 * The values of the criteria of spans that are read back, also of criteria whose weight is 0: the page may raise it. A criterion whose quantity
 * the run did not write is left out.
 */
final class ReportValues {
    private static final int FIRST_ROWS = 64;

    private final ScoringSettings settings;
    private final List<CriterionInfo> criteria;
    private final RecordedScores scores;
    private double[][] valueRatios;
    private double[][] quantities;
    private int rows;

    ReportValues(RunConfig config, List<String> columns) {
        settings = config.scoring();
        var even = new Rescoring(evenly(settings, List.of()), config.room());
        List<String> missing = RecordedScores.missing(even, columns).stream()
                .map(CriterionInfo::key)
                .toList();
        var scoring = new Rescoring(evenly(settings, missing), config.room());
        criteria = scoring.criteria();
        scores = new RecordedScores(scoring, columns);
        valueRatios = new double[criteria.size()][FIRST_ROWS];
        quantities = new double[criteria.size()][FIRST_ROWS];
    }

    /** A value depends on the curve alone, so any weight finds it. */
    private static ScoringSettings evenly(ScoringSettings settings, List<String> without) {
        var even = new TreeMap<String, ScoringSettings.Criterion>();
        settings.criteria()
                .forEach((key, criterion) ->
                        even.put(key, new ScoringSettings.Criterion(without.contains(key) ? 0 : 1, criterion.curve())));
        return new ScoringSettings(
                even,
                settings.gates(),
                settings.unknownConsentExcludes(),
                settings.hardVaultKinds(),
                settings.hardVaultSurfaces(),
                settings.knowledge());
    }

    /** Adds the next span. */
    void add(RecordedSpans.Row row) {
        if (!criteria.isEmpty() && rows == valueRatios[0].length) {
            for (int place = 0; place < valueRatios.length; place++) {
                valueRatios[place] = Arrays.copyOf(valueRatios[place], 2 * rows);
                quantities[place] = Arrays.copyOf(quantities[place], 2 * rows);
            }
        }
        Score score = scores.of(row);
        for (int place = 0; place < criteria.size(); place++) {
            Score.Part part = score.part(place);
            valueRatios[place][rows] = part.valueRatio();
            quantities[place][rows] = part.quantityInUnit();
        }
        rows++;
    }

    /**
     * One part of a span's score.
     *
     * @param weightRatio the criterion's weight, relative to the other weights
     */
    record Part(String key, double quantityInUnit, double valueRatio, double weightRatio) {}

    /** Returns the parts of the score of a span that have a weight, in their order. */
    List<Part> parts(int row) {
        var parts = new ArrayList<Part>();
        for (int place = 0; place < criteria.size(); place++) {
            double weight = weightRatio(place);
            if (weight > 0) {
                String key = criteria.get(place).key();
                parts.add(new Part(key, quantities[place][row], valueRatios[place][row], weight));
            }
        }
        return parts;
    }

    /** A config names every criterion. */
    private ScoringSettings.Criterion setting(CriterionInfo criterion) {
        return Objects.requireNonNull(settings.criteria().get(criterion.key()));
    }

    private double weightRatio(int place) {
        return setting(criteria.get(place)).weightRatio();
    }

    /** Returns what the page ranks again with. */
    ReportScore score() {
        var all = new ArrayList<ReportScore.Criterion>();
        for (int place = 0; place < criteria.size(); place++) {
            CriterionInfo info = criteria.get(place);
            all.add(new ReportScore.Criterion(
                    info.key(),
                    info.unit(),
                    weightRatio(place),
                    setting(info).curve(),
                    Arrays.copyOf(valueRatios[place], rows)));
        }
        return new ReportScore(all);
    }
}

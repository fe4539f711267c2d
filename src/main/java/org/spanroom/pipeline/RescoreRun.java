package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.InputException;
import org.spanroom.input.RecordedLayer;
import org.spanroom.input.RecordedRow;
import org.spanroom.model.CriterionInfo;
import org.spanroom.model.RescoredSpan;
import org.spanroom.model.ScoringSettings;
import org.spanroom.output.LayerOptions;
import org.spanroom.output.OutputSettings;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RescoredWriter;
import org.spanroom.rank.Rescoring;

/**
 * Another scoring on the spans of an earlier run: weights, curves and gates may be others, everything else is read back as the run
 * wrote it. Holds all spans at once.
 */
public final class RescoreRun {
    private final Path from;
    private final Progress progress;

    public RescoreRun(Path from, Progress progress) {
        this.from = from;
        this.progress = progress;
    }

    /**
     * What came out.
     *
     * @param spans the best first
     * @param files names in the folder
     */
    public record RescoreSummary(List<RescoredSpan> spans, Path folder, List<String> files) {
        public RescoreSummary {
            spans = List.copyOf(spans);
            files = List.copyOf(files);
        }
    }

    /**
     * Ranks anew and writes.
     *
     * @param scoring a file of scoring, as the config's section
     * @throws InputException if the folder holds no such run, or the scoring asks for what the run did not reckon
     * @throws org.spanroom.output.OutputException if the results cannot be written
     */
    public RescoreSummary run(Path scoring, Path folder, boolean overwrite, Instant writtenAt) {
        RunConfig recorded = ConfigReader.readRecorded(RecordedRun.read(from).file());
        RunConfig config = ConfigReader.withSection(recorded, "scoring", scoring);
        demandSameQuantities(recorded.scoring(), config.scoring(), scoring);
        try (var layer = RecordedLayer.open(from, "spans")) {
            ReferenceSystem crs = layer.crs().orElseGet(ReferenceSystem::crs84);
            var settings = new OutputSettings(folder, overwrite, crs, Set.of(), 1);
            var writer = new RescoredWriter(settings, new LayerOptions(crs, writtenAt));
            progress.begin("rank spans anew", -1);
            var rescoring = new Rescoring(config.scoring());
            List<RescoredSpan> spans = Rescoring.ranked(read(layer, rescoring, scoring));
            progress.end(String.format(Locale.ROOT, "%,d spans", spans.size()));
            var rescored = new RescoredWriter.Rescored(rescoring.criteria(), layer.columns(), spans);
            return new RescoreSummary(spans, folder, writer.write(rescored, from, ConfigReader.asMap(config)));
        }
    }

    private static List<RescoredSpan> read(RecordedLayer layer, Rescoring rescoring, Path scoring) {
        List<String> columns = layer.columns();
        int[] quantities = rescoring.criteria().stream()
                .mapToInt(criterion -> quantityPlace(criterion, columns, scoring))
                .toArray();
        int id = columns.indexOf("span_id");
        int exclusions = columns.indexOf("exclusions");
        int cautions = columns.indexOf("cautions");
        var spans = new ArrayList<RescoredSpan>();
        layer.read(columns, row -> {
            double[] found = new double[quantities.length];
            for (int i = 0; i < found.length; i++) {
                double number = row.number(quantities[i]);
                found[i] = Double.isNaN(number) ? 0 : number;
            }
            Set<String> reasons = new HashSet<>(keys(row, exclusions));
            reasons.addAll(keys(row, cautions));
            var verdict = rescoring.verdict(reasons);
            spans.add(new RescoredSpan(
                    row.text(id), row.values(), row.lonLat(), OptionalInt.empty(), rescoring.score(found), verdict));
        });
        return spans;
    }

    private static int quantityPlace(CriterionInfo criterion, List<String> columns, Path scoring) {
        int place = columns.indexOf(criterion.quantityColumn());
        if (place < 0) {
            throw new InputException(
                    scoring,
                    "criterion '" + criterion.key() + "' has a weight, and the run did not reckon its quantity",
                    "Make the run again with this scoring, or give the criterion the weight 0.");
        }
        return place;
    }

    /** Reasons that excluded stand in one column, those whose gate was open in the other, among the cautions. */
    private static List<String> keys(RecordedRow row, int place) {
        return place < 0 ? List.of() : List.of(row.text(place).split(";", -1));
    }

    /** What quantities and reasons themselves go by cannot change without another run. */
    private void demandSameQuantities(ScoringSettings before, ScoringSettings now, Path scoring) {
        boolean same = before.unknownConsentExcludes() == now.unknownConsentExcludes()
                && before.hardVaultKinds().equals(now.hardVaultKinds())
                && before.hardVaultSurfaces().equals(now.hardVaultSurfaces())
                && before.knowledge().equals(now.knowledge());
        if (!same) {
            throw new InputException(
                    scoring,
                    "it changes unknown_consent_excludes, hard_vault_kinds, hard_vault_surfaces or knowledge, which the run in "
                            + from + " has reckoned with",
                    "Change weights, curves and gates only, or make the run again.");
        }
    }
}

package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.spanroom.config.OutputConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.InputException;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.output.OutputSettings;
import org.spanroom.rank.Ranking;

/** Parts that several commands need, as a config asks for them. */
final class ConfiguredParts {
    private ConfiguredParts() {}

    /** Returns what the config says of getting at a vault. */
    static VaultAccess access(RunConfig config) {
        return new VaultAccess(config.vaultKinds(), config.rates());
    }

    static Ranking ranking(RunConfig config, LearnedChances learned) {
        return new Ranking(config.scoring(), config.room(), config.permit().findOnDate(), learned);
    }

    /** Returns where and how the results of a run are written. */
    static OutputSettings settings(RunConfig config, boolean overwrite, ReferenceSystem crs) {
        return new OutputSettings(
                config.output().resultsFolder(),
                overwrite,
                crs,
                Set.copyOf(config.output().formats()),
                ColumnGroup.named(config.output().columns()),
                config.units(),
                SpanRun.threads(config));
    }

    /** Returns the reference system that results are asked in, before any work is done for them. */
    static Optional<ReferenceSystem> askedCrs(OutputConfig output) {
        try {
            return output.crs().map(ReferenceSystem::parse);
        } catch (IllegalArgumentException e) {
            String asked = output.crs().orElse("");
            throw new InputException(
                    Path.of("output.crs"),
                    "the reference system '" + asked + "' for the results is not known: " + e.getMessage(),
                    "Name one such as EPSG:2263 with --output-crs or output.crs.",
                    e);
        }
    }
}

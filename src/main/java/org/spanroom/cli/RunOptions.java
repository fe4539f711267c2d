package org.spanroom.cli;

import org.jspecify.annotations.Nullable;
import org.spanroom.config.RunConfig;
import org.spanroom.model.UnitSystem;
import picocli.CommandLine.Option;

/** The options that say how a run works. */
final class RunOptions {
    @Option(names = "--strict", description = "End with code 4 if any finding needs a fix.")
    boolean strict;

    @Option(
            names = "--no-uncertainty",
            description = "Skip the simulation: no confidence columns and no field checks. Faster.")
    boolean noUncertainty;

    @Option(
            names = "--threads",
            paramLabel = "N",
            converter = WholeNumber.OfThreads.class,
            description = "Number of threads; results are the same for any number. By default one for each processor.")
    @Nullable
    Integer threads;

    @Option(
            names = "--units",
            paramLabel = "SYSTEM",
            converter = OptionWord.OfUnits.class,
            completionCandidates = OptionWord.OfUnits.class,
            description = "Units on the screen and of added columns: metric or us; the config's by default.")
    @Nullable
    UnitSystem units;

    @Option(
            names = "--json",
            description = "Print the summary as one JSON object and nothing else; progress is on standard error.")
    boolean json;

    RunConfig apply(RunConfig base) {
        RunConfig config = strict ? base.withStrict(true) : base;
        config = noUncertainty ? config.withUncertainty(config.uncertainty().withSimulated(false)) : config;
        config = units == null ? config : config.withUnits(units);
        return threads == null ? config : config.withThreads(threads);
    }
}

package org.spanroom.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.sample.DemoCity;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code sample}: the invented demo city, at any size. */
@Command(
        name = "sample",
        mixinStandardHelpOptions = true,
        usageHelpWidth = 80,
        sortOptions = false,
        header = "Write an invented city to try the tool.",
        description = {
            "Write an invented city, with the usual faults of real data, to try the tool or",
            "to measure its speed. The same size and seed give the same bytes.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {SpanroomCommand.EXIT_0, SpanroomCommand.EXIT_1, SpanroomCommand.EXIT_2, SpanroomCommand.EXIT_5},
        footerHeading = SpanroomCommand.EXAMPLES_HEADING,
        footer = {
            "  spanroom sample --output city",
            "  spanroom sample --spans 10000 --seed 1 --output city-1 --format geopackage"
        })
final class SampleCommand implements Callable<Integer> {
    @Option(
            names = "--spans",
            paramLabel = "N",
            converter = WholeNumber.OfSpans.class,
            description = "Approximate number of spans. By default ${DEFAULT-VALUE}.")
    int spans = DemoCity.DEMO_SPANS;

    @Option(
            names = "--seed",
            paramLabel = "S",
            converter = WholeNumber.OfSeeds.class,
            description = "Number of the city. By default ${DEFAULT-VALUE}.")
    long seed = DemoCity.DEMO_SEED;

    @Option(
            names = "--output",
            paramLabel = "FOLDER",
            required = true,
            description = "Folder to write to, new or empty.")
    @Nullable
    Path folder;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            converter = OptionWord.OfSample.class,
            completionCandidates = OptionWord.OfSample.class,
            description = "Format of routes and vaults: ${COMPLETION-CANDIDATES}. By default geojson.")
    DemoCity.Format format = DemoCity.Format.GEOJSON;

    private final Console console;

    SampleCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (folder == null) {
            throw new IllegalStateException("picocli has not set --output");
        }
        DemoCity.Summary summary = write(folder);
        console.summary(String.format(
                Locale.ROOT,
                "%,d spans laid out as %,d routes between %,d vaults, with %,d faults on purpose, in %s%n",
                summary.spans(),
                summary.routes(),
                summary.vaults(),
                summary.faults(),
                folder));
        return ExitCode.OK;
    }

    /** Writes the city beside the folder and moves it in when it is whole, so that one that is stopped leaves nothing. */
    private DemoCity.Summary write(Path whole) {
        if (isFilled(whole)) {
            throw new OutputException(whole, "exists and is not empty", "Choose another folder.");
        }
        try (OutputFolder place = OutputFolder.create(whole, false, "known-faults.csv")) {
            DemoCity.Summary summary = DemoCity.write(spans, seed, place.path(), format);
            place.commit();
            return summary;
        }
    }

    private static boolean isFilled(Path whole) {
        if (!Files.isDirectory(whole)) {
            return false;
        }
        try (Stream<Path> entries = Files.list(whole)) {
            return entries.findAny().isPresent();
        } catch (IOException e) {
            throw new OutputException(whole, "cannot be looked into", "Choose another folder.", e);
        }
    }
}

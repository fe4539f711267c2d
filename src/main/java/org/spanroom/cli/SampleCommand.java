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
        header = "Write an invented city to try the tool on.",
        description = {
            "Write an invented city, with the ordinary faults of real data, to try the",
            "tool on or to measure it with. The same size and seed give the same bytes.",
            ""
        },
        exitCodeListHeading = SpanroomCommand.EXIT_HEADING,
        exitCodeList = {SpanroomCommand.EXIT_0, SpanroomCommand.EXIT_1, SpanroomCommand.EXIT_2, SpanroomCommand.EXIT_5})
final class SampleCommand implements Callable<Integer> {
    @Option(
            names = "--spans",
            paramLabel = "N",
            converter = WholeNumber.OfSpans.class,
            description = "About how many spans; ${DEFAULT-VALUE} by default.")
    int spans = DemoCity.DEMO_SPANS;

    @Option(names = "--seed", paramLabel = "S", description = "Which city; ${DEFAULT-VALUE} by default.")
    long seed = DemoCity.DEMO_SEED;

    @Option(
            names = "--output",
            paramLabel = "DIR",
            required = true,
            description = "Folder to write to; a new or an empty one.")
    @Nullable
    Path folder;

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            description = "Of routes and vaults: ${COMPLETION-CANDIDATES}; ${DEFAULT-VALUE} by default.")
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
        console.out()
                .printf(
                        Locale.ROOT,
                        "%,d spans laid out as %,d routes between %,d vaults, with %,d faults on purpose, in %s%n",
                        summary.spans(),
                        summary.routes(),
                        summary.vaults(),
                        summary.faults(),
                        folder);
        console.out().flush();
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

package org.spanroom.pipeline;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.spanroom.config.RunConfig;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.network.SpanList;
import org.spanroom.output.PackedResult;
import org.spanroom.output.PackedSpans;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.rank.Rescoring;

/** Where the rows of a run's spans are kept, packed, from their assessment until they are written. */
final class RowStore {
    private RowStore() {}

    /** Returns what the tables of spans depend on, before anything is read: every column that a run may have. */
    static SpanLayout layoutOfAll(RunConfig config) {
        return layout(config, false, ColumnGroup.all());
    }

    private static SpanLayout layout(RunConfig config, boolean hasElevations, Set<ColumnGroup> groups) {
        return new SpanLayout(
                new Rescoring(config.scoring(), config.room()).criteria(),
                hasElevations,
                config.inputs().routes().keep(),
                groups,
                config.inputs().fieldBook().file().isPresent());
    }

    /**
     * Returns the store for rows; nothing where groups of columns are asked for, which take a second assessment, or where there is room for the
     * rows neither in memory nor in a file.
     *
     * @param roomInMemory whether the heap has room for them
     * @param folder of the results that are being made, for a file
     */
    static Optional<PackedSpans> of(RunConfig config, SpanList spans, boolean roomInMemory, Path folder) {
        if (!ColumnGroup.named(config.output().columns()).isEmpty()) {
            return Optional.empty();
        }
        SpanLayout layout = layout(config, spans.hasElevations(), Set.of());
        if (roomInMemory) {
            return Optional.of(PackedSpans.inMemory(layout, config.units(), spans.size()));
        }
        long besideBytes = machineBytes() - Runtime.getRuntime().maxMemory();
        return MemoryNeed.mayUseFile(besideBytes, freeBytes(folder), spans.size())
                ? PackedSpans.inFile(layout, config.units(), spans.size(), folder)
                : Optional.empty();
    }

    private static long freeBytes(Path folder) {
        try {
            return Files.getFileStore(folder).getUsableSpace();
        } catch (IOException unknown) {
            return 0;
        }
    }

    /** Returns all memory of the machine, or of the container that the program runs in; 0 where it is not known. */
    private static long machineBytes() {
        return ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean system
                ? system.getTotalMemorySize()
                : 0;
    }

    /** Returns the rows with where each span stands; nothing where the store could not hold all rows. */
    static Optional<PackedResult> result(PackedSpans rows, AssessedSpans ranked, BankPlaces bankPlaces) {
        return rows.isComplete()
                ? Optional.of(
                        new PackedResult(rows, ranked.figures(), place -> ranked.placed(place, bankPlaces.at(place))))
                : Optional.empty();
    }
}

package org.spanroom.pipeline;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.config.NearestWord;
import org.spanroom.config.ProgramConfig;
import org.spanroom.config.ProgramConfigReader;
import org.spanroom.finding.InputException;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.output.RecordedRun;

/** Compares the names in the config of a program with those of the run: a condition that names nothing would silently not apply. */
final class ProgramNames {
    private static final int MOST_SHOWN = 3;

    private ProgramNames() {}

    /**
     * Returns if the run's config has each kind of zone that the program's config names.
     *
     * @param kinds those of the run's config
     * @throws InputException if it lacks one
     */
    static void demandKinds(RecordedRun run, ProgramConfig config, Set<String> kinds) {
        Stream<String> closed =
                config.closedZoneKinds().equals(ProgramConfigReader.shipped().closedZoneKinds())
                        ? Stream.of()
                        : config.closedZoneKinds().stream();
        Stream.concat(config.stopWindows().stream().flatMap(window -> window.zoneKinds().stream()), closed)
                .filter(kind -> !kinds.contains(kind))
                .findFirst()
                .ifPresent(kind -> {
                    throw new InputException(
                            run.file(),
                            "the run has no kind of permit zone '" + kind + "', which the program's config names",
                            "Name a key of permit.kinds; the nearest are "
                                    + String.join(", ", NearestWord.nearest(kind, List.copyOf(kinds), MOST_SHOWN))
                                    + ".");
                });
    }

    /** Returns which districts of the limits no span has; empty if each has one. */
    static Optional<String> unknownDistricts(ProgramConfig config, Collection<SpanFacts> spans) {
        var unknown = new TreeSet<>(config.mostInWork().keySet());
        spans.forEach(span -> unknown.remove(span.district()));
        return unknown.isEmpty()
                ? Optional.empty()
                : Optional.of("no span has in " + config.district() + " what most_in_work names: "
                        + unknown.stream().map(name -> "'" + name + "'").collect(Collectors.joining(", ")));
    }
}

package org.spanroom.pipeline;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
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
     * Demands that the run's config has each kind of zone that the program's config names.
     *
     * @param kinds those of the run's config
     * @throws InputException if it lacks one
     */
    static void demandKinds(RecordedRun run, ProgramConfig config, Set<String> kinds) {
        for (ProgramConfig.StopWindow window : config.stopWindows()) {
            demandKinds(run, "zone_kinds of the stop window '" + window.name() + "'", window.zoneKinds(), kinds);
        }
        List<String> closed = config.closedZoneKinds();
        if (!closed.equals(ProgramConfigReader.shipped().closedZoneKinds())) {
            demandKinds(run, "closed_zone_kinds", closed, kinds);
        }
    }

    private static void demandKinds(RecordedRun run, String key, List<String> named, Set<String> kinds) {
        for (String kind : named) {
            if (!kinds.contains(kind)) {
                throw new InputException(
                        run.file(),
                        "the run has no kind of permit zone '" + kind + "', which " + key
                                + " of the program's config names",
                        kinds.isEmpty()
                                ? "Its config has no permit.kinds: remove the name."
                                : "Name a key of permit.kinds; the nearest are "
                                        + String.join(", ", NearestWord.nearest(kind, List.copyOf(kinds), MOST_SHOWN))
                                        + ".");
            }
        }
    }

    /** Returns which districts of the limits no span has; empty if each has one. */
    static Optional<String> unknownDistricts(ProgramConfig config, Collection<SpanFacts> spans) {
        var unknown = new TreeSet<>(config.mostInWork().keySet());
        spans.forEach(span -> unknown.remove(span.district()));
        return unknown.isEmpty()
                ? Optional.empty()
                : Optional.of("most_in_work names what no span has in the column " + config.district() + ": "
                        + unknown.stream().map(name -> "'" + name + "'").collect(Collectors.joining(", ")));
    }
}

package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.program.Corridor;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.SectionNeed;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.WayStep;
import org.spanroom.output.CorridorWriter;
import org.spanroom.output.ProgramWriter;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.program.Corridors;
import org.spanroom.program.FirstNeeded;

/** Where spans worth recovering line up, and which sections are needed first. */
public final class CorridorRun {
    private final Path run;
    private final Progress progress;

    public CorridorRun(Path run, Progress progress) {
        this.run = run;
        this.progress = progress;
    }

    /**
     * What is asked for.
     *
     * @param cables how many go together
     * @param hubs names of vaults; none for those that most sections end at
     * @param mostHubs how many of these
     * @param ignoredGates keys of gates that are treated as open
     */
    public record Request(int cables, List<String> hubs, int mostHubs, Set<String> ignoredGates) {
        public Request {
            hubs = List.copyOf(hubs);
            ignoredGates = Set.copyOf(ignoredGates);
        }
    }

    /**
     * What was found.
     *
     * @param corridors the one that gains most for its money first
     * @param sections all, in the order of the network
     * @param pairs how many pairs of hubs have a way
     */
    public record CorridorSummary(
            Request request,
            DuctNetwork network,
            List<Corridor> corridors,
            List<SectionNeed> sections,
            int pairs,
            String currency,
            UnitSystem units,
            List<Path> files) {
        public CorridorSummary {
            corridors = List.copyOf(corridors);
            sections = List.copyOf(sections);
            files = List.copyOf(files);
        }
    }

    /**
     * Finds the corridors and writes them.
     *
     * @throws org.spanroom.finding.InputException if the folder holds no run that can be read, or no vault of such a name
     * @throws org.spanroom.output.folder.OutputException if the results cannot be written
     */
    public CorridorSummary run(Request request, Path folder, boolean overwrite, Instant writtenAt) {
        ProgramFolder.check(run, folder, List.of());
        ProgramWriter.check(folder, overwrite, CorridorWriter.MARKER);
        progress.begin("read the run", -1);
        NetworkReader.Recorded recorded = NetworkReader.read(run, request.ignoredGates());
        DuctNetwork network = recorded.network();
        progress.end(NetworkWords.size(network));
        List<Integer> hubs = request.hubs().isEmpty()
                ? Corridors.hubs(network, request.mostHubs())
                : request.hubs().stream()
                        .map(hub -> Vaults.find(recorded, "--hubs", hub))
                        .distinct()
                        .toList();
        progress.begin("find corridors", -1);
        var found = new Corridors(network, request.cables());
        List<Corridor> corridors = found.ranked();
        progress.end(corridors.size() + (corridors.size() == 1 ? " corridor" : " corridors"));
        progress.begin("find ways between hubs", -1);
        var needed = new FirstNeeded(network, request.cables(), hubs);
        progress.end(needed.pairs() + (needed.pairs() == 1 ? " way" : " ways"));
        List<SectionNeed> sections = sections(network, found, corridors, needed);
        LayerOptions options = recorded.layerOptions("corridors", writtenAt);
        return new CorridorSummary(
                request,
                network,
                corridors,
                sections,
                needed.pairs(),
                recorded.config().rates().currency(),
                recorded.config().units(),
                CorridorWriter.write(network, corridors, sections, folder, overwrite, options));
    }

    private static List<SectionNeed> sections(
            DuctNetwork network, Corridors found, List<Corridor> corridors, FirstNeeded needed) {
        Map<String, Integer> corridorOf = new HashMap<>();
        for (int number = 1; number <= corridors.size(); number++) {
            for (WayStep step : corridors.get(number - 1).way().steps()) {
                corridorOf.put(step.section().id(), number);
            }
        }
        var sections = new ArrayList<SectionNeed>();
        for (int number = 0; number < network.sections().size(); number++) {
            SectionOffer section = network.sections().get(number);
            Optional<WayStep> step = found.steps().get(number);
            sections.add(new SectionNeed(
                    section,
                    step,
                    needed.ways(section.id()),
                    needed.narrowest(section.id()),
                    corridorOf.getOrDefault(section.id(), 0)));
        }
        return sections;
    }
}

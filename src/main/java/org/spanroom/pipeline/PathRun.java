package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.spanroom.finding.InputException;
import org.spanroom.finding.UsageException;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.Gap;
import org.spanroom.model.program.PathObjective;
import org.spanroom.model.program.Way;
import org.spanroom.output.ProgramWriter;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.program.GapFinder;
import org.spanroom.program.WayFinder;

/** The ways from one vault of a run to another. */
public final class PathRun {
    private final Path run;
    private final Progress progress;

    public PathRun(Path run, Progress progress) {
        this.run = run;
        this.progress = progress;
    }

    /**
     * What is asked for.
     *
     * @param from name of a vault
     * @param to name of another
     * @param cables how many go together
     * @param most how many ways are wanted
     * @param ignoredGates keys of gates that are treated as open
     */
    public record Request(
            String from, String to, int cables, PathObjective objective, int most, Set<String> ignoredGates) {
        public Request {
            ignoredGates = Set.copyOf(ignoredGates);
        }
    }

    /**
     * What was found.
     *
     * @param ways the best first; at least one
     * @param files that were written
     */
    public record PathSummary(
            Request request, DuctNetwork network, List<Way> ways, String currency, UnitSystem units, List<Path> files) {
        public PathSummary {
            ways = List.copyOf(ways);
            files = List.copyOf(files);
        }
    }

    /**
     * Finds the ways and writes them.
     *
     * @throws UsageException if both vaults are the same
     * @throws org.spanroom.finding.InputException if the folder holds no run that can be read, or no such vault
     * @throws org.spanroom.output.folder.OutputException if the results cannot be written
     */
    public PathSummary run(Request request, Path folder, boolean overwrite, Instant writtenAt) {
        ProgramFolder.check(run, folder, List.of());
        ProgramWriter.check(folder, overwrite, ProgramWriter.PATHS);
        progress.begin("read the run", -1);
        NetworkReader.Recorded recorded = NetworkReader.read(run, request.ignoredGates());
        DuctNetwork network = recorded.network();
        progress.end(NetworkWords.size(network));
        if (request.objective().weightPerPercent() > 0 && network.samples() == 0) {
            throw new InputException(
                    run,
                    "the run was made without a simulation, so the chance of a way is not known",
                    "Choose another --objective, or make the run with uncertainty.");
        }
        int from = Vaults.find(recorded, "--from", request.from());
        int to = Vaults.find(recorded, "--to", request.to());
        if (from == to) {
            throw new UsageException("--from and --to name the same vault, " + request.from());
        }
        progress.begin("find ways", -1);
        List<Way> ways = new WayFinder(network, request.cables()).find(from, to, request.objective(), request.most());
        progress.end(ways.size() + (ways.size() == 1 ? " way" : " ways"));
        if (ways.isEmpty()) {
            throw noWay(request, network, recorded.config().units(), new GapFinder(network).find(from, to));
        }
        LayerOptions options = recorded.layerOptions("path", writtenAt);
        List<Path> files = ProgramWriter.writePaths(network, ways, folder, overwrite, options);
        return new PathSummary(
                request,
                network,
                ways,
                recorded.config().rates().currency(),
                recorded.config().units(),
                files);
    }

    private InputException noWay(Request request, DuctNetwork network, UnitSystem units, Gap gap) {
        String ends = "vault " + request.from() + " and vault " + request.to();
        if (!gap.isJoined()) {
            String where = gap.ends()
                    .map(near -> "; the gap is narrowest between vault " + network.vaultId(near.from()) + " and vault "
                            + network.vaultId(near.to()) + ", " + units.words(near.gapM(), 0, "m") + " apart")
                    .orElse("");
            return new InputException(
                    run,
                    "no sections join " + ends + where,
                    "Look there for a missing route or vault; the findings of the run name line ends without a vault.");
        }
        if (gap.widestCables() == 0) {
            return new InputException(
                    run,
                    "sections join " + ends
                            + ", but every way has one that takes no cable: no free position, no duct to "
                            + "recover, no price of a new one",
                    "See the reasons in the column exclusion of its spans, or try --ignore-gate.");
        }
        return new InputException(
                run,
                "no way from vault " + request.from() + " to vault " + request.to() + " takes "
                        + Counted.of(request.cables(), "cable") + " in one duct; at most " + gap.widestCables()
                        + " can go together",
                "Ask for fewer cables, and for the others by themselves.");
    }
}

package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.spanroom.input.fields.ConnectionsReader;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.ConnectionResult;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.output.ConnectWriter;
import org.spanroom.output.ProgramWriter;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.program.ConnectPlan;
import org.spanroom.program.bound.BoundSettings;
import org.spanroom.program.bound.DesignBound;
import org.spanroom.program.design.Design;
import org.spanroom.program.design.DesignChecker;
import org.spanroom.program.design.DesignSearch;
import org.spanroom.program.design.SearchSettings;

/** The cheapest way to serve connections together: what is recovered or built is paid once and shared. */
public final class ConnectRun {
    private final Path run;
    private final Progress progress;

    public ConnectRun(Path run, Progress progress) {
        this.run = run;
        this.progress = progress;
    }

    /**
     * What is asked for.
     *
     * @param connections the table of connections
     * @param serveAll whether each is served at any cost; otherwise those that are no must only if they are worth it
     * @param iterations of each start of the search; empty for as many as the connections suggest
     * @param threads how many may work
     * @param mostSeconds a limit of time, which makes the result depend on the machine; empty for none
     * @param ignoredGates keys of gates that are treated as open
     */
    public record Request(
            Path connections,
            boolean serveAll,
            long seed,
            OptionalInt iterations,
            int threads,
            OptionalDouble mostSeconds,
            Set<String> ignoredGates) {
        public Request {
            ignoredGates = Set.copyOf(ignoredGates);
        }
    }

    /**
     * What was found.
     *
     * @param results in the order of the table
     * @param money cost of all that is recovered and built
     * @param unservedMoney value of the connections that are not served
     * @param boundMoney what cost and value not served cannot be less than, over all ways
     * @param isReproducible whether no limit of time ended the search or the bound
     * @param notes what else to know, a line each
     */
    public record ConnectSummary(
            Request request,
            DuctNetwork network,
            List<ConnectionResult> results,
            double money,
            double unservedMoney,
            double boundMoney,
            long iterations,
            boolean isReproducible,
            List<String> notes,
            String currency,
            UnitSystem units,
            List<Path> files) {
        public ConnectSummary {
            results = List.copyOf(results);
            notes = List.copyOf(notes);
            files = List.copyOf(files);
        }

        /** Returns what the search minimizes. */
        public double totalMoney() {
            return money + unservedMoney;
        }

        /** Returns by how much the total may be above the least possible, as a share of the total; empty where there is no finite bound. */
        public OptionalDouble gapRatio() {
            if (!Double.isFinite(boundMoney) || !Double.isFinite(totalMoney())) {
                return OptionalDouble.empty();
            }
            return OptionalDouble.of(totalMoney() <= 0 ? 0 : Math.max(0, totalMoney() - boundMoney) / totalMoney());
        }
    }

    /**
     * Finds the ways and writes them.
     *
     * @throws org.spanroom.finding.InputException if the folder holds no run, or the table is no table of connections
     * @throws org.spanroom.output.folder.OutputException if the results cannot be written
     */
    public ConnectSummary run(Request request, Path folder, boolean overwrite, Instant writtenAt) {
        ProgramFolder.check(run, folder, List.of(request.connections()));
        ProgramWriter.check(folder, overwrite, ConnectWriter.MARKER);
        List<Connection> table = ConnectionsReader.read(request.connections());
        progress.begin("read the run", -1);
        NetworkReader.Recorded recorded = NetworkReader.read(run, request.ignoredGates());
        progress.end(NetworkWords.size(recorded.network()));
        List<Connection> rows = Vaults.checked(recorded, table);
        var plan = new ConnectPlan(recorded.network(), rows, request.serveAll());
        BooleanSupplier stop = clock(request.mostSeconds());
        progress.begin("find a design", -1);
        DesignSearch.Result found = search(plan, request, stop);
        progress.end(String.format(Locale.ROOT, "%,d of %,d connections served", served(found.design()), rows.size()));
        progress.begin("find a bound", -1);
        Optional<String> noLibrary = NativeSolver.load();
        DesignBound bound = bound(plan, request, found.design(), noLibrary.isEmpty(), clock(request.mostSeconds()));
        progress.end(String.format(Locale.ROOT, "%,.0f", bound.money()));
        List<ConnectionResult> results = plan.results(found.design(), found.unserved());
        LayerOptions options = recorded.layerOptions("connect", writtenAt);
        var summary = new ConnectSummary(
                request,
                recorded.network(),
                results,
                found.design().workMoney(),
                found.design().unservedMoney(),
                bound.money(),
                found.iterations(),
                found.isWhole() && bound.isWhole(),
                noLibrary.map(why -> why + "; the bound is our own").stream().toList(),
                recorded.config().rates().currency(),
                recorded.config().units(),
                ConnectWriter.files(folder));
        ConnectWriter.write(recorded.network(), results, ConnectAccount.of(summary), folder, overwrite, options);
        return summary;
    }

    private static long served(Design design) {
        return design.ways().stream().filter(way -> !way.isEmpty()).count();
    }

    private static DesignSearch.Result search(ConnectPlan plan, Request request, BooleanSupplier stop) {
        int demands = plan.problem().demands().size();
        SearchSettings standard = SearchSettings.forDemands(demands).withSeed(request.seed());
        SearchSettings settings = request.iterations().isPresent()
                ? standard.withIterations(request.iterations().getAsInt())
                : standard;
        DesignSearch.Result found =
                new DesignSearch(plan.problem()).run(settings, Spreading.over(request.threads()), stop);
        List<String> problems = DesignChecker.problems(plan.problem(), found.design());
        if (!problems.isEmpty()) {
            throw new IllegalStateException("the design does not hold: " + problems.get(0));
        }
        return found;
    }

    private static DesignBound bound(
            ConnectPlan plan, Request request, Design design, boolean hasLibrary, BooleanSupplier stop) {
        return DesignBound.of(
                plan.problem(),
                BoundSettings.of(plan.problem()),
                design.totalMoney(),
                hasLibrary,
                Spreading.over(request.threads()),
                stop);
    }

    private static BooleanSupplier clock(OptionalDouble mostSeconds) {
        if (mostSeconds.isEmpty()) {
            return () -> false;
        }
        long end = System.nanoTime() + (long) (mostSeconds.getAsDouble() * 1e9 / 2);
        return () -> System.nanoTime() >= end;
    }
}

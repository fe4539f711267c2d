package org.spanroom.network;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.LongConsumer;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.NetworkSettings;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;
import org.spanroom.parallel.ParallelRanges;

/**
 * Cuts routes into spans at vaults.
 *
 * <p>Method: each line is measured on the ellipsoid ({@link GroundStep}), vaults at one place are put together, and every
 * coming-by of a line at a vault within the tolerance is found ({@link VaultCrossingFinder}). Ends that are at no vault are joined with
 * the one other end of their duct that is there ({@link EndJoiner}). Each chain of joined routes is cut at its vaults ({@link
 * ChainCutter}); of cuts that are closer than the least span the nearest vault's is kept ({@link CloseCuts}).
 *
 * <p>Account: the drawn length of all spans and of all remainders, each of which a finding names with its length, is that of
 * all routes, to a millimeter. A gap that was bridged has no drawn length; an overlap of two pieces is treated as drawn.
 *
 * <p>Order: routes count in the order of their sequence numbers, vaults in that of their names; neither the threads nor the
 * order of the lists changes the result, nor does the order of the vaults in their file.
 */
public final class SpanCutter {
    private final NetworkSettings settings;
    private final ParallelRanges ranges;
    private final IntFunction<String> routesSource;
    private final IntFunction<String> vaultsSource;
    private final Optional<RecordedField> recordedLength;

    /** Names the layers plainly "routes" and "vaults" in findings. */
    public SpanCutter(NetworkSettings settings, int threads) {
        this(settings, threads, "routes", "vaults");
    }

    /** Names the two layers in findings by the given sources. */
    public SpanCutter(NetworkSettings settings, int threads, String routesSource, String vaultsSource) {
        this(settings, threads, sequence -> routesSource, sequence -> vaultsSource);
    }

    /** Names in findings the source of each route and of each vault, by its number. */
    public SpanCutter(
            NetworkSettings settings, int threads, IntFunction<String> routesSource, IntFunction<String> vaultsSource) {
        this(settings, threads, routesSource, vaultsSource, Optional.empty());
    }

    /** Reports too where the unit of the field of recorded lengths is doubtful. */
    public SpanCutter(
            NetworkSettings settings,
            int threads,
            IntFunction<String> routesSource,
            IntFunction<String> vaultsSource,
            Optional<RecordedField> recordedLength) {
        this.settings = settings;
        this.ranges = new ParallelRanges(threads);
        this.routesSource = routesSource;
        this.vaultsSource = vaultsSource;
        this.recordedLength = recordedLength;
    }

    /** Returns the network of spans and reports what is wrong with routes and vaults. */
    public Network cut(List<Route> routes, List<Vault> vaults, FindingLog findings) {
        return cut(routes, vaults, findings, count -> {});
    }

    /** Does the same, and reports meanwhile how many more routes have been measured; from several threads. */
    public Network cut(List<Route> routes, List<Vault> vaults, FindingLog findings, LongConsumer progress) {
        var worded = new NetworkFindings(findings, routesSource, vaultsSource);
        List<Route> ordered = inOrder(routes);
        var places = new VaultPlaces(vaults, settings.vaultMergeM());
        var recorded = new RecordedVaults(ordered, settings, places, worded);
        var sightings = new VaultSightings(places.count());
        var context = new CuttingContext(settings, places, sightings, worded, recorded, recordedLength);
        return new NetworkRun(ordered, context, ranges).run(progress);
    }

    private static List<Route> inOrder(List<Route> routes) {
        for (int i = 1; i < routes.size(); i++) {
            if (routes.get(i).sequence() < routes.get(i - 1).sequence()) {
                return routes.stream()
                        .sorted(Comparator.comparingInt(Route::sequence))
                        .toList();
            }
        }
        return routes;
    }
}

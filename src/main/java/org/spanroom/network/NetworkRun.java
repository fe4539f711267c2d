package org.spanroom.network;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Term;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Route;
import org.spanroom.parallel.ParallelRanges;

/**
 * One cutting of one set of routes, from first to last.
 *
 * <p>A route with a vault at both ends is cut as soon as it is measured; the others wait until all their ends are known.
 */
final class NetworkRun {
    private static final double ACCOUNT_TOLERANCE_M = 1e-3;

    private final List<Route> routes;
    private final CuttingContext context;
    private final ParallelRanges ranges;
    private final CloseVaults closeVaults = new CloseVaults();
    private final double[] lengthM;
    private final AtomicReferenceArray<ChainCutter.@Nullable Cutting> cuttings;
    private final AtomicReferenceArray<@Nullable Waiting> waiting;

    /** A route that has an end at no vault; its track is measured again later, to save memory. */
    private record Waiting(List<VaultCrossing> passes, List<OpenEnd> ends) {}

    /** A route in a chain under construction. */
    private record Link(int route, boolean reversed) {}

    NetworkRun(List<Route> routes, CuttingContext context, ParallelRanges ranges) {
        this.routes = routes;
        this.context = context;
        this.ranges = ranges;
        lengthM = new double[routes.size()];
        cuttings = new AtomicReferenceArray<>(routes.size());
        waiting = new AtomicReferenceArray<>(routes.size());
    }

    Network run(LongConsumer progress) {
        matchAndCutClosed(progress);
        reportLengthUnit();
        List<OpenEnd> ends = openEnds();
        var joiner = new EndJoiner(ends, context.settings());
        joiner.join().forEach(group -> context.findings().ambiguousJoint(group, routes));
        reportGaps(ends, joiner);
        cutChains(chains(ends, joiner));
        closeVaults.report(context);
        var vaults = new VaultReport(context);
        vaults.report();
        new VaultsInside(context).report();
        return network(vaults);
    }

    private void matchAndCutClosed(LongConsumer progress) {
        ranges.run(routes.size(), () -> {
            var matcher = new RouteMatcher(context);
            var cutter = new ChainCutter(context, closeVaults);
            return (from, to) -> {
                for (int number = from; number < to; number++) {
                    cutIfClosed(matcher.match(number, routes.get(number)), cutter);
                }
                progress.accept(to - from);
            };
        });
    }

    private void reportLengthUnit() {
        context.recordedLength().map(LengthUnits::new).ifPresent(units -> {
            for (int number = 0; number < routes.size(); number++) {
                units.see(routes.get(number), lengthM[number], context.findings());
            }
            units.report(context.findings());
        });
    }

    private void cutIfClosed(ChainLink piece, ChainCutter cutter) {
        int number = piece.number();
        lengthM[number] = piece.lengthM();
        if (piece.lengthM() == 0) {
            return;
        }
        List<OpenEnd> ends = openEnds(piece);
        if (ends.isEmpty()) {
            cuttings.set(number, cutter.cut(Chain.of(List.of(piece), false)));
        } else {
            waiting.set(number, new Waiting(piece.passes(), ends));
        }
    }

    /** Returns the ends of a route that no vault holds. */
    private static List<OpenEnd> openEnds(ChainLink piece) {
        Route route = piece.route();
        String duct =
                route.duct().assumed().contains(Term.DUCT) ? "" : route.duct().id();
        List<OpenEnd> ends = new ArrayList<>(2);
        for (int side = 0; side < 2; side++) {
            double placeM = side == 0 ? 0 : piece.lengthM();
            if (piece.passes().stream().noneMatch(pass -> pass.holds(placeM))) {
                double lonDeg = piece.track().lonAt(placeM);
                double latDeg = piece.track().latAt(placeM);
                ends.add(new OpenEnd(piece.number(), side, lonDeg, latDeg, duct, piece.lengthM()));
            }
        }
        return ends;
    }

    private List<OpenEnd> openEnds() {
        List<OpenEnd> ends = new ArrayList<>();
        for (int number = 0; number < routes.size(); number++) {
            Waiting route = waiting.get(number);
            if (route != null) {
                ends.addAll(route.ends());
            }
        }
        return ends;
    }

    private void reportGaps(List<OpenEnd> ends, EndJoiner joiner) {
        for (int end = 0; end < ends.size(); end++) {
            OpenEnd open = ends.get(end);
            int partner = joiner.partner(end);
            if (partner < 0) {
                reportNearVault(open);
            } else if (partner > end && joiner.gapM(end) > 1e-3) {
                report(
                        FindingCode.GAP_BRIDGED,
                        open,
                        "joined to route "
                                + routes.get(ends.get(partner).route()).id() + " over a gap of "
                                + NetworkFindings.meters(joiner.gapM(end)));
            }
        }
        for (int[] pair : joiner.nearMisses()) {
            report(
                    FindingCode.GAP_BEYOND_TOLERANCE,
                    ends.get(pair[0]),
                    "the end of route "
                            + routes.get(ends.get(pair[1]).route()).id() + " is "
                            + NetworkFindings.meters(joiner.distanceM(pair[0], pair[1])) + " away");
        }
    }

    private void reportNearVault(OpenEnd end) {
        int near = context.places()
                .nearest(end.lonDeg(), end.latDeg(), context.settings().gapWarningM());
        if (near >= 0) {
            double meters = context.places().distanceM(near, end.lonDeg(), end.latDeg());
            report(
                    FindingCode.GAP_BEYOND_TOLERANCE,
                    end,
                    "vault " + context.places().vault(near).id() + " is " + NetworkFindings.meters(meters)
                            + " from the line's end");
        }
    }

    private void report(FindingCode code, OpenEnd end, String detail) {
        context.findings().route(code, routes.get(end.route()), detail, end.lonDeg(), end.latDeg());
    }

    /** Returns the chains of waiting routes; each begins with its first-read route or leads up to it, as that is drawn. */
    private List<ChainLinks> chains(List<OpenEnd> ends, EndJoiner joiner) {
        int[] endAt = new int[2 * routes.size()];
        Arrays.fill(endAt, -1);
        for (int end = 0; end < ends.size(); end++) {
            endAt[2 * ends.get(end).route() + ends.get(end).side()] = end;
        }
        boolean[] seen = new boolean[routes.size()];
        List<ChainLinks> chains = new ArrayList<>();
        for (int number = 0; number < routes.size(); number++) {
            if (waiting.get(number) != null && !seen[number]) {
                chains.add(chain(number, endAt, ends, joiner, seen));
            }
        }
        return chains;
    }

    /** The routes of one chain in order. */
    private record ChainLinks(int lead, List<Link> links, boolean closed) {}

    private static ChainLinks chain(int lead, int[] endAt, List<OpenEnd> ends, EndJoiner joiner, boolean[] seen) {
        Deque<Link> links = new ArrayDeque<>(List.of(new Link(lead, false)));
        seen[lead] = true;
        for (int outward = 1; outward >= 0; outward--) {
            int exit = endAt[2 * lead + outward];
            while (exit >= 0 && joiner.partner(exit) >= 0) {
                OpenEnd entry = ends.get(joiner.partner(exit));
                if (seen[entry.route()]) {
                    return new ChainLinks(lead, List.copyOf(links), true);
                }
                seen[entry.route()] = true;
                if (outward == 1) {
                    links.addLast(new Link(entry.route(), entry.side() == 1));
                } else {
                    links.addFirst(new Link(entry.route(), entry.side() == 0));
                }
                exit = endAt[2 * entry.route() + 1 - entry.side()];
            }
        }
        return new ChainLinks(lead, List.copyOf(links), false);
    }

    private void cutChains(List<ChainLinks> chains) {
        ranges.run(chains.size(), () -> {
            var matcher = new RouteMatcher(context);
            var cutter = new ChainCutter(context, closeVaults);
            return (from, to) -> chains.subList(from, to).forEach(links -> cutChain(links, matcher, cutter));
        });
    }

    private void cutChain(ChainLinks links, RouteMatcher matcher, ChainCutter cutter) {
        List<ChainLink> pieces = new ArrayList<>(links.links().size());
        for (Link link : links.links()) {
            Waiting route = waiting.get(link.route());
            List<VaultCrossing> passes = route == null ? List.of() : route.passes();
            pieces.add(matcher.again(link.route(), routes.get(link.route()), passes, link.reversed()));
        }
        cuttings.set(links.lead(), cutter.cut(Chain.of(pieces, links.closed())));
    }

    private Network network(VaultReport vaults) {
        var routeSum = new CompensatedSum();
        var spanSum = new CompensatedSum();
        var remainderSum = new CompensatedSum();
        ChainSpans[] spans = new ChainSpans[routes.size()];
        Arrays.fill(spans, JoinedSpans.NONE);
        for (int number = 0; number < routes.size(); number++) {
            routeSum.add(lengthM[number]);
            ChainCutter.Cutting cutting = cuttings.get(number);
            if (cutting != null) {
                spans[number] = cutting.spans();
                spanSum.add(cutting.drawnM());
                remainderSum.add(cutting.remainderM());
            }
        }
        DuctEnds.settle(spans);
        double missingM = routeSum.value() - spanSum.value() - remainderSum.value();
        if (!(Math.abs(missingM) <= ACCOUNT_TOLERANCE_M)) {
            throw new IllegalStateException("the drawn lengths do not balance; they differ by " + missingM + " m");
        }
        return new Network(
                SpanTable.of(spans, vaults.places(), ranges),
                vaults.uses(),
                routeSum.value(),
                spanSum.value(),
                remainderSum.value());
    }
}

package org.spanroom.network;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Line;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanName;
import org.spanroom.model.network.Vault;

/**
 * The spans of one route, packed into about a hundred bytes each and put together when they are requested: the vertices between its
 * two ends are the route's own, and its line on the ground follows from them.
 */
final class RouteSpans implements ChainSpans {
    /** The length that counts and as drawn, offsets from and to; the ordinates of both ends follow. */
    private static final int NUMBERS = 4;

    /** Vault from, vault to, first of the route's vertices between them, how many. */
    private static final int PLACES = 4;

    /** Marks the first vertex where the line is not a stretch of the route's. */
    private static final int OWN_LINE = -1;

    private final Duct duct;
    private final String routeId;
    private final String positionQuality;
    private final Line route;
    private final List<Vault> vaults;
    private final double[] numbers;
    private final int[] places;
    private final Line @Nullable [] own;

    private RouteSpans(Packer packer, Route of) {
        duct = of.duct();
        routeId = of.id();
        positionQuality = of.positionQuality();
        route = of.lonLat();
        vaults = packer.vaults;
        numbers = Arrays.copyOf(packer.numbers, packer.size * stride(route));
        places = Arrays.copyOf(packer.places, packer.size * PLACES);
        own = packer.own == null ? null : Arrays.copyOf(packer.own, packer.size);
    }

    @Override
    public int size() {
        return places.length / PLACES;
    }

    @Override
    public String id(int at) {
        return SpanName.first(duct.id(), from(at).id(), to(at).id());
    }

    @Override
    public String ductName(int at) {
        return duct.id();
    }

    @Override
    public Duct duct(int at) {
        return duct;
    }

    @Override
    public boolean hasElevations() {
        return route.hasZ();
    }

    @Override
    public int fromVault(int at) {
        return places[at * PLACES];
    }

    @Override
    public int toVault(int at) {
        return places[at * PLACES + 1];
    }

    @Override
    public Vault from(int at) {
        return vaults.get(fromVault(at));
    }

    @Override
    public Vault to(int at) {
        return vaults.get(toVault(at));
    }

    @Override
    public double lengthM(int at) {
        return numbers[at * stride(route)];
    }

    @Override
    public double drawnLengthM(int at) {
        return numbers[at * stride(route) + 1];
    }

    @Override
    public Line lonLat(int at) {
        return line(at);
    }

    @Override
    public List<String> routeIds(int at) {
        return List.of(routeId);
    }

    @Override
    public Span span(int at) {
        Vault from = from(at);
        Vault to = to(at);
        Line line = line(at);
        int first = at * stride(route);
        return new Span(
                SpanName.first(duct.id(), from.id(), to.id()),
                duct,
                List.of(routeId),
                from,
                to,
                line,
                GroundLine.of(line, from.elevationM(), to.elevationM()),
                lengthM(at),
                numbers[first + 1],
                numbers[first + 2],
                numbers[first + 3],
                positionQuality);
    }

    private Line line(int at) {
        int vertex = places[at * PLACES + 2];
        if (own != null && vertex == OWN_LINE) {
            return own[at];
        }
        int between = places[at * PLACES + 3];
        int dimension = route.hasZ() ? 3 : 2;
        double[] ordinates = new double[dimension * (between + 2)];
        int ends = at * stride(route) + NUMBERS;
        int put = 0;
        for (int axis = 0; axis < dimension; axis++) {
            ordinates[put++] = numbers[ends + axis];
        }
        for (int i = vertex; i < vertex + between; i++) {
            ordinates[put++] = route.x(i);
            ordinates[put++] = route.y(i);
            if (dimension == 3) {
                ordinates[put++] = route.z(i);
            }
        }
        for (int axis = 0; axis < dimension; axis++) {
            ordinates[put++] = numbers[ends + dimension + axis];
        }
        return Line.wrap(ordinates, dimension == 3);
    }

    private static int stride(Line route) {
        return NUMBERS + (route.hasZ() ? 6 : 4);
    }

    /** Packs the spans of one route after another. For use by one thread. */
    static final class Packer {
        private static final int WHOLE_SEARCHES = 16;
        private static final int NEAR_SEARCH = 64;

        private final List<Vault> vaults;
        private double[] numbers = new double[8 * (NUMBERS + 6)];
        private int[] places = new int[8 * PLACES];
        private Line @Nullable [] own;
        private int size;
        /** The route's vertex at which the next span should begin, and how many may still be compared without success. */
        private int next;

        private long searches;

        Packer(List<Vault> vaults) {
            this.vaults = vaults;
        }

        void clear() {
            size = 0;
            own = null;
            next = 0;
            searches = 0;
        }

        /** What a span is apart from its line. */
        record Ends(int fromVault, int toVault, double lengthM, double drawnM, double fromOffsetM, double toOffsetM) {}

        void add(Ends span, SpanLine line, Line route) {
            if ((size + 1) * PLACES > places.length) {
                numbers = Arrays.copyOf(numbers, 2 * numbers.length);
                places = Arrays.copyOf(places, 2 * places.length);
            }
            int first = find(line, route);
            int place = size * PLACES;
            places[place] = span.fromVault();
            places[place + 1] = span.toVault();
            places[place + 2] = first < 0 ? OWN_LINE : first;
            places[place + 3] = line.size() - 2;
            if (first < 0) {
                int room = places.length / PLACES;
                if (own == null || own.length < room) {
                    own = own == null ? new Line[room] : Arrays.copyOf(own, room);
                }
                own[size] = line.lonLat();
            }
            int number = size * stride(route);
            numbers[number] = span.lengthM();
            numbers[number + 1] = span.drawnM();
            numbers[number + 2] = span.fromOffsetM();
            numbers[number + 3] = span.toOffsetM();
            int dimension = route.hasZ() ? 3 : 2;
            for (int axis = 0; axis < dimension; axis++) {
                numbers[number + NUMBERS + axis] = line.ordinate(false, axis);
                numbers[number + NUMBERS + dimension + axis] = line.ordinate(true, axis);
            }
            size++;
        }

        /**
         * Spans follow one another along the route, so that each is looked for where the last one ended. Where that does not find it, a
         * few times the whole route is searched; a long route whose spans are often no stretch of it would else take for ever.
         */
        private int find(SpanLine line, Line route) {
            boolean whole = searches < WHOLE_SEARCHES;
            int first = line.firstBetween(route, next, whole ? Integer.MAX_VALUE : NEAR_SEARCH);
            searches += first < 0 || Math.abs(first - next) > NEAR_SEARCH ? 1 : 0;
            next = Math.min(route.size(), (first < 0 ? next : first) + line.size() - 2);
            return first;
        }

        ChainSpans spans(Route route) {
            return size == 0 ? JoinedSpans.NONE : new RouteSpans(this, route);
        }
    }
}

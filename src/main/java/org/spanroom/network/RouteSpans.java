package org.spanroom.network;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Line;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanName;
import org.spanroom.model.network.Vault;

/**
 * The spans of one route, packed into some fifty to a hundred bytes each and put together when they are requested: the vertices between its
 * two ends are the route's own, and its line on the ground follows from them. Where each span begins as the one before it ends, which is
 * usual, every such stop is held once.
 */
final class RouteSpans implements ChainSpans {
    /** Marks the first vertex where the line is not a stretch of the route's. */
    static final int OWN_LINE = -1;

    private final Duct duct;
    private final String routeId;
    private final String positionQuality;
    private final Line route;
    private final List<Vault> vaults;

    /** The offset from its vault and the ordinates of each stop, then the drawn length of each span, then, if it differs, the one that counts. */
    private final double[] numbers;

    /** The vault of each stop, then the first of the route's vertices that each span has between its ends, then how many they are. */
    private final int[] places;

    private final boolean linked;
    private final boolean lengthsDiffer;
    private final Line @Nullable [] own;

    /**
     * Puts the spans together; the arrays are its own from now on.
     *
     * @param linked whether a span ends at the stop where the next one begins; otherwise each has two stops of its own
     * @param lengthsDiffer whether the lengths that count follow the drawn ones
     */
    RouteSpans(
            Route of,
            List<Vault> vaults,
            double[] numbers,
            int[] places,
            boolean linked,
            boolean lengthsDiffer,
            Line @Nullable [] own) {
        duct = of.duct();
        routeId = of.id();
        positionQuality = of.positionQuality();
        route = of.lonLat();
        this.vaults = vaults;
        this.numbers = numbers;
        this.places = places;
        this.linked = linked;
        this.lengthsDiffer = lengthsDiffer;
        this.own = own;
    }

    @Override
    public int size() {
        return linked ? (places.length - 1) / 3 : places.length / 4;
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
        return places[fromStop(at)];
    }

    @Override
    public int toVault(int at) {
        return places[fromStop(at) + 1];
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
        int first = stops() * stride() + at;
        return numbers[lengthsDiffer ? first + size() : first];
    }

    @Override
    public double drawnLengthM(int at) {
        return numbers[stops() * stride() + at];
    }

    @Override
    public Line lonLat(int at) {
        return line(at);
    }

    @Override
    public int touch(int at) {
        return from(at).id().length()
                + to(at).id().length()
                + duct.id().length()
                + duct.bankId().length()
                + duct.kept().size()
                + routeId.length()
                + (int) (lengthM(at) + route.x(0));
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
        int first = fromStop(at) * stride();
        return new Span(
                SpanName.first(duct.id(), from.id(), to.id()),
                duct,
                List.of(routeId),
                from,
                to,
                line,
                GroundLine.of(line, from.elevationM(), to.elevationM()),
                lengthM(at),
                drawnLengthM(at),
                numbers[first],
                numbers[first + stride()],
                positionQuality);
    }

    private Line line(int at) {
        int vertex = places[stops() + at];
        if (own != null && vertex == OWN_LINE) {
            return own[at];
        }
        int between = places[stops() + size() + at];
        int dimension = route.hasZ() ? 3 : 2;
        double[] ordinates = new double[dimension * (between + 2)];
        int first = fromStop(at) * stride() + 1;
        int put = 0;
        for (int axis = 0; axis < dimension; axis++) {
            ordinates[put++] = numbers[first + axis];
        }
        for (int i = vertex; i < vertex + between; i++) {
            ordinates[put++] = route.x(i);
            ordinates[put++] = route.y(i);
            if (dimension == 3) {
                ordinates[put++] = route.z(i);
            }
        }
        for (int axis = 0; axis < dimension; axis++) {
            ordinates[put++] = numbers[first + stride() + axis];
        }
        return Line.wrap(ordinates, dimension == 3);
    }

    private int fromStop(int at) {
        return linked ? at : 2 * at;
    }

    private int stops() {
        return linked ? size() + 1 : 2 * size();
    }

    private int stride() {
        return stride(route);
    }

    /** Returns how many numbers a stop has. */
    static int stride(Line route) {
        return route.hasZ() ? 4 : 3;
    }
}

package org.spanroom.network;

import java.util.List;
import org.spanroom.model.Line;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanName;
import org.spanroom.model.network.Vault;

/**
 * Spans of several routes joined end to end. They have less in common than those of one route and keep their lines whole, but what
 * follows from a line and the vaults, the line on the ground and the name, is found out again each time it is requested.
 */
final class JoinedSpans implements ChainSpans {
    /** Of a chain that is not assigned to a span. */
    static final ChainSpans NONE = new JoinedSpans(List.of());

    private final List<Joined> spans;

    JoinedSpans(List<Joined> spans) {
        this.spans = List.copyOf(spans);
    }

    /**
     * One span.
     *
     * @param ductName what its name begins with: its first piece's duct
     * @param duct as the piece has it of which least had to be assumed
     */
    record Joined(
            String ductName,
            Duct duct,
            List<String> routeIds,
            Vault from,
            Vault to,
            Line lonLat,
            RoutePacker.Ends ends,
            String positionQuality) {
        Joined {
            routeIds = List.copyOf(routeIds);
        }

        private String id() {
            return SpanName.first(ductName, from.id(), to.id());
        }
    }

    @Override
    public int size() {
        return spans.size();
    }

    @Override
    public Span span(int at) {
        Joined span = spans.get(at);
        return new Span(
                span.id(),
                span.duct,
                span.routeIds,
                span.from,
                span.to,
                span.lonLat,
                GroundLine.of(span.lonLat, span.from.elevationM(), span.to.elevationM()),
                span.ends.lengthM(),
                span.ends.drawnM(),
                span.ends.fromOffsetM(),
                span.ends.toOffsetM(),
                span.positionQuality);
    }

    @Override
    public String id(int at) {
        return spans.get(at).id();
    }

    @Override
    public String ductName(int at) {
        return spans.get(at).ductName;
    }

    @Override
    public Duct duct(int at) {
        return spans.get(at).duct;
    }

    @Override
    public int fromVault(int at) {
        return spans.get(at).ends.fromVault();
    }

    @Override
    public int toVault(int at) {
        return spans.get(at).ends.toVault();
    }

    @Override
    public Vault from(int at) {
        return spans.get(at).from;
    }

    @Override
    public Vault to(int at) {
        return spans.get(at).to;
    }

    @Override
    public double lengthM(int at) {
        return spans.get(at).ends.lengthM();
    }

    @Override
    public double drawnLengthM(int at) {
        return spans.get(at).ends.drawnM();
    }

    @Override
    public Line lonLat(int at) {
        return spans.get(at).lonLat;
    }

    @Override
    public List<String> routeIds(int at) {
        return spans.get(at).routeIds;
    }

    @Override
    public boolean hasElevations() {
        return spans.stream().anyMatch(span -> span.lonLat.hasZ());
    }
}

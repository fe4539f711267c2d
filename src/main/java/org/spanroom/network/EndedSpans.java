package org.spanroom.network;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Line;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.EndFacts;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;

/**
 * The spans of a chain of whose ends something is recorded: the spans at its two ends know it, those between know nothing. Chains of
 * whose ends nothing is recorded, which are most, do without.
 */
final class EndedSpans implements ChainSpans {
    private final ChainSpans spans;
    private final Duct recorded;
    private final ChainTip begin;
    private final ChainTip end;
    private final Duct @Nullable [] ducts;

    private EndedSpans(ChainSpans spans, Duct recorded, ChainTip begin, ChainTip end, Duct @Nullable [] ducts) {
        this.spans = spans;
        this.recorded = recorded;
        this.begin = begin;
        this.end = end;
        this.ducts = ducts;
    }

    /**
     * Returns the spans of a duct that is this chain only: its end A is where the chain begins.
     *
     * @param recorded the duct as it is recorded of the chain's first piece
     */
    static EndedSpans of(ChainSpans spans, Duct recorded, ChainTip begin, ChainTip end, UncutMarks marks) {
        return new EndedSpans(spans, recorded, begin, end, null)
                .of(Optional.of(SpanEnd.A), Optional.of(SpanEnd.B), marks);
    }

    /** Returns the same spans where the chain's ends are others of the duct's, or none. */
    EndedSpans of(Optional<SpanEnd> atBegin, Optional<SpanEnd> atEnd, UncutMarks marks) {
        Duct[] marked = new Duct[spans.size()];
        boolean isAnyMarked = false;
        for (int at = 0; at < marked.length; at++) {
            var sources = new UncutMarks.Source[] {UncutMarks.Source.NONE, UncutMarks.Source.NONE};
            if (isAtBegin(at)) {
                sources[begin.against() ? 1 : 0] = new UncutMarks.Source(atBegin, begin.uncut());
            }
            if (isAtEnd(at)) {
                sources[end.against() ? 0 : 1] = new UncutMarks.Source(atEnd, end.uncut());
            }
            marked[at] = marks.mark(spans.duct(at), sources[0], sources[1]);
            isAnyMarked |= !marked[at].equals(spans.duct(at));
        }
        return new EndedSpans(spans, recorded, begin, end, isAnyMarked ? marked : null);
    }

    private boolean isAtBegin(int at) {
        return at == 0 && begin.isAtVault();
    }

    private boolean isAtEnd(int at) {
        return at == spans.size() - 1 && end.isAtVault();
    }

    /** Returns the duct as it is recorded. */
    Duct recorded() {
        return recorded;
    }

    ChainTip begin() {
        return begin;
    }

    ChainTip end() {
        return end;
    }

    @Override
    public Span span(int at) {
        EndFacts from = EndFacts.UNKNOWN;
        EndFacts to = EndFacts.UNKNOWN;
        if (isAtBegin(at)) {
            from = begin.against() ? from : begin.facts();
            to = begin.against() ? begin.facts() : to;
        }
        if (isAtEnd(at)) {
            from = end.against() ? end.facts() : from;
            to = end.against() ? to : end.facts();
        }
        return spans.span(at).withDuct(duct(at), from, to);
    }

    @Override
    public double drawnLengthM(int at) {
        return spans.drawnLengthM(at);
    }

    @Override
    public Line lonLat(int at) {
        return spans.lonLat(at);
    }

    @Override
    public List<String> routeIds(int at) {
        return spans.routeIds(at);
    }

    @Override
    public Duct duct(int at) {
        return ducts == null ? spans.duct(at) : ducts[at];
    }

    @Override
    public int size() {
        return spans.size();
    }

    @Override
    public String id(int at) {
        return spans.id(at);
    }

    @Override
    public String ductName(int at) {
        return spans.ductName(at);
    }

    @Override
    public int fromVault(int at) {
        return spans.fromVault(at);
    }

    @Override
    public int toVault(int at) {
        return spans.toVault(at);
    }

    @Override
    public Vault from(int at) {
        return spans.from(at);
    }

    @Override
    public Vault to(int at) {
        return spans.to(at);
    }

    @Override
    public double lengthM(int at) {
        return spans.lengthM(at);
    }

    @Override
    public int touch(int at) {
        return spans.touch(at);
    }

    @Override
    public boolean hasElevations() {
        return spans.hasElevations();
    }
}

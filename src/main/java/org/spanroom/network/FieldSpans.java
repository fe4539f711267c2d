package org.spanroom.network;

import java.util.List;
import java.util.Map;
import org.spanroom.model.Line;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanList;

/** The spans of a network, with other ducts and other facts at their vaults for the few that the field book speaks of. */
final class FieldSpans extends SpanList {
    private final SpanList spans;
    private final Map<Integer, FieldChanges.Applied> changed;

    /** @param changed by the numbers of the spans */
    FieldSpans(SpanList spans, Map<Integer, FieldChanges.Applied> changed) {
        this.spans = spans;
        this.changed = Map.copyOf(changed);
    }

    @Override
    public int size() {
        return spans.size();
    }

    @Override
    public Span get(int number) {
        Span span = spans.get(number);
        FieldChanges.Applied applied = changed.get(number);
        return applied == null ? span : span.withDuct(applied.duct(), applied.fromFacts(), applied.toFacts());
    }

    @Override
    public String id(int number) {
        return spans.id(number);
    }

    @Override
    public Duct duct(int number) {
        FieldChanges.Applied applied = changed.get(number);
        return applied == null ? spans.duct(number) : applied.duct();
    }

    @Override
    public double drawnLengthM(int number) {
        return spans.drawnLengthM(number);
    }

    @Override
    public Line lonLat(int number) {
        return spans.lonLat(number);
    }

    @Override
    public String fromId(int number) {
        return spans.fromId(number);
    }

    @Override
    public String toId(int number) {
        return spans.toId(number);
    }

    @Override
    public List<String> routeIds(int number) {
        return spans.routeIds(number);
    }

    @Override
    public int fromVault(int number) {
        return spans.fromVault(number);
    }

    @Override
    public int toVault(int number) {
        return spans.toVault(number);
    }

    @Override
    public double lengthM(int number) {
        return spans.lengthM(number);
    }

    @Override
    public SectionKey section(int number) {
        return spans.section(number);
    }

    @Override
    public long leadingOfId(int number) {
        return spans.leadingOfId(number);
    }

    @Override
    public int compareIds(int number, int other) {
        return spans.compareIds(number, other);
    }

    @Override
    public boolean hasElevations() {
        return spans.hasElevations();
    }
}

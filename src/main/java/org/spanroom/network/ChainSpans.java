package org.spanroom.network;

import java.util.List;
import org.spanroom.model.Duct;
import org.spanroom.model.Span;

/** The spans that one chain of routes was cut into, in the order along it. Unmodifiable. */
interface ChainSpans {
    /** Of a chain that lies in no span. */
    ChainSpans NONE = joined(List.of());

    int size();

    /** Returns a span by its own name, which may not be the only one in the network. */
    Span span(int at);

    String id(int at);

    /** Returns what a span's name begins with: the name of its duct. */
    String ductName(int at);

    Duct duct(int at);

    boolean hasElevations();

    /** Returns spans of several routes joined end to end, which have too little in common to be packed. */
    static ChainSpans joined(List<Span> spans) {
        List<Span> kept = List.copyOf(spans);
        return new ChainSpans() {
            @Override
            public int size() {
                return kept.size();
            }

            @Override
            public Span span(int at) {
                return kept.get(at);
            }

            @Override
            public String id(int at) {
                return kept.get(at).id();
            }

            @Override
            public String ductName(int at) {
                String id = id(at);
                return id.substring(0, id.indexOf(':'));
            }

            @Override
            public Duct duct(int at) {
                return kept.get(at).duct();
            }

            @Override
            public boolean hasElevations() {
                return kept.stream().anyMatch(span -> span.lonLat().hasZ());
            }
        };
    }
}

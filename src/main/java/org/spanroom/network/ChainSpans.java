package org.spanroom.network;

import java.util.List;
import org.spanroom.model.Line;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;

/** The spans that one chain of routes was cut into, in the order along it. Unmodifiable. */
interface ChainSpans {
    int size();

    /** Returns a span by its own name, which may not be the only one in the network. */
    Span span(int at);

    String id(int at);

    /** Returns what a span's name begins with: the name of its duct. */
    String ductName(int at);

    Duct duct(int at);

    /** Returns the number of the vault where a span begins. */
    int fromVault(int at);

    int toVault(int at);

    /** Returns the vault where a span begins. */
    Vault from(int at);

    Vault to(int at);

    double lengthM(int at);

    default double drawnLengthM(int at) {
        return span(at).drawnLengthM();
    }

    /** Returns the line of a span in degrees. */
    default Line lonLat(int at) {
        return span(at).lonLat();
    }

    /** Returns the names of the routes that a span is made of. */
    default List<String> routeIds(int at) {
        return span(at).routeIds();
    }

    /**
     * Reads a little of everything that is kept about a span; see {@link org.spanroom.model.network.SpanList#prefetch}.
     *
     * @return a number without meaning, for {@link org.spanroom.model.Prefetch}
     */
    default int touch(int at) {
        return size() + at;
    }

    boolean hasElevations();
}

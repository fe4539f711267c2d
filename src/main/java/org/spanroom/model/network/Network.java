package org.spanroom.model.network;

import java.util.List;

/**
 * The spans that the routes fall into, and an account of all drawn length.
 *
 * @param spans in the order of the routes that they are on
 * @param vaults every vault that counts, in the order of their names
 * @param routeLengthM ground length of all routes read
 * @param spanLengthM drawn ground length of all spans
 * @param remainderLengthM drawn ground length that is not assigned to a span; a finding names each piece
 */
public record Network(
        SpanList spans, List<VaultUse> vaults, double routeLengthM, double spanLengthM, double remainderLengthM) {
    public Network {
        vaults = List.copyOf(vaults);
    }

    /** A network of spans that are kept as they are. */
    public Network(
            List<Span> spans, List<VaultUse> vaults, double routeLengthM, double spanLengthM, double remainderLengthM) {
        this(SpanList.of(spans, vaults), vaults, routeLengthM, spanLengthM, remainderLengthM);
    }

    public Network withVaults(List<VaultUse> others) {
        return new Network(spans, others, routeLengthM, spanLengthM, remainderLengthM);
    }
}

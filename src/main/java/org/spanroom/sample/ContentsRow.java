package org.spanroom.sample;

import java.util.OptionalDouble;

/**
 * One row of the contents table: an innerduct or a cable in a duct.
 *
 * @param inside the item that this one lies in, or empty where it lies in the duct itself
 */
record ContentsRow(
        String duct,
        String item,
        String kind,
        String inside,
        double outsideIn,
        OptionalDouble sdr,
        OptionalDouble wallIn,
        OptionalDouble massLbKft,
        String service) {

    /** Returns an innerduct, whose wall is recorded by its ratio or as such. */
    static ContentsRow innerduct(String item, InnerductSize size, boolean byWall) {
        return new ContentsRow(
                "",
                item,
                "innerduct",
                "",
                size.outsideIn(),
                byWall ? OptionalDouble.empty() : OptionalDouble.of(size.sdr()),
                byWall ? OptionalDouble.of(size.wallIn()) : OptionalDouble.empty(),
                OptionalDouble.empty(),
                "");
    }

    static ContentsRow cable(String item, String inside, CableSize size, String service) {
        return new ContentsRow(
                "",
                item,
                "cable",
                inside,
                size.outsideIn(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(size.massLbKft()),
                service);
    }

    ContentsRow inDuct(String duct) {
        return new ContentsRow(duct, item, kind, inside, outsideIn, sdr, wallIn, massLbKft, service);
    }

    ContentsRow ofKind(String otherKind) {
        return new ContentsRow(duct, item, otherKind, inside, outsideIn, sdr, wallIn, massLbKft, service);
    }
}

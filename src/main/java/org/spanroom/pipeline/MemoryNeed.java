package org.spanroom.pipeline;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Counted;
import org.spanroom.model.Line;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Route;
import org.spanroom.model.rank.SpanFigures;
import org.spanroom.output.table.PackedRows;
import org.spanroom.rank.SectionGroups;

/**
 * The least memory in which a network can be assessed and written, so that a run that cannot succeed ends before most of its work
 * is done.
 *
 * <p>Counted from the records that are kept to the end, in bytes as a 64-bit JVM with short pointers lays them out; findings, bends and
 * what is being written come on top, about a third as much again. Networks for which any JVM has the memory are let through.
 */
final class MemoryNeed {
    private static final long ROUTE_BYTES = 350;
    private static final long VERTEX_BYTES = 5;
    private static final long SPAN_BYTES = 120;
    /** Of a simulation: the draws in which the span is feasible, its chance, three of its scores, the most it can have, and its ranges of money. */
    private static final long SIMULATED_BYTES = SpanFigures.DRAWS_BYTES + 4 * Float.BYTES + 2 + MoneyRun.SPAN_BYTES;

    private static final long VAULT_BYTES = 200;
    private static final long ALWAYS_BYTES = 40L << 20;

    /** What is usually needed in addition to the least, and what a collector needs to work in. */
    private static final double USUAL_RATIO = 1.2;

    /** Other programs and the results that are being written need some of the memory beside the heap. */
    private static final double BESIDE_RATIO = 2;

    /** A span takes up to ten times the bytes of its packed row in the results. */
    private static final double DISK_RATIO = 12;

    /** Fewer go into the smallest memory that is ever given. */
    private static final int FEWEST_SPANS = 50_000;

    private static final int LATELY_BITS = 14;
    private static final long MEBIBYTE = 1L << 20;

    private MemoryNeed() {}

    /**
     * Lets a network pass, or says what it needs.
     *
     * @param simulated whether the assessment simulates what is uncertain
     * @param heapBytes the most that Java may use
     * @return whether the heap has room for the packed rows of the spans, too
     * @throws NotEnoughMemoryException if that is surely too little
     */
    static boolean demand(List<Route> routes, Network network, boolean simulated, long heapBytes) {
        int spans = network.spans().size();
        long needed = leastBytes(routes, network, simulated);
        if (spans >= FEWEST_SPANS && needed > heapBytes) {
            throw new NotEnoughMemoryException(String.format(
                    Locale.ROOT,
                    "not enough memory: %s need at least %,d MiB, but the Java heap limit is %,d MiB. "
                            + "Nothing was written; earlier results are as they were. "
                            + "Increase it: java -Xmx%dm -jar spanroom.jar ...",
                    Counted.of(spans, "span"),
                    needed / MEBIBYTE,
                    heapBytes / MEBIBYTE,
                    2 * needed / MEBIBYTE));
        }
        return (needed + rowBytes(spans)) * USUAL_RATIO < heapBytes;
    }

    /**
     * Returns whether rows that the heap has no room for may go into a file. The system must be able to keep the file in the memory beside the heap, together with
     * what else is being written, since rows are read back out of their order; and the disk must have room for it and for the results.
     *
     * @param besideBytes memory of the machine, or of what this program may have of it, that the heap does not use
     * @param diskBytes free space where the file and the results are written
     */
    static boolean mayUseFile(long besideBytes, long diskBytes, int spans) {
        return BESIDE_RATIO * rowBytes(spans) < besideBytes && DISK_RATIO * rowBytes(spans) < diskBytes;
    }

    private static long rowBytes(int spans) {
        return (long) PackedRows.EXPECTED_ROW_BYTES * spans;
    }

    private static long leastBytes(List<Route> routes, Network network, boolean simulated) {
        long spanBytes = SPAN_BYTES
                + SpanFigures.SPAN_BYTES
                + SectionGroups.SPAN_BYTES
                + BankPlaces.SPAN_BYTES
                + SharedBuild.SPAN_BYTES
                + (simulated ? SIMULATED_BYTES : 0);
        return ALWAYS_BYTES
                + ROUTE_BYTES * routes.size()
                + VERTEX_BYTES * heldVertices(routes)
                + spanBytes * network.spans().size()
                + VAULT_BYTES * network.vaults().size();
    }

    /** Lines drawn upon one another are held once while they are near each other in the file; each is counted once. */
    @SuppressWarnings("ReferenceEquality") // what is held twice counts twice, equal or not
    private static long heldVertices(List<Route> routes) {
        var lately = new @Nullable Line[1 << LATELY_BITS];
        long vertices = 0;
        for (Route route : routes) {
            Line line = route.lonLat();
            int slot = (System.identityHashCode(line) * 0x9E3779B9) >>> (Integer.SIZE - LATELY_BITS);
            if (lately[slot] != line) {
                lately[slot] = line;
                vertices += line.size();
            }
        }
        return vertices;
    }
}

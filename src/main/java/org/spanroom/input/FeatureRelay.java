package org.spanroom.input;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.parallel.Handoff;

/**
 * Reads a layer on one thread and makes routes or vaults of its features on another, in file order. Features are handed over many at
 * a time, since handing over one feature takes as long as reading it.
 */
final class FeatureRelay {
    private static final int AT_ONCE = 256;
    private static final int MOST_WAITING = 16;

    /** A few long lines are as much as many short ones. */
    private static final int ORDINATES_AT_ONCE = 1 << 16;

    private final Consumer<List<SourceFeature>> sink;
    private List<SourceFeature> begun = new ArrayList<>(AT_ONCE);
    private long begunOrdinates;

    private FeatureRelay(Consumer<List<SourceFeature>> sink) {
        this.sink = sink;
    }

    /**
     * Reads all features of a layer.
     *
     * @param consumer takes each in turn, on a separate thread unless there is only one
     * @return how many features were met, as {@link LayerSource#read} returns it
     */
    static long read(LayerSource source, List<String> fields, Consumer<SourceFeature> consumer, int threads) {
        if (threads == 1) {
            return source.read(fields, consumer);
        }
        return Handoff.<List<SourceFeature>, Long>run(MOST_WAITING, features -> features.forEach(consumer), sink -> {
            var relay = new FeatureRelay(sink);
            long met = source.read(fields, relay::add);
            relay.handOver();
            return met;
        });
    }

    private void add(SourceFeature feature) {
        begun.add(feature);
        for (double[] part : feature.geometry().parts()) {
            begunOrdinates += part.length;
        }
        if (begun.size() == AT_ONCE || begunOrdinates >= ORDINATES_AT_ONCE) {
            handOver();
        }
    }

    private void handOver() {
        sink.accept(begun);
        begun = new ArrayList<>(AT_ONCE);
        begunOrdinates = 0;
    }
}

package org.spanroom.input.layer;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;

/**
 * One layer of one file, opened for reading. Implementations differ by format only.
 *
 * <p>A damaged feature becomes a finding and the reading goes on; a file that cannot be read at all, or not any further,
 * ends in an {@link org.spanroom.finding.InputException}.
 */
public interface LayerSource extends AutoCloseable {
    LayerHeader header();

    /** Returns the header with the wanted fields that the last reading met and the beginning of the file did not show. */
    default LayerHeader headerAsRead() {
        return header();
    }

    /**
     * Reads every feature in file order and hands it on; nothing of it is kept. A field that the layer does not have
     * yields null. May be called again, and then reads and reports everything again.
     *
     * @return how many features were met, those rejected by findings included
     */
    long read(List<String> wantedFields, Consumer<SourceFeature> sink);

    /** Returns how many features the last reading rejected instead of handing them on, by the reason. */
    default Map<FindingCode, Long> rejected() {
        return Map.of();
    }

    /**
     * Returns how much of the layer has been read, from 0 to 1, or NaN where it is unknown. For the reader of a progress line only: it
     * believes what the file announces, and may be asked by another thread than the one that reads.
     *
     * @param features how many features have come so far
     */
    default double shareRead(long features) {
        long announced = header().featureCount();
        return announced > 0 ? Math.min(1, features / (double) announced) : Double.NaN;
    }

    /**
     * Returns the layer opened again where a reading that ended in an exception has shown that the header was wrong, and what it
     * is instead; empty where that would not help.
     *
     * @param findings takes what is wrong with the layer, now and while it is read
     */
    default Optional<LayerSource> corrected(FindingLog findings) {
        return Optional.empty();
    }

    @Override
    void close();
}

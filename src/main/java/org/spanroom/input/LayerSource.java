package org.spanroom.input;

import java.util.List;
import java.util.function.Consumer;

/**
 * One layer of one file, opened for reading. Implementations differ by format only.
 *
 * <p>A damaged feature becomes a finding and the reading goes on; a file that cannot be read at all, or not any further,
 * ends in an {@link org.spanroom.finding.InputException}.
 */
interface LayerSource extends AutoCloseable {
    LayerHeader header();

    /**
     * Reads every feature in file order and hands it on; nothing of it is kept. A field that the layer does not have
     * yields null. May be called again, and then reads and reports everything anew.
     *
     * @return how many features were met, those rejected by findings included
     */
    long read(List<String> wantedFields, Consumer<SourceFeature> sink);

    @Override
    void close();
}

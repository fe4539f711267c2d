package org.spanroom.input;

/** Receives how far the reading of all inputs has come. Implementations must bear calls from several threads. */
public interface ReadingProgress {
    /** Ignores everything. */
    ReadingProgress SILENT = (features, doneShare) -> {};

    /**
     * More has been read.
     *
     * @param features how many more features, of any layer
     * @param doneShare how much of the bytes of all files has been read, from 0 to 1; NaN where it is unknown
     */
    void advance(long features, double doneShare);
}

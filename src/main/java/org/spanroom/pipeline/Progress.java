package org.spanroom.pipeline;

/** Receives how far a run has come. Implementations must bear calls from several threads. */
public interface Progress {
    /** Ignores everything. */
    Progress SILENT = new Progress() {
        @Override
        public void begin(String stage, long expectedCount) {}

        @Override
        public void advance(long count) {}

        @Override
        public void reach(double doneShare) {}

        @Override
        public void end(String result) {}
    };

    /**
     * A stage begins.
     *
     * @param stage what is done, as a verb and its object: "read routes"
     * @param expectedCount how many things will be done, or -1 where it is unknown
     */
    void begin(String stage, long expectedCount);

    /** This many more things of the stage are done. */
    void advance(long count);

    /**
     * So much of the stage is done, where its things cannot be counted beforehand.
     *
     * @param doneShare from 0 to 1; NaN where it is unknown
     */
    void reach(double doneShare);

    /**
     * The stage has ended.
     *
     * @param result what came out of it, with counts
     */
    void end(String result);
}

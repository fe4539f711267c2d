package org.spanroom.pipeline;

import java.util.List;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.InputData;
import org.spanroom.model.network.EndDistanceCounts;
import org.spanroom.model.network.Network;
import org.spanroom.network.EndDistances;

/** Inputs and spans only: what the data is worth before anything is computed from it. */
public final class CheckRun {
    private final RunConfig config;
    private final Progress progress;

    public CheckRun(RunConfig config, Progress progress) {
        this.config = config;
        this.progress = progress;
    }

    /**
     * What a check found.
     *
     * @param ends how near the line ends lie to vaults
     * @param findings in the order of their kinds
     */
    public record CheckSummary(
            InputData inputs, Network network, EndDistanceCounts ends, List<Finding> findings, long findingsToFix) {}

    /** Reads and cuts; writes nothing. */
    public CheckSummary run() {
        var findings = new FindingLog();
        var spanRun = new SpanRun(config, findings, progress);
        InputData inputs = spanRun.read();
        Network network = spanRun.cut(inputs);
        UsableInputs.demandSpans(inputs, network, findings, config.network().snapToleranceM());
        EndDistanceCounts ends = EndDistances.count(inputs.routes(), inputs.vaults());
        return new CheckSummary(inputs, network, ends, findings.all(), findings.countToMend());
    }
}

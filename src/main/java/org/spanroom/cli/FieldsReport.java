package org.spanroom.cli;

import java.util.List;
import org.spanroom.config.RunConfig;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.input.proposal.ProposalYaml;

/** What {@code check --fields} says: each layer's fields with samples, and a map of them to paste into a config. */
final class FieldsReport {
    private FieldsReport() {}

    static String text(List<FieldProposal> proposals, RunConfig config) {
        return Printable.of(ProposalYaml.inputs(
                proposals, config.inputs().contents(), file -> file.toString().replace('\\', '/')));
    }
}

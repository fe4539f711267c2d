package org.spanroom.pipeline;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.spanroom.finding.InputException;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.ProgramConnection;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.output.RecordedRun;
import org.spanroom.program.ProgramInputs;

/** What is wrong with the musts of a program, in one line. */
final class Musts {
    private static final String REMEDY = "Change must in the config of the program, its budgets, crews or dates.";

    private Musts() {}

    /**
     * Demands that each span that must be in the program can be recovered.
     *
     * @throws InputException naming the first that cannot, with the reason
     */
    static void demandPossible(
            RecordedRun run, List<String> musts, ProgramInputs inputs, Map<String, SpanFacts> facts) {
        Set<String> eligible = new HashSet<>();
        inputs.eligibleSpans().forEach(span -> eligible.add(span.facts().spanId()));
        for (String span : musts) {
            if (!eligible.contains(span)) {
                List<String> reasons = Objects.requireNonNull(facts.get(span)).reasons();
                throw new InputException(
                        run.file(),
                        "span " + span + " of must cannot be recovered"
                                + (reasons.isEmpty()
                                        ? ": it is done, or has failed"
                                        : ": " + String.join(", ", reasons)),
                        "Take it from must in the config of the program.");
            }
        }
    }

    /** Returns why there is no program at all. */
    static InputException noPlan(RecordedRun run, List<String> whyNot) {
        String why = whyNot.isEmpty() ? "no plan keeps the musts within the limits" : String.join("; ", whyNot);
        return new InputException(run.file(), why, REMEDY);
    }

    /** Returns what keeps a connection that is a must from being served in time, if its row or its way does: the solver says the rest. */
    static Optional<String> fault(ProgramConnection row) {
        Connection connection = row.connection();
        if (!connection.must()) {
            return Optional.empty();
        }
        Optional<String> unusable = connection.problem().map(why -> "is not served: " + why);
        Optional<String> late = row.servedOn()
                .filter(day -> connection.neededBy().filter(day::isAfter).isPresent())
                .map(day -> "is served on " + day + ", after the day by which it is needed");
        return unusable.or(() -> late)
                .map(why -> "connection "
                        + (connection.name().isEmpty() ? "in line " + connection.line() : connection.name())
                        + ", a must, " + why);
    }
}

package org.spanroom.pipeline;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.spanroom.config.RunConfig;
import org.spanroom.input.InputData;
import org.spanroom.learn.LearnedContents;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.SpanName;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.output.table.Text;

/** What opened ducts of a run say of the others, found from its inputs before any route is cut. */
final class LearnedOfRun {
    private LearnedOfRun() {}

    /** Returns the chances that a run simulates with. */
    static LearnedChances chances(RunConfig config, InputData inputs) {
        return contents(config, inputs, inputs.fieldBook()).chances();
    }

    /** Returns what a field book says of the ducts of a run. */
    static LearnedContents contents(RunConfig config, InputData inputs, FieldBook book) {
        Function<String, Optional<Duct>> recorded = book.isEmpty() ? spanId -> Optional.empty() : recorded(inputs);
        return LearnedContents.of(book, recorded, config.uncertainty(), config.scenarios());
    }

    /** Finds ducts as the inputs have them by the names of spans, as data or results have these; of a duct in several pieces the first. */
    private static Function<String, Optional<Duct>> recorded(InputData inputs) {
        Map<String, Duct> ducts = new HashMap<>();
        inputs.routes()
                .forEach(route -> ducts.putIfAbsent(Text.clean(route.duct().id()), route.duct()));
        return spanId ->
                SpanName.parse(spanId).flatMap(name -> Optional.ofNullable(ducts.get(Text.clean(name.ductId()))));
    }
}

package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.spanroom.config.NearestWord;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.input.AreasReader;
import org.spanroom.output.Selection;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;
import org.spanroom.select.Areas;
import org.spanroom.select.Condition;

/**
 * Which spans a user wants to have written.
 *
 * @param where a condition on the columns of the spans
 * @param within a file of polygons that they touch
 */
public record SpanChoice(Optional<String> where, Optional<Path> within) {
    public static final SpanChoice ALL = new SpanChoice(Optional.empty(), Optional.empty());

    /**
     * Returns the choice as the writer needs it. Nothing is written or calculated before it is known to be usable.
     *
     * @param spans the table of spans as it will be written
     * @throws org.spanroom.finding.UsageException if the condition cannot be used
     * @throws org.spanroom.finding.InputException if the polygons cannot be read
     */
    Selection of(Table<?> spans, RunConfig config) {
        if (where.isEmpty() && within.isEmpty()) {
            return Selection.ALL;
        }
        ReferenceSystem.awaitDataset();
        var asked = new LinkedHashMap<String, String>();
        Optional<Supplier<Condition>> conditions = where.map(text -> conditions(text, spans));
        where.ifPresent(text -> asked.put("where", text));
        Optional<AreasReader.Read> read = within.map(file -> AreasReader.read(file, config));
        read.ifPresent(areas -> {
            asked.put("within", areas.file());
            asked.put("within_sha256", areas.sha256());
        });
        Optional<Areas> areas = read.map(polygons -> Areas.of(polygons.outlines()));
        return new Selection(asked, () -> test(conditions.map(Supplier::get), areas));
    }

    private static Supplier<Condition> conditions(String text, Table<?> spans) {
        var types = new LinkedHashMap<String, Class<?>>();
        for (Column<?> column : spans.columns()) {
            types.put(column.name(), type(column.type()));
        }
        UnaryOperator<String> remedy = wrong -> remedy(wrong, types);
        Condition.parse(text, types, remedy);
        return () -> Condition.parse(text, types, remedy);
    }

    private static String remedy(String wrong, Map<String, ?> columns) {
        return "did you mean '"
                + NearestWord.nearest(wrong, columns.keySet(), 1).get(0)
                + "'? The data dictionary lists the columns of spans";
    }

    private static Class<?> type(Column.Type type) {
        return switch (type) {
            case TEXT -> String.class;
            case INTEGER -> Long.class;
            case REAL -> Double.class;
            case FLAG -> Boolean.class;
        };
    }

    private static Selection.SpanTest test(Optional<Condition> condition, Optional<Areas> areas) {
        return (cells, lonLat) -> condition.map(asked -> asked.holds(cells)).orElse(true)
                && areas.map(asked -> lonLat.map(asked::touches).orElse(false)).orElse(true);
    }
}

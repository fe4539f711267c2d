package org.spanroom.output;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.rank.ContentsAccount;

/**
 * What a file of results says of itself, since it may be passed on without its folder: which program and command made it, when, from which
 * inputs, and which cautions apply.
 */
public final class AboutFile {
    private static final String RATES = "rates";
    private static final String SOURCE = "source";
    private static final String ILLUSTRATIVE = "illustrative";

    private AboutFile() {}

    /** Returns it as JSON, of the results of one run. */
    static String of(RunRecord run, Map<String, String> filter, ContentsAccount contents, String crsName) {
        var about = opening("rank", run.startedAt(), crsName);
        if (!filter.isEmpty()) {
            var asked = new JsonObject();
            filter.forEach(asked::text);
            about.object("filter", asked);
        }
        var cautions = cautions(run.config());
        if (contents.counts().isAssumption()) {
            cautions.add(contents.statement() + ".");
        } else if (contents.counts().rankedAssumed() > 0) {
            cautions.add(String.format(
                    Locale.ROOT,
                    "The contents of %,d of %,d ranked spans are assumed; the column contents_source says of which.",
                    contents.counts().rankedAssumed(),
                    contents.counts().ranked()));
        }
        return about.texts("cautions", cautions)
                .objects("runs", List.of(run(run.version(), run.inputs())))
                .write();
    }

    /**
     * Returns it as JSON, of what another command made of runs.
     *
     * @param config of the last run: texts, numbers, Booleans, lists and maps
     * @param runs in the order in which the command was given them
     */
    public static String ofRuns(String command, Instant writtenAt, Map<String, ?> config, List<RecordedRun> runs) {
        var cautions = cautions(config);
        cautions.add("Contents are as the run has them: the column contents_source of its spans says where they are "
                + "assumed.");
        return opening(command, writtenAt, runs.get(runs.size() - 1).outputCrs())
                .texts("cautions", cautions)
                .objects(
                        "runs",
                        runs.stream()
                                .map(run -> run(run.version(), run.inputs()))
                                .toList())
                .write();
    }

    private static JsonObject opening(String command, Instant writtenAt, String crsName) {
        return new JsonObject()
                .text("program", "Spanroom")
                .text("command", command)
                .text("written_at", writtenAt.toString())
                .text("output_crs", crsName);
    }

    private static List<String> cautions(Map<String, ?> config) {
        var cautions = new ArrayList<>(List.of(PlanningCaution.TEXT));
        List<String> sources = sources(config.get(RATES)).toList();
        long illustrative =
                sources.stream().filter(source -> source.contains(ILLUSTRATIVE)).count();
        if (illustrative > 0) {
            cautions.add(String.format(
                    Locale.ROOT,
                    "%,d of %,d rates are illustrative, at least in part; money and hours need the owner's own rates.",
                    illustrative,
                    sources.size()));
        }
        return cautions;
    }

    /** Returns the sources of all rates, at whatever depth they stand. */
    private static Stream<String> sources(@Nullable Object part) {
        if (part instanceof Map<?, ?> map) {
            Object own = map.get(SOURCE);
            return own == null ? map.values().stream().flatMap(AboutFile::sources) : Stream.of(String.valueOf(own));
        }
        return part instanceof List<?> list ? list.stream().flatMap(AboutFile::sources) : Stream.of();
    }

    private static JsonObject run(String version, List<RunRecord.Input> inputs) {
        return new JsonObject()
                .text("version", version)
                .objects("inputs", inputs.stream().map(AboutFile::input).toList());
    }

    private static JsonObject input(RunRecord.Input input) {
        return new JsonObject()
                .text("role", input.role())
                .text("layer", input.layer())
                .text("crs", input.crs())
                .objects(
                        "files",
                        input.files().stream()
                                .map(file -> new JsonObject()
                                        .text("file", file.file())
                                        .text("sha256", file.sha256()))
                                .toList());
    }
}

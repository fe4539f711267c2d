package org.spanroom.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.RankConfidence;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.explain.Explanation;
import org.spanroom.output.explain.ExplanationText;
import org.spanroom.output.report.DetailJson;
import org.spanroom.output.report.SpanDetail;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.rank.ScoreBands;
import org.spanroom.rank.TopScores;
import org.spanroom.sample.DemoCity;

/** Details of many spans beside what {@code explain} says of each, and beside the run itself. */
class ReportDetailsTest {
    private static final Path DEMO = Path.of("sample-gis", "spanroom.yaml");
    private static final int TOP = 30;

    @TempDir
    static Path folder;

    private static Path run;
    private static List<String> ids;

    @BeforeAll
    static void runASmallCity() throws IOException {
        DemoCity.write(400, 3, folder);
        run = folder.resolve("run");
        new RankRun(config(), Progress.SILENT).run(false, "development", Instant.parse("2026-01-01T00:00:00Z"));
        ids = new ExplainRun(run, Progress.SILENT)
                .idsAt(IntStream.rangeClosed(1, TOP).boxed().toList());
    }

    private static RunConfig config() throws IOException {
        Path file = folder.resolve("city.yaml");
        String files = folder.toString().replace('\\', '/');
        String text = Files.readString(DEMO).replace("../sample-gis/", files + "/");
        Files.writeString(file, text);
        RunConfig config = ConfigReader.read(file);
        return config.withOutput(config.output().withFolder(run)).withThreads(2);
    }

    @Test
    void theTreeIsTheOneThatExplainShows() {
        for (UnitSystem units : UnitSystem.values()) {
            List<SpanDetail> details = of(ids, Optional.of(units)).details();
            List<String> some = List.of(ids.get(0), ids.get(4), ids.get(TOP - 1));
            List<SpanExplanation> explained = new ExplainRun(run, Progress.SILENT, Optional.of(units)).run(some);

            for (int i = 0; i < some.size(); i++) {
                SpanDetail detail = details.get(ids.indexOf(some.get(i)));
                assertEquals(some.get(i), detail.spanId());
                assertEquals(
                        ExplanationText.write(Explanation.of(explained.get(i), units)),
                        ExplanationText.write(detail.tree()));
            }
        }
    }

    @Test
    void excludedSpansHaveDetailsButNoBand() throws IOException {
        City city = new City();
        List<String> all = Stream.concat(
                        ids.stream(),
                        IntStream.range(city.ranked.countRanked(), city.ranked.size())
                                .mapToObj(place -> city.ranked.at(place).span().id()))
                .toList();

        ReportDetails.Found found = of(all, Optional.empty());

        assertEquals(all, found.details().stream().map(SpanDetail::spanId).toList());
        assertEquals(TOP, found.bands().orElseThrow().bandOfSpan().size());
        assertTrue(found.notes().isEmpty());
    }

    @Test
    void aSpanAmongManyOnTwoThreadsIsTheSameAsAlone() throws IOException {
        ReportDetails.Found found = of(ids, Optional.empty());
        ReportDetails.Found again = of(ids, Optional.empty());

        assertEquals(json(found.details()), json(again.details()));
        assertEquals(found.bands(), again.bands());
        for (int i = 0; i < TOP; i += 7) {
            ReportDetails.Found alone = of(List.of(ids.get(i)), Optional.empty());
            assertEquals(json(alone.details()), json(List.of(found.details().get(i))));
        }
    }

    /** Scores simulated for the report give the chances to be at the top that the run recorded. */
    @Test
    void theDrawsAreThoseOfTheRun() throws IOException {
        City city = new City();
        int ranked = city.ranked.countRanked();
        int samples = city.config.uncertainty().samples();
        var tops = new TopScores(
                samples,
                Math.min(city.ranked.size() + 1, city.config.uncertainty().topCount()));
        List<double[]> scores = new ArrayList<>();
        for (int place = 0; place < ranked; place++) {
            scores.add(city.calculate(place).scoresBySample());
            tops.add(scores.get(place));
        }
        int between = 0;
        for (int place = 0; place < ranked; place++) {
            RankConfidence recorded = city.ranked.at(place).sureness().orElseThrow();
            assertEquals(recorded.topRatio(), TopScores.topRatio(scores.get(place), tops.thresholds()));
            between += recorded.topRatio() > 0 && recorded.topRatio() < 1 ? 1 : 0;
        }
        assertTrue(between > 5, between + " spans are at the top in some samples only");
        assertEquals(
                ScoreBands.of(scores.subList(0, TOP)),
                of(ids, Optional.empty()).bands().orElseThrow());
    }

    @Test
    void aMissingOrChangedInputLeavesANoteInsteadOfDetails() throws IOException {
        Path contents = folder.resolve("contents.csv");
        byte[] before = Files.readAllBytes(contents);
        try {
            Files.writeString(contents, "\n", java.nio.file.StandardOpenOption.APPEND);
            ReportDetails.Found changed = of(ids, Optional.empty());
            Files.delete(contents);
            ReportDetails.Found missing = of(ids, Optional.empty());

            for (ReportDetails.Found found : List.of(changed, missing)) {
                assertEquals(List.of(), found.details());
                assertEquals(Optional.empty(), found.bands());
                assertEquals(1, found.notes().size());
                assertTrue(
                        found.notes().get(0).contains("contents.csv"),
                        found.notes().get(0));
            }
            assertTrue(
                    changed.notes().get(0).contains("it has changed"),
                    changed.notes().get(0));
            assertTrue(
                    missing.notes().get(0).contains("bring the file back"),
                    missing.notes().get(0));
        } finally {
            Files.write(contents, before);
        }
    }

    private static ReportDetails.Found of(List<String> spanIds, Optional<UnitSystem> asked) {
        return ReportDetails.of(run, spanIds, Progress.SILENT, asked);
    }

    private static String json(List<SpanDetail> details) throws IOException {
        var text = new StringWriter();
        try (JsonGenerator generator = new JsonFactory().createGenerator(text)) {
            DetailJson.write(details, IntStream.range(0, details.size()).boxed().toList(), UnitSystem.US, generator);
        }
        return text.toString();
    }

    /** The run, held whole. */
    private static final class City {
        private final RunConfig config = config();
        private final AssessedSpans ranked;
        private final SpanCalculator calculator;
        private final List<String> idsByNumber;

        City() throws IOException {
            var rankRun = new RankRun(config, Progress.SILENT);
            var inputs = rankRun.read();
            var network = rankRun.cut(inputs);
            ranked = rankRun.rank(
                    network,
                    new PermitAssessor(inputs.zones(), config.permit(), ConfiguredParts.access(config)),
                    LearnedChances.NONE);
            idsByNumber = IntStream.range(0, network.spans().size())
                    .mapToObj(network.spans()::id)
                    .toList();
            calculator =
                    new SpanCalculator(config, inputs.zones(), network.spans(), ranked.size(), LearnedChances.NONE);
        }

        SpanCalculator.Calculated calculate(int place) {
            RankedSpan row = ranked.at(place);
            int number = idsByNumber.indexOf(row.span().id());
            return calculator.calculate(place, number, new RecordedStanding(row.rank(), ranked.countRanked()));
        }
    }
}

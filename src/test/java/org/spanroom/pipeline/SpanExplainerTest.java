package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.input.InputData;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultNeeds;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.explain.Explanation;
import org.spanroom.output.explain.ExplanationJson;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.sample.DemoCity;

/** A span calculated from the routes that it depends on, beside the same span of a run over everything. */
class SpanExplainerTest {
    private static final Path DEMO = Path.of("sample-gis", "spanroom.yaml");

    @TempDir
    Path folder;

    @Test
    void everySpanOfASmallCityIsTheSameByItself() throws IOException {
        DemoCity.write(150, 3, folder);
        Path config = folder.resolve("city.yaml");
        String files = folder.toString().replace('\\', '/');
        Files.writeString(config, Files.readString(DEMO).replace("../sample-gis/", files + "/"));
        var city = new City(ConfigReader.read(config));

        assertThat(city.size()).isGreaterThan(100);
        IntStream.range(0, city.size()).forEach(city::compare);
    }

    @Test
    void spansOfTheDemoCityAreTheSameByThemselves() {
        var city = new City(ConfigReader.read(DEMO));
        var random = new Random(5);

        random.ints(60, 0, city.size()).forEach(city::compare);
    }

    /** Spans that share a name are numbered in the order of the whole network. */
    @Test
    void numberedSpansAreTheSameByThemselves() {
        var city = new City(ConfigReader.read(DEMO), SpanExplainerTest::withRoutesTwice);
        int[] numbered = IntStream.range(0, city.size())
                .filter(place -> city.id(place).endsWith(":2"))
                .toArray();

        assertThat(numbered).hasSizeGreaterThan(20);
        IntStream.of(numbered).limit(30).forEach(city::compare);
    }

    private static InputData withRoutesTwice(InputData inputs) {
        var routes = new ArrayList<>(inputs.routes());
        for (Route route : inputs.routes().subList(0, 40)) {
            routes.add(new Route(
                    routes.size(),
                    route.id() + "-again",
                    route.duct(),
                    route.lonLat(),
                    route.recordedLengthM(),
                    route.fromVaultId(),
                    route.toVaultId(),
                    route.positionQuality()));
        }
        return new InputData(routes, inputs.vaults(), inputs.zones(), inputs.crs(), inputs.records());
    }

    @Test
    void fewRoutesAreCutForOneSpan() {
        var city = new City(ConfigReader.read(DEMO));

        List<Integer> chosen = IntStream.range(0, 50)
                .mapToObj(place -> RoutesOfSpan.choose(city.inputs.routes(), city.id(place))
                        .size())
                .toList();

        assertThat(chosen)
                .allSatisfy(count ->
                        assertThat(count).isBetween(1, city.inputs.routes().size() / 10));
    }

    /** A run over everything, held whole. */
    private static final class City {
        private final RunConfig config;
        private final InputData inputs;
        private final Network network;
        private final AssessedSpans ranked;
        private final SpanExplainer explainer;
        private final SpanCalculator calculator;

        City(RunConfig config) {
            this(config, UnaryOperator.identity());
        }

        City(RunConfig config, UnaryOperator<InputData> change) {
            this.config = config;
            var run = new RankRun(config, Progress.SILENT);
            inputs = change.apply(run.read());
            var permits = new PermitAssessor(inputs.zones(), config.permit(), ConfiguredParts.access(config));
            network = run.located(run.cut(inputs), permits);
            ranked = run.rank(network, permits, LearnedChances.NONE);
            explainer = new SpanExplainer(config, inputs, Progress.SILENT);
            calculator = new SpanCalculator(config, inputs.zones(), network.spans(), 1, LearnedChances.NONE);
        }

        int size() {
            return ranked.size();
        }

        String id(int place) {
            return ranked.at(place).span().id();
        }

        void compare(int place) {
            RankedSpan row = ranked.at(place);
            var standing = new RecordedStanding(row.rank(), ranked.countRanked());
            SpanExplanation alone = explainer.explain(explainer.find(row.span().id(), DEMO), standing);
            var whole = new SpanExplanation(
                    row,
                    standing,
                    config.pull(),
                    calculator.traces(row.assessment()),
                    calculator.effortLines(row.assessment()),
                    config.rates().currency(),
                    ConfiguredParts.ranking(config, LearnedChances.NONE)
                            .among(network.spans())
                            .gates(row.assessment()),
                    needs(row.span().from()),
                    needs(row.span().to()));

            assertThat(json(alone)).isEqualTo(json(whole));
        }

        private VaultNeeds needs(Vault vault) {
            return network.vaults().stream()
                    .filter(use -> use.vault().equals(vault))
                    .findFirst()
                    .orElseThrow()
                    .needs();
        }

        private static String json(SpanExplanation explained) {
            return ExplanationJson.write(Explanation.of(explained));
        }
    }
}

package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Line;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.network.Vault;

/** A packed span is the stretch of its route, vertex by vertex; names are in the order of texts, whatever they begin with. */
class SpanTableTest {
    /** Names of which some begin others, one repeats another between the same vaults, and one duct is joined of two routes. */
    private static final String CITY = """
            vault A 0,0
            vault B 60,0
            vault C 100,30
            route r1 d1 0,0 20,3 30,0 100,0 100,30
            route r2 d1:A 0,0 30,0 100,0 100,30
            route r3 d10 100,30 100,0 30,0 0,0
            route r4 d1 0,0 25,2 30,0 100,0 100,30
            route r5 d 0,0,5 30,0,6.25 60,0,7.5
            route r8 d1+ 0,0 30,0 100,0 100,30
            route r9 d1_ 0,0 30,0 100,0 100,30
            route r6 e 0,0 30,1
            route r7 e 30,1 60,0
            """;

    private final Sketch sketch = Sketch.of(CITY);
    private final SpanList spans = sketch.cut().network().spans();

    @Test
    void namesAreInTheOrderOfTexts() {
        assertThat(spans).extracting(Span::id).doesNotHaveDuplicates().contains("d1:A:B", "d1:A:B:2", "d:A:B", "e:A:B");
        for (int one = 0; one < spans.size(); one++) {
            assertThat(spans.id(one)).isEqualTo(spans.get(one).id());
            assertThat(spans.duct(one)).isSameAs(spans.get(one).duct());
            for (int other = 0; other < spans.size(); other++) {
                assertThat(Integer.signum(spans.compareIds(one, other)))
                        .as("%s and %s", spans.id(one), spans.id(other))
                        .isEqualTo(Integer.signum(spans.id(one).compareTo(spans.id(other))));
                if (spans.compareIds(one, other) < 0) {
                    assertThat(spans.leadingOfId(one)).isBetween(0L, spans.leadingOfId(other));
                }
            }
        }
    }

    /** The vaults that count are numbered without those that are treated as another, of spans of one route and of joined ones. */
    @Test
    void vaultsAndLengthByNumberAreThoseOfTheSpan() {
        Network network =
                Sketch.of("vault A2 0,0.01\nvault Z 500,0\n" + CITY).cut().network();
        SpanList cut = network.spans();
        assertThat(network.vaults()).hasSize(4);
        assertThat(cut).hasSameSizeAs(spans);
        for (int number = 0; number < cut.size(); number++) {
            Span span = cut.get(number);
            assertThat(network.vaults().get(cut.fromVault(number)).vault()).isSameAs(span.from());
            assertThat(network.vaults().get(cut.toVault(number)).vault()).isSameAs(span.to());
            assertThat(cut.lengthM(number)).isEqualTo(span.lengthM());
        }

        SpanList kept = new Network(List.copyOf(cut), network.vaults(), 0, 0, 0).spans();
        for (int number = 0; number < cut.size(); number++) {
            assertThat(kept.fromVault(number)).isEqualTo(cut.fromVault(number));
            assertThat(kept.toVault(number)).isEqualTo(cut.toVault(number));
            assertThat(kept.lengthM(number)).isEqualTo(cut.lengthM(number));
        }
    }

    @Test
    void verticesBetweenTheEndsAreTheRoutesOwn() {
        for (Route route : sketch.routes) {
            List<Span> ofRoute = spans.stream()
                    .filter(span -> span.routeIds().equals(List.of(route.id())))
                    .toList();
            if (ofRoute.isEmpty()) {
                assertThat(route.duct().id()).isEqualTo("e");
                continue;
            }
            List<String> drawn = vertices(route.lonLat());
            List<String> cut = new ArrayList<>();
            ofRoute.forEach(span -> cut.addAll(vertices(span.lonLat())));
            assertThat(cut).containsSubsequence(drawn);
            assertThat(cut.size() - drawn.size())
                    .as("two vertices for each cut")
                    .isEqualTo(2 * (ofRoute.size() - 1));
        }
        assertThat(spans.hasElevations()).isTrue();
    }

    @Test
    void cuttingTellsOfEveryRouteOnce() {
        var told = new AtomicLong();
        new SpanCutter(ShippedConfig.get().network(), 2)
                .cut(sketch.routes, sketch.vaults, new FindingLog(), told::addAndGet);
        assertThat(told).hasValue(sketch.routes.size());
    }

    /** One route of 300 000 vertices through 20 000 vaults; every third vertex is drawn twice, so that few spans are a stretch of it. */
    @ParameterizedTest(name = "vertices drawn twice: {0}")
    @ValueSource(booleans = {false, true})
    @Timeout(60)
    void longRouteThroughManyVaultsIsCutInNoTime(boolean twice) {
        List<double[]> line = new ArrayList<>();
        List<Vault> vaults = new ArrayList<>();
        for (int i = 0; i < 300_000; i++) {
            double[] lonLat = {-30 + i * 1e-5, 40 + (i % 2) * 1e-6};
            line.add(lonLat);
            if (twice && i % 3 == 0) {
                line.add(lonLat);
            }
            if (i % 15 == 0) {
                vaults.add(
                        new Vault(vaults.size(), "V" + i, lonLat[0], lonLat[1], List.of(), OptionalDouble.empty(), ""));
            }
        }
        double[] packed = line.stream().flatMapToDouble(Arrays::stream).toArray();
        Route any = sketch.routes.get(0);
        var route = new Route(
                0,
                "r",
                any.duct(),
                Line.wrap(packed, false),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                "");

        SpanList cut = new SpanCutter(ShippedConfig.get().network(), 1)
                .cut(List.of(route), vaults, new FindingLog(), told -> {})
                .spans();

        assertThat(cut).hasSize(19_999);
        assertThat(cut.get(0).lonLat().size()).isEqualTo(16);
        for (int number = 0; number < cut.size(); number += 997) {
            Line span = cut.get(number).lonLat();
            for (int vertex = 0; vertex < span.size(); vertex++) {
                assertThat(span.x(vertex)).isEqualTo(-30 + (15 * number + vertex) * 1e-5, within(1e-9));
            }
        }
    }

    @Test
    void askedAgainASpanIsTheSame() {
        assertThat(List.copyOf(spans)).isEqualTo(spans);
    }

    private static List<String> vertices(Line line) {
        return IntStream.range(0, line.size())
                .mapToObj(i -> line.x(i) + " " + line.y(i) + (line.hasZ() ? " " + line.z(i) : ""))
                .toList();
    }
}

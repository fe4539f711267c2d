package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Line;
import org.spanroom.model.NetworkSettings;
import org.spanroom.model.Route;
import org.spanroom.model.Span;
import org.spanroom.model.SpanList;

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
            route r6 e 0,0 30,1
            route r7 e 30,1 60,0
            """;

    private final Sketch sketch = Sketch.of(CITY);
    private final SpanList spans = sketch.cut().network().spans();

    @Test
    void namesAreInTheOrderOfTexts() {
        assertThat(spans).extracting(Span::id).doesNotHaveDuplicates().contains("d1:A-B", "d1:A-B:2", "d:A-B", "e:A-B");
        for (int one = 0; one < spans.size(); one++) {
            assertThat(spans.id(one)).isEqualTo(spans.get(one).id());
            assertThat(spans.duct(one)).isSameAs(spans.get(one).duct());
            for (int other = 0; other < spans.size(); other++) {
                assertThat(Integer.signum(spans.compareIds(one, other)))
                        .as("%s and %s", spans.id(one), spans.id(other))
                        .isEqualTo(Integer.signum(spans.id(one).compareTo(spans.id(other))));
            }
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
        new SpanCutter(NetworkSettings.defaults(), 2)
                .cut(sketch.routes, sketch.vaults, new FindingLog(), told::addAndGet);
        assertThat(told).hasValue(sketch.routes.size());
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

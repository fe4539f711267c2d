package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class EndDistancesTest {
    @Test
    void endsAreCountedByTheDistanceOfTheNearestVault() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault B 100,0
                vault C 200,-1 202,-1 202,1 200,1
                route r1 d1 0,0.05 99.6,0
                route r2 d2 0,0.9 100,1.8
                route r3 d3 95.5,0 201,0
                route r4 d4 0,-5.2 150,0
                """);

        var counts = EndDistances.count(sketch.routes, sketch.vaults);

        assertThat(counts.endCount()).isEqualTo(8);
        assertThat(counts.bands())
                .extracting(band -> band.withinM() + ": " + band.count())
                .containsExactly("0.1: 2", "0.5: 3", "1.0: 4", "2.0: 5", "5.0: 6");
    }
}

package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.input.proposal.FieldProposer;
import org.spanroom.model.Term;

/** How much of large layers is read, and kept, for a proposal. */
class FieldSampleTest {
    private static final int MANY = 400_000;
    private static final long MOST_KEPT_BYTES = 60_000_000;

    /** A layer of any size that is made while it is read. */
    private static final class EndlessLayer implements LayerSource {
        private final List<String> fields;
        private final IntFunction<SourceFeature> making;
        private int made;

        EndlessLayer(List<String> fields, IntFunction<SourceFeature> making) {
            this.fields = fields;
            this.making = making;
        }

        @Override
        public LayerHeader header() {
            return new LayerHeader(Path.of("large.gpkg"), "large", fields, Optional.of("OGC:CRS84"), MANY);
        }

        @Override
        public long read(List<String> wanted, Consumer<SourceFeature> sink) {
            for (int n = 0; n < MANY; n++) {
                made++;
                sink.accept(making.apply(n));
            }
            return MANY;
        }

        @Override
        public void close() {}
    }

    private static SourceFeature line(int n) {
        double[] line = {n * 0.0001, 0, (n + 1) * 0.0001, 0};
        var geometry = new SourceGeometry(SourceGeometry.Kind.LINES, List.of(line), false, List.of());
        return new SourceFeature(
                n + 1L, "", "LineString", geometry, List.of("L" + n, "M" + n, "M" + (n + 1), "note " + n));
    }

    /** Vaults in another order than the lines: those that the first lines name come last. */
    private static SourceFeature vault(int n) {
        int number = MANY - n;
        double[] place = {number * 0.0001, 0};
        var geometry = new SourceGeometry(SourceGeometry.Kind.POINTS, List.of(place), false, List.of());
        return new SourceFeature(n + 1L, "", "Point", geometry, List.of("M" + number, "other " + n, "third " + n));
    }

    @Test
    void fewLinesAreReadAndAllVaultsButFewAreKept() {
        var lines = new EndlessLayer(List.of("id", "from_mh", "to_mh", "note"), FieldSampleTest::line);
        var vaults = new EndlessLayer(List.of("tag_1", "tag_2", "tag_3"), FieldSampleTest::vault);
        var proposer = new FieldProposer(ShippedConfig.get());
        long before = usedBytes();

        proposer.readRoutes(lines, LayerConfig.NONE);
        proposer.readVaults(vaults, LayerConfig.NONE);

        assertThat(usedBytes() - before).isLessThan(MOST_KEPT_BYTES);
        List<FieldProposal> proposals = proposer.proposals();
        assertThat(lines.made).isLessThan(6000);
        assertThat(vaults.made).isEqualTo(MANY);
        assertThat(proposals.get(0).features()).isEqualTo(MANY);
        assertThat(proposals.get(0).looked()).isEqualTo(5000);
        assertThat(proposals.get(0).find(Term.VAULT_A).orElseThrow().isSure()).isTrue();
        assertThat(proposals.get(1).find(Term.VAULT).orElseThrow().name()).isEqualTo("tag_1");
        assertThat(proposals.get(1).find(Term.VAULT).orElseThrow().isSure()).isTrue();
    }

    private static long usedBytes() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}

package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.cli.DemoRun;
import org.spanroom.input.fields.ConnectionsReader;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.NewDuctOffer;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.program.WayFinder;

/** What the page on the way through says of the demo: which connections the best-ranked spans alone would make possible. */
class RankingAloneTest {
    private static final Path PAGE = Path.of("src/site/markdown/connections.md");

    @TempDir
    static Path folder;

    private static DuctNetwork network;

    @BeforeAll
    static void rankTheDemo() {
        network = NetworkReader.read(DemoRun.csv(folder), Set.of()).network();
    }

    @ParameterizedTest(name = "the {0} best-ranked spans")
    @CsvSource({"0, 5", "18, 6", "400, 8"})
    void soManyConnectionsArePossible(int best, int possible) {
        DuctNetwork recovered = new DuctNetwork(
                network.vaults(),
                network.sections().stream().map(section -> only(section, best)).toList(),
                network.samples(),
                network.onDate());

        long found = ConnectionsReader.read(Path.of("sample-gis/connections.csv")).stream()
                .filter(connection -> new WayFinder(recovered, connection.cables())
                        .findCheapest(
                                recovered.find(connection.from()).orElseThrow(),
                                recovered.find(connection.to()).orElseThrow())
                        .isPresent())
                .count();

        assertThat(found).isEqualTo(possible);
    }

    @Test
    void thePageSaysTheSame() throws IOException {
        String page = Files.readString(PAGE).replace('\n', ' ');

        assertThat(page)
                .contains(
                        "With nothing recovered or built, 5 of the 9 connections",
                        "the 18 best-ranked spans instead makes 6 possible",
                        "the 400 best-ranked spans to make 8");
    }

    /** Recovers the best-ranked ducts, and leaves neither recovery nor new build for anything else. */
    private static SectionOffer only(SectionOffer section, int best) {
        List<DuctOffer> ducts = section.ducts().stream()
                .map(duct -> {
                    boolean isRecovered = duct.rank().isPresent() && duct.rank().getAsInt() <= best;
                    int positions = isRecovered ? duct.positionsAfter() : duct.positionsNow();
                    return new DuctOffer(
                            duct.spanId(),
                            duct.ductId(),
                            positions,
                            positions,
                            duct.rank(),
                            duct.closedBy(),
                            Optional.empty());
                })
                .toList();
        return new SectionOffer(
                section.id(),
                section.bankId(),
                section.from(),
                section.to(),
                section.lengthM(),
                ducts,
                new NewDuctOffer(0, section.newDuct().first(), section.newDuct().further(), 0),
                section.lonLat());
    }
}

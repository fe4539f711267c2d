package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ConfigReader;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Term;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.SizeSource;

/** The wall of innerducts: recorded before the recorded SDR, those before the assumed wall, and that before the assumed SDR. */
class AssumedWallTest {
    @TempDir
    Path folder;

    private Duct duct(String assumed, String contents, @Nullable Object... values) throws IOException {
        Path routes = Files.writeString(folder.resolve("routes.geojson"), "{}");
        Path table = Files.writeString(folder.resolve("contents.csv"), contents);
        Path yaml = Files.writeString(
                folder.resolve("c.yaml"),
                "assumed: {innerduct_outside_diameter: 40 mm, cable_count: 0" + assumed
                        + "}\ninputs:\n  routes:\n    file: "
                        + routes
                        + "\n    fields: {duct: D, innerduct_count: N, innerduct_sdr: SDR, innerduct_wall: {field: W,"
                        + " unit: mm}}\n" + (contents.isEmpty() ? "" : "  contents: {file: " + table + "}\n"));
        var layer = new FakeLayer("OGC:CRS84", "D", "N", "SDR", "W").line(new double[] {-140, 20, -140, 20.1}, values);
        return new InputReader(ConfigReader.read(yaml), new FindingLog(), (path, name, log) -> layer)
                .read()
                .routes()
                .get(0)
                .duct();
    }

    @ParameterizedTest(name = "recorded wall {0}, SDR {1}; assumed wall {2}, SDR {3}")
    @CsvSource({
        "3.2,  , 2.5, 10, 3.2, RECORDED",
        "3.2, 8, 2.5, 10, 3.2, RECORDED",
        "   , 8, 2.5, 10, 5.0, RECORDED",
        "   ,  , 2.5, 10, 2.5, ASSUMED",
        "   ,  ,    , 10, 4.0, ASSUMED",
        "   ,  ,  14, 10, 14, ASSUMED",
        "21 ,  , 2.5, 10, 2.5, ASSUMED",
    })
    void theFirstThatIsThereCounts(
            @Nullable Double wall,
            @Nullable Double sdr,
            @Nullable Double assumed,
            double assumedSdr,
            double expectedMm,
            SizeSource source)
            throws IOException {
        String words =
                (assumed == null ? "" : ", innerduct_wall: " + assumed + " mm") + ", innerduct_sdr: " + assumedSdr;
        String rows = "duct,kind,sdr,wall\nD1,innerduct," + (sdr == null ? "" : sdr) + "," + (wall == null ? "" : wall)
                + "\n";

        for (Duct duct : new Duct[] {duct(words, "", "D1", 1L, sdr, wall), duct(words, rows, "D1", null, null, null)}) {
            assertThat(duct.contents().innerducts().get(0).wallMm()).isCloseTo(expectedMm, within(1e-9));
            assertThat(duct.sizeSource(Term.INNERDUCT_WALL, Term.INNERDUCT_SDR)).isEqualTo(source);
            assertThat(duct.assumed().contains(Term.INNERDUCT_WALL))
                    .isEqualTo(source == SizeSource.ASSUMED && assumed != null);
        }
    }

    @ParameterizedTest
    @CsvSource({"14.9 mm, 28 mm, 2.8"})
    void anAssumedWallThatLeavesNoBoreGivesWayToTheSdr(String wall, String outside, double expectedMm)
            throws IOException {
        String words = ", innerduct_wall: " + wall + ", innerduct_sdr: 10";
        String rows = "duct,kind,outside_diameter\nD1,innerduct," + outside + "\n";

        Duct duct = duct(words, rows, "D1", null, null, null);

        assertThat(duct.contents().innerducts().get(0).wallMm()).isCloseTo(expectedMm, within(1e-9));
        assertThat(duct.assumed()).contains(Term.INNERDUCT_SDR).doesNotContain(Term.INNERDUCT_WALL);
    }
}

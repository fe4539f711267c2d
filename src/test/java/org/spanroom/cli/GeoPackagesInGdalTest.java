package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.testing.ExternalTool;
import org.spanroom.testing.GeoPackageValidator;

/** The GeoPackages of all commands that write one, as GDAL sees them. */
class GeoPackagesInGdalTest {
    @TempDir
    static Path folder;

    private static Path run;

    @BeforeAll
    static void rank() {
        Path config = ProgramTown.write(folder);
        run = StreetOfCases.rank(config, folder.resolve("run"), "--columns", "all", "--units", "us");
    }

    private static Path made(String command, String geoPackage, String... arguments) {
        Path results = folder.resolve(command);
        var args = new ArrayList<>(List.of(arguments));
        args.add(0, command.split("-", -1)[0]);
        args.addAll(List.of("--output", results.toString()));
        CommandRun made = CommandRun.of(args.toArray(String[]::new));
        assertThat(made.exitCode()).as(made.err()).isZero();
        return results.resolve(geoPackage);
    }

    /** Also nothing in a file whose columns have twins in US units. */
    @Test
    void theValidatorFindsNothingInARun() {
        GeoPackageValidator.demandNothingFound(run.resolve("spanroom.gpkg"));
    }

    @Test
    void norInARunUnderAnotherScoring() {
        Path rescored =
                made("rank-from", "spanroom.gpkg", "--from", run.toString(), "--scoring", "config/scoring.yaml");

        GeoPackageValidator.demandNothingFound(rescored);
        GeoPackageValidator.demandNothingFound(made(
                "compare", "moves.gpkg", run.toString(), rescored.getParent().toString()));
    }

    @Test
    void norInWhatOtherCommandsMakeOfARun() throws IOException {
        Path table = Files.writeString(
                folder.resolve("connections.csv"),
                "name,from,to,cables,value,needed_by,must\na,V00,V23,2,1000000,,yes\n");

        GeoPackageValidator.demandNothingFound(
                made("path", "path.gpkg", run.toString(), "--from", "V00", "--to", "V13", "--cables", "1"));
        GeoPackageValidator.demandNothingFound(made("corridors", "corridors.gpkg", run.toString()));
        GeoPackageValidator.demandNothingFound(made(
                "connect", "connect.gpkg", run.toString(), "--connections", table.toString(), "--iterations", "100"));
        GeoPackageValidator.demandNothingFound(
                made("program", "program.gpkg", run.toString(), "--skip", "curve,prices,draws"));
    }

    /** No route of the town has heights, and no line is said to have any. */
    @Test
    void withoutHeightsAllLayersAreFlat() {
        String layers = ExternalTool.named("ogrinfo").run("-so", "-al", run.resolve("spanroom.gpkg"));

        assertThat(layers)
                .contains("Geometry: Line String", "Geometry: Multi Polygon")
                .doesNotContain("Geometry: 3D");
    }

    @Test
    void theFileNamesItsInputsAndCautions() {
        assertThat(ExternalTool.named("ogrinfo").run("-so", run.resolve("spanroom.gpkg")))
                .contains("\"command\" : \"rank\"", "ducts.geojson", "\"sha256\"", "Planning figures only;")
                .contains("83 of 101 rates are illustrative");
    }
}

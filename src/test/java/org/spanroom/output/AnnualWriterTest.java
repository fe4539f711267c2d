package org.spanroom.output;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.model.program.PriceItem;
import org.spanroom.model.program.ProgramResults;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.testing.ExternalTool;

class AnnualWriterTest {
    private static final LayerOptions OPTIONS = LayerOptions.lonLat(Instant.parse("2027-01-15T08:00:00Z"));

    private static final Map<String, Map<String, Object>> VAULT_FACTS = Map.of(
            "V1",
            Map.of(
                    "kind",
                    "vault",
                    "volume_m3",
                    13.6,
                    "gas_found",
                    true,
                    "forced_air",
                    true,
                    "forced_air_why",
                    "gas_found"),
            "V3",
            Map.of("water", false, "purge_minutes", 10.0),
            "elsewhere",
            Map.of("kind", "handhole"));

    @TempDir
    Path folder;

    @Test
    void spansStandInTheOrderOfTheCalendar() throws IOException {
        assertCsv("program.csv", """
                year,week,crew,group,order,section,span_id,rank,first_day,last_day,start_hours,site_hours,shared_hours,night,\
                vault_a,vault_b,cost_money,cost_low_money,cost_likely_money,cost_high_money,budget_money,positions,chance_pct,\
                chosen_chance_pct,connections,permits,crew_permits,apply_by,field_check,check_by,district,why
                1,2027-03-01,crew 1,1,1,B1,S1,7,2027-03-01,2027-03-01,0.00,6.50,0.00,false,\
                V1,V2,1000.00,900.00,1050.00,1200.00,800.00,3,75.0,\
                50.0,hospital;library,lane closure;street cut,vault entry,2027-01-30,,,,It saves most for its money.
                1,2027-03-01,crew 1,1,2,B2,S2,7,2027-03-01,2027-03-02,6.50,6.00,0.50,false,\
                V2,V3,1000.00,900.00,1050.00,1200.00,800.00,3,75.0,\
                50.0,,,,2027-01-30,count the innerducts,2027-02-15,,It saves most for its money.
                1,2027-03-08,crew 2,1,1,B3,S3,7,2027-03-12,2027-03-15,0.00,6.50,0.00,true,\
                V3,V4,1000.00,900.00,1050.00,1200.00,800.00,3,,\
                ,,,,2027-02-10,,,,It saves most for its money.
                2,2028-03-06,crew 1,1,1,B1,S4,7,2028-03-06,2028-03-06,0.00,6.50,0.00,false,\
                V1,V2,1000.00,900.00,1050.00,1200.00,800.00,3,75.0,\
                50.0,,,,2028-02-05,,,,It saves most for its money.
                """);
    }

    /** S3 of crew 2 goes on after the weekend, so that its vaults are visited in two weeks. */
    @Test
    void vaultsStandOnceWithAllTheirWork() throws IOException {
        assertCsv("program_vaults.csv", """
                vault,visits,spans,first_day,last_day,weeks,crews,years,\
                kind,volume_m3,volume_from,depth_m,inside_length_m,inside_width_m,inside_height_m,cover_size_mm,\
                water,surface,cable_hold,cable_slack_m,gas_found,joint_power,inspected_on,\
                purge_minutes,air_tests,air_retest_hours,forced_air,forced_air_why,\
                discharge_permit,lane_closure,confined_space_entry
                V1,2,2,2027-03-01,2028-03-06,2027-03-01;2028-03-06,crew 1,1;2,\
                vault,13.60,,,,,,,,,,,true,,,,,,true,gas_found,,,
                V2,2,3,2027-03-01,2028-03-06,2027-03-01;2028-03-06,crew 1,1;2,\
                ,,,,,,,,,,,,,,,,,,,,,,
                V3,3,2,2027-03-01,2027-03-15,2027-03-01;2027-03-08;2027-03-15,crew 1;crew 2,1,\
                ,,,,,,,,false,,,,,,,10.0,,,,,,,
                V4,2,1,2027-03-12,2027-03-15,2027-03-08;2027-03-15,crew 2,1,\
                ,,,,,,,,,,,,,,,,,,,,,,
                """);
    }

    @Test
    void newDuctsAndConnectionsAreWritten() throws IOException {
        assertCsv("new_ducts.csv", """
                year,section,ducts,cost_money,cost_low_money,cost_likely_money,cost_high_money,budget_money,apply_by,connections
                2,B2,2,9000.00,8100.00,9450.00,10800.00,7000.00,2027-01-30,hospital;library
                """);
        assertCsv("program_connections.csv", """
                name,vault_from,vault_to,cables,value_money,must,needed_by,served_year,served_on,on_time,cost_share_money,\
                sections,recover_spans,why_not,takes
                hospital,V1,V3,2,20000.00,true,2028-06-30,2,2028-12-31,false,6600.25,B1;B2,S1,,"6,000 more in the first year"
                library,V1,V4,1,,false,,,,,,,,not worth its cost,
                """);
    }

    /** R1 works in three of four samples. */
    @Test
    void theReserveSaysWhyAnEligibleSpanIsLeftOut() throws IOException {
        assertCsv("reserve.csv", """
                place,span_id,rank,section,positions,budget_money,worth_money,chance_pct,chosen_chance_pct,why_not
                1,R1,9,B1,3,900.00,4000.50,75.0,12.5,the budget of both years is used up
                ,R2,,B2,3,900.00,4000.50,,,must not
                """);
    }

    @Test
    void figuresAreWritten() throws IOException {
        assertCsv("totals.csv", """
                year,column,value,spans,positions,expected_positions,cost_money,cost_low_money,cost_likely_money,cost_high_money,\
                site_hours,innerduct_out_kg,co2e_ice_kg,trench_avoided_m,bore_avoided_m,low_positions,likely_positions,high_positions
                ,,,4,12,9.3,13000.00,11700.00,13650.00,15600.00,25.50,300.0,2000.0,200.0,50.5,,,
                1,,,3,9,6.8,3000.00,2700.00,3150.00,3600.00,19.00,225.0,1500.0,150.0,50.5,4.0,6.0,8.5
                1,owner,city,3,9,6.8,3000.00,2700.00,3150.00,3600.00,19.00,225.0,1500.0,150.0,50.5,,,
                2,,,1,3,2.3,10000.00,9000.00,10500.00,12000.00,6.50,75.0,500.0,50.0,0.0,,,
                """);
        assertCsv("curve.csv", """
                budget_pct,budget_money,spent_money,positions,connections,value_money,bound_money,marginal_money_per_position
                50.0,5000.00,4900.00,6,1,700.00,,
                100.0,10000.00,9000.00,10,2,1500.00,1600.00,1025.00
                """);
        assertCsv("prices.csv", """
                kind,name,value_money,positions,connections,spent_money
                must,S1,250.50,-3,1,100.00
                """);
    }

    @ParameterizedTest
    @CsvSource({"true", "false"})
    void theFilesAreThoseThatWereAnnounced(boolean withPrices) throws IOException {
        List<PriceItem> prices = withPrices ? AnnualSample.results().prices() : List.of();
        ProgramResults results = AnnualSample.results(AnnualSample.items(), prices);
        Path target = write("files", results);

        Set<String> announced = AnnualWriter.files(target, results).stream()
                .map(file -> file.getFileName().toString())
                .collect(Collectors.toCollection(TreeSet::new));

        Set<String> found = new TreeSet<>(names(target));
        found.remove(".results");
        assertEquals(found, announced);
        assertEquals(withPrices, found.contains("prices.csv"));
        assertTrue(Files.readString(target.resolve("program.json")).contains("\"spans\" : 4"));
    }

    @Test
    void twoRunsGiveTheSameBytes() throws IOException {
        Path first = write("first", AnnualSample.results());
        Path second = write("second", AnnualSample.results());

        assertEquals(names(first), names(second));
        for (String name : names(first)) {
            assertArrayEquals(Files.readAllBytes(first.resolve(name)), Files.readAllBytes(second.resolve(name)), name);
        }
    }

    /** GDAL finds every layer, with as many rows and with the places that were given. */
    @ParameterizedTest
    @CsvSource({
        "program,4,Line String,'(-30.000000, 40.000000) - (-30.000000, 40.002000)'",
        "program_vaults,4,Point,'(-30.000000, 40.000000) - (-30.000000, 40.002000)'",
        "new_ducts,1,Line String,'(-30.000000, 40.001000) - (-30.000000, 40.002000)'",
        "program_connections,2,None,",
        "reserve,2,None,",
        "totals,4,None,",
        "curve,2,None,",
        "prices,1,None,"
    })
    void layersAreReadByGdal(String layer, int rows, String geometry, String extent) {
        Path file = write("gdal", AnnualSample.results()).resolve("program.gpkg");

        String answer = ExternalTool.named("ogrinfo").run("-so", file, layer);

        assertTrue(answer.contains("Geometry: " + geometry + "\n"), answer);
        assertTrue(answer.contains("Feature Count: " + rows + "\n"), answer);
        assertTrue(extent == null || answer.contains("Extent: " + extent), answer);
    }

    @Test
    void columnsThatAreWordsOfSqlAreFoundInQuotes() {
        Path file = write("sql", AnnualSample.results()).resolve("program.gpkg");

        String answer = ExternalTool.named("ogrinfo")
                .run("-q", file, "-sql", "SELECT span_id FROM program WHERE \"order\" = 2 AND \"group\" = 1");

        assertTrue(answer.contains("span_id (String) = S2\n"), answer);
    }

    @Test
    void anEarlierProgramIsReplacedOnlyOnRequest() {
        Path target = write("twice", AnnualSample.results());

        assertThrows(OutputException.class, () -> write("twice", AnnualSample.results()));
        AnnualWriter.write(
                AnnualSample.network(),
                AnnualSample.results(List.of(), List.of()),
                Map.of(),
                new JsonObject(),
                target,
                true,
                OPTIONS);
        assertEquals(0, ProgramReader.read(target).planned().size());
    }

    private void assertCsv(String file, String expected) throws IOException {
        Path target = folder.resolve("csv");
        if (!Files.exists(target)) {
            write("csv", AnnualSample.results());
        }
        assertEquals(expected.replace("\n", "\r\n"), Files.readString(target.resolve(file)));
    }

    private Path write(String name, ProgramResults results) {
        Path target = folder.resolve(name);
        JsonObject account = new JsonObject().number("spans", results.items().size());
        AnnualWriter.write(AnnualSample.network(), results, VAULT_FACTS, account, target, false, OPTIONS);
        return target;
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return new ArrayList<>(
                    files.map(file -> file.getFileName().toString()).sorted().toList());
        }
    }
}

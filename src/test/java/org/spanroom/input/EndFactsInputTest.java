package org.spanroom.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.EndFacts;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.RouteEnds;

/** What is read of a duct at its vaults, from fields of routes and columns of the contents table: never assumed, and no finding where empty. */
class EndFactsInputTest {
    private static final double FT_M = 0.3048;

    @TempDir
    Path folder;

    private final FindingLog findings = new FindingLog();

    private List<Route> read(String contents, FakeLayer layer) throws IOException {
        Path file = Files.writeString(folder.resolve("routes.geojson"), "{}");
        Path table = Files.writeString(folder.resolve("contents.csv"), contents);
        Path yaml = Files.writeString(folder.resolve("c.yaml"), """
                inputs:
                  routes:
                    file: '%1$s'
                    fields:
                      duct: D
                      hole_a: HA
                      hole_b: HB
                      slack_a: {field: SA, unit: ft}
                      slack_b: {field: SB, unit: ft}
                      continuous_at_a: CA
                      continuous_at_b: CB
                  contents: {file: '%2$s', diameter_unit: in}
                """.formatted(
                        file.toString().replace('\\', '/'), table.toString().replace('\\', '/')));
        return new InputReader(ConfigReader.read(yaml), findings, (path, name, log) -> layer)
                .read()
                .routes();
    }

    private static FakeLayer layer() {
        return new FakeLayer("OGC:CRS84", "D", "HA", "HB", "SA", "SB", "CA", "CB");
    }

    private RouteEnds one(@Nullable Object... values) throws IOException {
        return read("duct,kind\n", layer().line(new double[] {-140, 20, -140, 20.1}, values))
                .get(0)
                .ends();
    }

    private List<String> fields(FindingCode code) {
        return findings.all().stream()
                .filter(finding -> finding.code() == code)
                .map(Finding::field)
                .sorted()
                .toList();
    }

    @Test
    void everyFactIsReadInItsUnit() throws IOException {
        RouteEnds ends = one("D1", 7.0, " 2/3 ", 20, "12.5 m", "Y", 0);

        assertEquals("7", ends.a().hole());
        assertEquals("2/3", ends.b().hole());
        assertEquals(20 * FT_M, ends.a().slackM().orElseThrow(), 1e-9);
        assertEquals(12.5, ends.b().slackM().orElseThrow(), 1e-9);
        assertEquals(Answer.YES, ends.uncutAtA());
        assertEquals(Answer.NO, ends.uncutAtB());
    }

    /** The contents table of these cases is empty, which is a finding of its own. */
    private List<Finding> findingsOfRoutes() {
        return findings.all().stream()
                .filter(finding -> !finding.source().equals("contents.csv"))
                .toList();
    }

    @Test
    void emptyFieldsAreUnknownAndNoFindings() throws IOException {
        RouteEnds ends = one("D1", null, "n/a", null, "", "-", null);

        assertSame(RouteEnds.UNKNOWN, ends);
        assertEquals(List.of(), findingsOfRoutes());
    }

    @Test
    void unusableValuesAreFindingsAndUnknown() throws IOException {
        Route route = read(
                        "duct,kind\n",
                        layer().line(
                                        new double[] {-140, 20, -140, 20.1},
                                        "D1",
                                        "7",
                                        null,
                                        -3,
                                        "a coil",
                                        "perhaps",
                                        "2"))
                .get(0);

        assertEquals(new EndFacts("7", OptionalDouble.empty()), route.ends().a());
        assertSame(EndFacts.UNKNOWN, route.ends().b());
        assertEquals(Answer.UNKNOWN, route.ends().uncutAtA());
        assertEquals(List.of("SA"), fields(FindingCode.IMPLAUSIBLE_VALUE));
        assertEquals(List.of("CA", "CB", "SB"), fields(FindingCode.UNUSABLE_VALUE));
        assertTrue(route.duct().findRejected(Term.SLACK_B).isPresent());
    }

    /** Whatever stands in the field is the hole's name: nothing is parsed, and nothing fails. */
    @Test
    void hostileTextsOfHolesAreTexts() throws IOException {
        String odd = "=1+1\u0000\u202E<b>" + "9".repeat(5000);

        assertEquals(odd, one("D1", odd, "\n", null, null, null, null).a().hole());
        assertEquals(List.of(), findingsOfRoutes());
    }

    /** As vault_a and vault_b do, facts belong to the two ends of the whole feature. */
    @Test
    void ofALineOfSeveralPartsTheOuterEndsHaveTheFacts() throws IOException {
        List<Route> parts = read(
                "duct,kind\n",
                layer().geometry(
                                SourceGeometry.Kind.LINES,
                                List.of(
                                        new double[] {-140, 20, -140, 20.1},
                                        new double[] {-140, 20.2, -140, 20.3},
                                        new double[] {-140, 20.4, -140, 20.5}),
                                false,
                                "D1",
                                7,
                                8,
                                20,
                                30,
                                "yes",
                                "no"));

        assertEquals(
                List.of("7", "", ""),
                parts.stream().map(part -> part.ends().a().hole()).toList());
        assertEquals(
                List.of("", "", "8"),
                parts.stream().map(part -> part.ends().b().hole()).toList());
        assertEquals(
                List.of(Answer.YES, Answer.UNKNOWN, Answer.UNKNOWN),
                parts.stream().map(part -> part.ends().uncutAtA()).toList());
        assertEquals(
                List.of(Answer.UNKNOWN, Answer.UNKNOWN, Answer.NO),
                parts.stream().map(part -> part.ends().uncutAtB()).toList());
    }

    @Test
    void equalFactsAreKeptOnce() throws IOException {
        List<Route> routes = read(
                "duct,kind\n",
                layer().line(new double[] {-140, 20, -140, 20.1}, "D1", 7, 8, 20, 20, "yes", null)
                        .line(new double[] {-140, 21, -140, 21.1}, "D2", 7, 8, 20, 20, "yes", null));

        assertSame(routes.get(0).ends(), routes.get(1).ends());
    }

    private Contents contents(String table) throws IOException {
        return read(table, layer().line(new double[] {-140, 20, -140, 20.1}, "D1", null, null, null, null, null, null))
                .get(0)
                .duct()
                .contents();
    }

    @Test
    void columnsOfTheTableMayComeInAnyOrder() throws IOException {
        Contents contents = contents("""
                tag,continuous_at_b,Color,kind,item,inside,duct,outside_diameter,sdr,mass,Continuous at A
                ,no,orange,innerduct,I1,,D1,1.66,11,,yes
                FO-12,,,cable,C1,I1,D1,0.5,,0.1,
                ,,,innerduct,I2,,D1,1.66,11,,
                """);

        Innerduct first = contents.innerducts().get(0);
        assertEquals("orange", first.color());
        assertEquals(Answer.YES, first.uncutAtA());
        assertEquals(Answer.NO, first.uncutAtB());
        assertEquals(List.of("FO-12"), first.cables().stream().map(Cable::tag).toList());
        Innerduct second = contents.innerducts().get(1);
        assertEquals("", second.color());
        assertEquals(Answer.UNKNOWN, second.uncutAtA());
        assertEquals(List.of(), findingsOfRoutes());
    }

    /** Columns of an owner's own that are called almost so are left, as they were before; a misspelled one of ours is not. */
    @Test
    void columnsCalledAlmostLikeThemAreLeft() throws IOException {
        Contents contents = contents("""
                duct,item,kind,outside_diameter,sdr,colour,tag_no,tags
                D1,I1,innerduct,1.66,11,red,7,8
                """);

        assertEquals("", contents.innerducts().get(0).color());
        assertTrue(findings.all().stream().allMatch(finding -> finding.code() == FindingCode.LAYER_ISSUE));
        assertThrows(
                InputException.class,
                () -> contents("duct,item,kind,outside_diameter,sdr,continous_at_a\nD1,I1,innerduct,1.66,11,yes\n"));
    }

    @Test
    void wordsOfTheTableThatMeanNothingAreFindings() throws IOException {
        Contents contents = contents("""
                duct,item,kind,outside_diameter,sdr,continuous_at_a,color
                D1,I1,innerduct,1.66,11,perhaps,tbd
                """);

        assertEquals(Answer.UNKNOWN, contents.innerducts().get(0).uncutAtA());
        assertEquals("", contents.innerducts().get(0).color());
        assertEquals(List.of("continuous_at_a"), fields(FindingCode.UNUSABLE_VALUE));
    }
}

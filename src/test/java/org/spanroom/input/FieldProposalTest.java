package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;
import org.spanroom.testing.OpenData;

class FieldProposalTest {
    @TempDir
    Path folder;

    private static FieldProposal propose(FakeLayer layer) {
        return FieldProposal.of(layer, ShippedConfig.get().plausible());
    }

    private static FieldProposal.Field single(String name, Object value) {
        var layer = new FakeLayer("OGC:CRS84", name).line(new double[] {0, 0, 1, 1}, value);
        return propose(layer).fields().get(0);
    }

    @ParameterizedTest
    @CsvSource({
        "route_id, x, ROUTE,",
        "DUCT_ID, x, DUCT,",
        "bore_in, 4, INSIDE_DIAMETER, IN",
        "Diameter, 4, INSIDE_DIAMETER, IN",
        "DIAM_MM, 100, INSIDE_DIAMETER, MM",
        "duct_dia, 100, INSIDE_DIAMETER, MM",
        "innerducts, 3, INNERDUCT_COUNT,",
        "NumSubducts, 3, INNERDUCT_COUNT,",
        "innerduct_od_in, 1.66, INNERDUCT_OUTSIDE_DIAMETER, IN",
        "innerd_od, 1.66, INNERDUCT_OUTSIDE_DIAMETER, IN",
        "cables, 2, CABLE_COUNT,",
        "cable_lb_kft, 170, CABLE_MASS, LB_PER_1000_FT",
        "cable_weight, 170, CABLE_MASS, LB_PER_1000_FT",
        "in_service, live, IN_SERVICE,",
        "YR_INSTALLED, 1987, YEAR,",
        "Length_ft, 300, RECORDED_LENGTH, FT",
        "FROM_MH, 12, FROM_VAULT,",
        "DownstreamNodeID, 12, TO_VAULT,",
        "matl, clay, DUCT_MATERIAL,",
    })
    void aNameAndItsValuesSuggestATermAndAUnit(String name, String value, Term term, Unit unit) {
        FieldProposal.Field field = single(name, value);

        assertThat(field.term()).contains(term);
        assertThat(field.unit()).isEqualTo(Optional.ofNullable(unit));
    }

    @ParameterizedTest
    @CsvSource({"remarks, none", "bore, large", "SHAPE_Leng, x", "zone, 4"})
    void whatSuggestsNothingGetsNoTerm(String name, String value) {
        assertThat(single(name, value).term()).isEmpty();
    }

    @Test
    void aLayerOfPointsIsReadForVaults() {
        var layer = new FakeLayer("OGC:CRS84", "vault_id", "kind", "elev_m", "duct_id")
                .point(0, 0, "V1", "handhole", 12.5, "D");

        FieldProposal proposal = propose(layer);

        assertThat(proposal.role()).isEqualTo("vaults");
        assertThat(proposal.fields())
                .extracting(FieldProposal.Field::term)
                .containsExactly(
                        Optional.of(Term.VAULT),
                        Optional.of(Term.VAULT_KIND),
                        Optional.of(Term.VAULT_ELEVATION),
                        Optional.empty());
    }

    @Test
    void theTextIsAConfigThatCanBePasted() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "route_id", "bore_in", "yes", "odd \"name\"")
                .line(new double[] {0, 0, 1, 1}, "R1", 4L, "x", "y")
                .line(new double[] {0, 0, 1, 1}, "R2", 3.5, "x\ny", null);
        Path yaml = folder.resolve("pasted.yaml");

        String text = propose(layer).text();

        Files.writeString(yaml, text);
        RunConfig config = ConfigReader.read(yaml);
        assertThat(config.inputs()
                        .routes()
                        .fields()
                        .find(Term.INSIDE_DIAMETER)
                        .orElseThrow()
                        .field())
                .isEqualTo("bore_in");
        assertThat(text)
                .contains("inside_diameter: {field: bore_in, unit: in}")
                .contains("# 4 | 3.5")
                .contains("# no term: yes");
    }

    /** Public data with a schema of its own: the end nodes are named there as in the folder's README. */
    @Test
    void realMainsGetTheirEndNodes() {
        Path mains = OpenData.at("city-mains/victoria/mains.geojson");

        FieldProposal proposal =
                FieldProposal.of(mains, Optional.empty(), ShippedConfig.get().plausible(), new FindingLog());

        assertThat(proposal.role()).isEqualTo("routes");
        assertThat(proposal.fields())
                .anySatisfy(field -> {
                    assertThat(field.name()).isEqualTo("UpstreamNodeID");
                    assertThat(field.term()).contains(Term.FROM_VAULT);
                })
                .anySatisfy(field -> {
                    assertThat(field.name()).isEqualTo("DownstreamNodeID");
                    assertThat(field.term()).contains(Term.TO_VAULT);
                });
    }
}

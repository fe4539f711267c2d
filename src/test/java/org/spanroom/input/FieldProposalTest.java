package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.ContentsConfig;
import org.spanroom.config.FieldMap;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.input.proposal.FieldProposer;
import org.spanroom.input.proposal.ProposalYaml;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

class FieldProposalTest {
    @TempDir
    Path folder;

    private static FieldProposal propose(FakeLayer layer) {
        var proposer = new FieldProposer(ShippedConfig.get());
        proposer.readRoutes(layer, LayerConfig.NONE);
        return proposer.proposals().get(0);
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
        "FROM_MH, 12, VAULT_A,",
        "DownstreamNodeID, 12, VAULT_B,",
        "matl, clay, DUCT_MATERIAL,",
        "FROMMH, 12, VAULT_A,",
        "USMH, 12, VAULT_A,",
        "DSMH, 12, VAULT_B,",
        "MH_FROM, 12, VAULT_A,",
        "regard_amont, 12, VAULT_A,",
        "Schacht_von, 12, VAULT_A,",
        "pozo_inicio, 12, VAULT_A,",
        "put_van, 12, VAULT_A,",
        "FAC_ID, x, ROUTE,",
        "FACILITYID, x, ROUTE,",
        "ASSETID, x, ROUTE,",
        "Baujahr, 1987, YEAR,",
        "start.id, x, VAULT_A,",
        "end.id, x, VAULT_B,",
    })
    void aNameAndItsValuesSuggestATermAndAUnit(String name, String value, Term term, Unit unit) {
        FieldProposal.Field field = single(name, value);

        assertThat(field.term()).contains(term);
        assertThat(field.unit()).isEqualTo(Optional.ofNullable(unit));
    }

    @ParameterizedTest
    @CsvSource({
        "remarks, none",
        "bore, large",
        "SHAPE_Leng, 12.5",
        "Shape__Length, 12.5",
        "st_length, 12.5",
        "zone, 4",
        "OBJECTID, 4",
        "GlobalID, {A-1}",
        "INSTALLDATE, 915148800000",
        "INSTALLDATE, 19990101",
        "year, 915148800000",
        "INSTALL_DATE, 1999-01-01",
        "LASTCCTVYR, 2023",
        "inspection_year, 2019",
        "FROM_INV, 66",
        "UPSTREAM_INVERT, 66.13",
        "outside_diameter, 110",
        "HostMaterial, PVC",
        "fibreCount, 144",
    })
    void whatSuggestsNothingGetsNoTerm(String name, String value) {
        assertThat(single(name, value).term()).isEmpty();
    }

    private static FieldProposal.Field ofVault(String name, String values) {
        var layer = new FakeLayer("OGC:CRS84", name);
        double place = 0;
        for (String value : values.split("\\|", -1)) {
            layer.point(place++, 0, value);
        }
        var proposer = new FieldProposer(ShippedConfig.get());
        proposer.readVaults(layer, LayerConfig.NONE);
        return proposer.proposals().get(0).fields().get(0);
    }

    @ParameterizedTest
    @CsvSource({
        "depth_ft, 8|9.5|7|8|10|8, VAULT_DEPTH, FT",
        "MH_DEPTH_FT, 8|9.5|7|8|10|8, VAULT_DEPTH, FT",
        "inside_length_ft, 10|12|8|10|9|10, VAULT_LENGTH, FT",
        "VaultWidthFt, 6|6|5|6|8|6, VAULT_WIDTH, FT",
        "LID_SIZE_IN, 24|30|27|30|32|24, COVER_SIZE, IN",
        "in_len_ft, 10|12|8|10|9|10, VAULT_LENGTH, FT",
        "in_wid_ft, 6|6|5|6|8|6, VAULT_WIDTH, FT",
        "in_high_ft, 6|7|6|6|7|6, VAULT_HEIGHT, FT",
        "lid_in, 24|30|27|30|32|24, COVER_SIZE, IN",
        "gas_found, yes|no|no|yes|no|no, GAS_FOUND,",
        "joint_power, Y|N|N|N|Y|N, JOINT_POWER,",
        "inspection_date, 2024-05-02|2023-01-09|2025-08-30|2024-05-03|2022-02-02|2021-12-01, VAULT_INSPECTED,",
    })
    void factsForTheCrewAreProposed(String name, String values, Term term, Unit unit) {
        FieldProposal.Field field = ofVault(name, values);

        assertThat(field.term()).contains(term);
        assertThat(field.unit()).isEqualTo(Optional.ofNullable(unit));
        assertThat(field.isSure()).isTrue();
    }

    /** What other layers of vaults have: other depths, dates in other forms, who supplies gas, where power comes from. */
    @ParameterizedTest
    @CsvSource({
        "depth, 8|9.5|7|8|10|8",
        "INV_DEPTH, 2.1|2.2|2.3|2.4|2.5|2.6",
        "gas, Midgas|Midgas|Northgas|Midgas|Northgas|Midgas",
        "power, 110|220|110|220|110|220",
        "inspection, good|poor|good|good|fair|poor",
        "inspection_date, 915148800000|915148800000|915148800001|915148800002|915148800003|915148800004",
        "inspection_year, 2019|2020|2021|2022|2023|2024",
        "lid_type, round|square|round|round|square|round",
        "lid, 24|30|27|30|32|24",
        "rim_ft, 24|30|27|30|32|24",
        "last_edited_date, 2024-05-02|2023-01-09|2025-08-30|2024-05-03|2022-02-02|2021-12-01",
        "pipe_length, 10|12|8|10|9|10",
        "street_width, 10|12|8|10|9|10",
    })
    void decoysOfVaultsAreNeverProposedWithoutTheMark(String name, String values) {
        FieldProposal.Field field = ofVault(name, values);

        assertThat(field.term().isPresent() && field.isSure())
                .as("%s", field.term())
                .isFalse();
    }

    /** Fields that city layers have beside those we ask for; their values are as theirs are. */
    @ParameterizedTest
    @CsvSource({
        "NO_OF_DUCTS, 4|4|2|4|6|2",
        "NUM_DUCTS, 4|4|2|4|6|2",
        "INNERDUCT_NO, 1|2|3|1|2|3",
        "CABLE, 17|3|12|17|3|12",
        "DESCRIPTION, to the north|to the south|near the school|a|b|c",
        "FROM_STREET, A St|B St|A St|C St|A St|B St",
        "TO_STREET, A St|B St|A St|C St|A St|B St",
        "FROM_DATE, 2001-01-01|2002-01-01|2003-01-01|2001-01-01|2002-01-01|2003-01-01",
        "FROM_INV, 66.13|65.2|64.1|61.5|59.2|58.1",
        "UPELEV, 66.13|65.2|64.1|61.5|59.2|58.1",
        "YEAR_REHAB, 1999|2001|2003|2004|2005|2006",
        "COND_YR, 1999|2001|2003|2004|2005|2006",
        "EDIT_YEAR, 1999|2001|2003|2004|2005|2006",
        "LINING_MATERIAL, PVC|PE|PVC|PE|PVC|PE",
        "CASING_MATERIAL, STEEL|STEEL|PE|STEEL|STEEL|PE",
        "JOINT_MATERIAL, PVC|PE|PVC|PE|PVC|PE",
        "GIS_LENGTH, 111194|111194|111194|111194|111194|111194",
        "CABLE_LENGTH, 111194|111194|111194|111194|111194|111194",
        "OD_MM, 110|110|110|110|63|63",
        "ID_MM, 100|100|100|100|57|57",
        "DIAMETER_ASSUMED, 0|1|0|1|0|1",
        "MATERIAL, 1|2|3|1|2|3",
        "OWNER, 0|1|0|1|0|1",
        "WIDTH, 300|450|300|450|300|450",
        "TYPE, TRUNK|LOCAL|TRUNK|LOCAL|TRUNK|LOCAL",
        "STATUS, ACTIVE|ACTIVE|ACTIVE|ACTIVE|ACTIVE|ACTIVE",
        "CONDITION, 1|2|3|4|5|5",
        "FID, 1|2|3|4|5|6",
        "SHAPE_STLength__, 111194|111194|111194|111194|111194|111194",
        "fiber_count, 12|24|48|12|24|48",
        "slope, 0.01|0.02|0.01|0.02|0.01|0.02",
    })
    void decoysAreNeverProposedWithoutTheMark(String name, String values) {
        var layer = new FakeLayer("OGC:CRS84", name);
        int n = 0;
        for (String value : values.split("\\|", -1)) {
            layer.line(new double[] {n, 0, n + 1, 0}, value);
            n++;
        }

        assertThat(propose(layer).fields()).noneMatch(FieldProposal.Field::isSure);
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
    void theTextIsAConfigThatCanBePastedWithoutWhatIsUnsure() throws IOException {
        var layer = new FakeLayer(
                        "OGC:CRS84", "route_id", "bore_in", "yes", "odd \"name\"", "owner", "cable\n\u2028weight")
                .line(new double[] {0, 0, 1, 1}, "R1", 4L, "x", "y", 1L, 170L)
                .line(new double[] {0, 0, 1, 1}, "R2", 3.5, "x\u2028y\ny", null, 2L, 160L);
        Path yaml = folder.resolve("pasted.yaml");

        String text = ProposalYaml.inputs(List.of(propose(layer)), ContentsConfig.NONE, Path::toString);

        Files.writeString(yaml, text);
        FieldMap map = ConfigReader.read(yaml).inputs().routes().fields();
        assertThat(map.byTerm()).containsOnlyKeys(Term.ROUTE, Term.INSIDE_DIAMETER);
        assertThat(text)
                .contains("inside_diameter: {field: bore_in, unit: in}")
                .contains("# 4 | 3.5")
                .contains("# owner: owner")
                .contains("# unsure: its values are codes; 1 | 2")
                .contains("# no term: yes");
        String uncommented = text.replaceAll("(?m)^      # (owner|cable_mass):", "      $1:");
        Files.writeString(yaml, uncommented);
        assertThat(ConfigReader.read(yaml)
                        .inputs()
                        .routes()
                        .fields()
                        .find(Term.CABLE_MASS)
                        .orElseThrow()
                        .field())
                .isEqualTo("cable\n\u2028weight");
    }

    /** A layer of which nothing is sure still gives a config that can be read. */
    @Test
    void aLayerWithoutAnySureFieldCanBePasted() throws IOException {
        Path yaml = folder.resolve("pasted.yaml");
        FieldProposal proposal = propose(new FakeLayer("OGC:CRS84", "x1").line(new double[] {0, 0, 1, 1}, "R1"));

        Files.writeString(yaml, ProposalYaml.inputs(List.of(proposal), ContentsConfig.NONE, Path::toString));

        assertThat(ConfigReader.read(yaml).inputs().routes().fields().byTerm()).isEmpty();
    }
}

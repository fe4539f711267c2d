package org.spanroom.input.fields;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.spanroom.config.FieldMap;
import org.spanroom.config.FieldSource;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.model.Term;

class LayerFieldsTest {
    private static LayerFields fields(Map<Term, String> mapped, String... ofLayer) {
        var header = new LayerHeader(Path.of("a.shp"), "a", List.of(ofLayer), Optional.empty(), 1);
        return new LayerFields(
                new FieldMap(mapped.entrySet().stream()
                        .collect(Collectors.toMap(
                                Map.Entry::getKey, field -> new FieldSource(field.getValue(), Optional.empty())))),
                header);
    }

    private static String found(LayerFields fields, Term term) {
        return fields.find(term).orElseThrow().field();
    }

    @Test
    void fieldIsFoundByWhatAShapefileKeepsOfItsName() {
        var fields = fields(Map.of(Term.INSIDE_DIAMETER, "inside_diameter_in"), "route", "INSIDE_DIA");

        assertThat(found(fields, Term.INSIDE_DIAMETER)).isEqualTo("INSIDE_DIA");
    }

    /** GDAL calls the three innerduct_, innerduc_1 and innerduc_2, in the order of the file that they came from. */
    @Test
    void namesThatBeginAlikeAreNotGuessed() {
        var fields = fields(
                Map.of(
                        Term.INNERDUCT_OUTSIDE_DIAMETER, "innerduct_od_in",
                        Term.INNERDUCT_SDR, "innerduct_sdr",
                        Term.INSIDE_DIAMETER, "inside_diameter_in"),
                "innerduct_",
                "innerduc_1",
                "inside_dia");

        assertThat(found(fields, Term.INNERDUCT_OUTSIDE_DIAMETER)).isEqualTo("innerduct_od_in");
        assertThat(found(fields, Term.INNERDUCT_SDR)).isEqualTo("innerduct_sdr");
        assertThat(found(fields, Term.INSIDE_DIAMETER)).isEqualTo("inside_dia");
    }

    @Test
    void nameThatIsThereInFullLeavesTheShortenedOneToTheOther() {
        var fields = fields(
                Map.of(Term.INNERDUCT_OUTSIDE_DIAMETER, "innerduct_od_in", Term.INNERDUCT_SDR, "innerduct_sdr"),
                "innerduct_",
                "innerduct_sdr");

        assertThat(found(fields, Term.INNERDUCT_OUTSIDE_DIAMETER)).isEqualTo("innerduct_");
        assertThat(found(fields, Term.INNERDUCT_SDR)).isEqualTo("innerduct_sdr");
    }

    @Test
    void fieldThatIsAnotherTermsInFullIsNobodysShortName() {
        var fields = fields(
                Map.of(Term.VAULT_A, "vault_a", Term.VAULT_B, "vault_a_2", Term.OWNER, "Owner_name_long"),
                "vault_a",
                "owner_name");

        assertThat(found(fields, Term.VAULT_A)).isEqualTo("vault_a");
        assertThat(found(fields, Term.VAULT_B)).isEqualTo("vault_a_2");
        assertThat(found(fields, Term.OWNER)).isEqualTo("owner_name");
    }

    @Test
    void oneFieldOfSeveralTermsIsOneName() {
        var fields = fields(Map.of(Term.ROUTE, "asset_identifier", Term.DUCT, "Asset_Identifier"), "asset_iden");

        assertThat(found(fields, Term.ROUTE)).isEqualTo("asset_iden");
        assertThat(fields.wanted()).containsExactly("asset_iden");
    }

    private static List<String> kept(List<String> keep, String... ofLayer) {
        var header = new LayerHeader(Path.of("a.shp"), "a", List.of(ofLayer), Optional.empty(), 1);
        var map = new FieldMap(Map.of(Term.DUCT_BANK, new FieldSource("bank_of_ducts", Optional.empty())));
        return new LayerFields(map, keep, header)
                .kept().stream().map(LayerFields.Column::field).toList();
    }

    @Test
    void keptFieldsAreFoundByTheSameRules() {
        assertThat(kept(List.of("district_name", "STREET"), "street", "district_n", "bank_of_du"))
                .containsExactly("district_n", "street");
        assertThat(kept(List.of("district_name", "district_number"), "district_n"))
                .as("alike in what a Shapefile keeps: neither is guessed")
                .containsExactly("district_name", "district_number");
        assertThat(kept(List.of("bank_of_ducts"), "bank_of_du"))
                .as("a mapped field may be kept too")
                .containsExactly("bank_of_du");
        assertThat(kept(List.of("bank_of_dutch"), "bank_of_du"))
                .as("a mapped field that is alike in the file is not taken for it")
                .containsExactly("bank_of_dutch");
    }
}

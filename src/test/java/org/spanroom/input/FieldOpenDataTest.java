package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.InputConfig;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;
import org.spanroom.testing.OpenData;

/**
 * Mains and manholes of four cities, each with a schema of its own (open data; see its README). The README's table gives
 * the fields of ends and vaults for three layers. Those of the others were found by joining the tables on their values: UPLINK and DOWNLINK
 * name the LINKID of the manhole at the first and the last vertex in 97 of 100 lines and more.
 */
class FieldOpenDataTest {
    /** Fields that surely are none of what we ask for. */
    private static final Set<String> NEVER = Set.of(
            "OBJECTID",
            "GLOBALID",
            "Shape__Length",
            "SHAPE_Length",
            "INSTALLDATE",
            "InstallDate",
            "DATEINST",
            "UPSTREAM_INVERT",
            "DOWNSTREAM_INVERT",
            "INV_UP_ELV",
            "LASTCCTVYR",
            "HostPipeMaterial",
            "CAPITALIZATION_DATE",
            "ManholeDiameter",
            "AccessDiameter");

    private static List<FieldProposal> propose(String mains, String manholes) {
        Path lines = OpenData.at("city-mains/" + mains + ".geojson");
        InputConfig inputs = InputConfig.NONE.withRoutes(LayerConfig.NONE.withFile(lines));
        if (!manholes.isBlank()) {
            inputs = inputs.withVaults(LayerConfig.NONE.withFile(OpenData.at("city-mains/" + manholes + ".geojson")));
        }
        RunConfig config = ShippedConfig.get().withInputs(inputs);
        return FieldProposals.of(config);
    }

    @ParameterizedTest
    @CsvSource({
        "abbotsford/mains, abbotsford/manholes, UPLINK, DOWNLINK, LINKID",
        "abbotsford/sanitary_mains, abbotsford/sanitary_manholes, UPLINK, DOWNLINK, LINKID",
        "barrie/mains, '', FROM_ID, TO_ID, ''",
        "barrie/sanitary_mains, '', FROM_ID, TO_ID, ''",
        "toronto/mains, toronto/manholes, FROMMH, TOMH, FACILITYID",
        "toronto/sanitary_mains, toronto/manholes, FROMMH, TOMH, FACILITYID",
        "victoria/mains, victoria/manholes, UpstreamNodeID, DownstreamNodeID, AssetID",
        "victoria/sanitary_mains, victoria/sanitary_manholes, UpstreamNodeID, DownstreamNodeID, AssetID",
        "toronto/mains, '', FROMMH, TOMH, ''",
        "victoria/sanitary_mains, '', UpstreamNodeID, DownstreamNodeID, ''",
        "abbotsford/sanitary_mains, '', UPLINK, DOWNLINK, ''",
    })
    void endsAndVaultIdsAreSureAndRight(String mains, String manholes, String from, String to, String vault) {
        List<FieldProposal> proposals = propose(mains, manholes);

        assertSure(proposals.get(0), Map.of(Term.VAULT_A, from, Term.VAULT_B, to));
        if (!manholes.isBlank()) {
            assertSure(proposals.get(1), Map.of(Term.VAULT, vault));
        }
        for (FieldProposal proposal : proposals) {
            assertThat(proposal.fields().stream().filter(FieldProposal.Field::isSure))
                    .extracting(FieldProposal.Field::name)
                    .doesNotContainAnyElementsOf(NEVER);
        }
    }

    private static void assertSure(FieldProposal proposal, Map<Term, String> fields) {
        fields.forEach((term, name) -> {
            FieldProposal.Field field = proposal.find(term).orElseThrow();
            assertThat(field.name()).isEqualTo(name);
            assertThat(field.doubt()).isEmpty();
        });
    }

    @ParameterizedTest
    @CsvSource({
        "abbotsford/mains, ASSET_ID, DIAMETER, ''",
        "toronto/mains, FACILITYID, DIAMETER, MEASUREDLENGTH",
        "victoria/mains, AssetID, Diameter, Length_2D",
        "victoria/sanitary_mains, AssetID, Diameter, Length_2D",
    })
    void idsSizesAndLengthsAreRight(String mains, String route, String diameter, String length) {
        FieldProposal proposal =
                propose(mains, mains.replace("mains", "manholes")).get(0);

        assertSure(proposal, Map.of(Term.ROUTE, route, Term.INSIDE_DIAMETER, diameter));
        assertThat(proposal.find(Term.INSIDE_DIAMETER).flatMap(FieldProposal.Field::unit))
                .contains(Unit.MM);
        assertThat(proposal.find(Term.RECORDED_LENGTH)
                        .map(FieldProposal.Field::name)
                        .orElse(""))
                .isEqualTo(length);
        if (!length.isEmpty()) {
            assertThat(proposal.find(Term.RECORDED_LENGTH).flatMap(FieldProposal.Field::unit))
                    .isEqualTo(Optional.of(Unit.M));
        }
        assertThat(proposal.find(Term.YEAR)).isEmpty();
    }
}

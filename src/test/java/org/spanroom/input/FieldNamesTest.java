package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.input.proposal.FieldProposer;
import org.spanroom.model.Term;

/** Proposals for layers with names of five languages in ten styles: nothing wrong without the mark, and little missed. */
class FieldNamesTest {
    private static final int SEEDS = 6;
    private static final double LEAST_RECALL = 0.95;
    private static final double LEAST_RECALL_CUT = 0.68;

    static Stream<Arguments> everyLanguageInEveryStyle() {
        return Stream.of(NamedLayers.Language.values())
                .flatMap(language -> Stream.of(NamedLayers.Style.values()).map(style -> Arguments.of(language, style)));
    }

    private static List<FieldProposal> propose(NamedLayers layers, boolean withVaults) {
        var proposer = new FieldProposer(ShippedConfig.get());
        proposer.readRoutes(layers.lines, LayerConfig.NONE);
        if (withVaults) {
            proposer.readVaults(layers.points, LayerConfig.NONE);
        }
        return proposer.proposals();
    }

    @ParameterizedTest
    @MethodSource("everyLanguageInEveryStyle")
    void nothingWrongGoesUnmarkedAndLittleIsMissed(NamedLayers.Language language, NamedLayers.Style style) {
        int known = 0;
        var missed = new ArrayList<String>();
        for (int seed = 0; seed < SEEDS; seed++) {
            var layers = new NamedLayers(language, style, seed);
            List<FieldProposal> proposals = propose(layers, true);
            assertNothingWrong(layers, proposals.get(0), layers.meaning);
            assertNothingWrong(layers, proposals.get(1), layers.vaultMeaning);
            missed.addAll(missed(proposals.get(0), layers.meaning));
            missed.addAll(missed(proposals.get(1), layers.vaultMeaning));
            known += layers.meaning.size() + layers.vaultMeaning.size();
        }
        double recall = 1 - (double) missed.size() / known;
        assertThat(recall)
                .as("missed: %s", missed)
                .isGreaterThan(style == NamedLayers.Style.CUT ? LEAST_RECALL_CUT : LEAST_RECALL);
        assertThat(missed)
                .noneMatch(
                        miss -> miss.startsWith("VAULT_A") || miss.startsWith("VAULT_B") || miss.startsWith("VAULT "));
    }

    /** Without vaults the lines themselves show which nodes they share. */
    @ParameterizedTest
    @MethodSource("everyLanguageInEveryStyle")
    void nothingWrongGoesUnmarkedWithoutVaults(NamedLayers.Language language, NamedLayers.Style style) {
        for (int seed = 0; seed < SEEDS; seed++) {
            var layers = new NamedLayers(language, style, seed);
            FieldProposal proposal = propose(layers, false).get(0);
            assertNothingWrong(layers, proposal, layers.meaning);
            for (Term term : List.of(Term.VAULT_A, Term.VAULT_B)) {
                assertThat(proposal.find(term))
                        .hasValueSatisfying(field -> assertThat(layers.meaning).containsEntry(field.name(), term));
            }
        }
    }

    private static void assertNothingWrong(NamedLayers layers, FieldProposal proposal, Map<String, Term> meaning) {
        for (FieldProposal.Field field : proposal.fields()) {
            if (field.isSure()) {
                assertThat(field.term())
                        .as("%s among %s", field.name(), meaning)
                        .isEqualTo(Optional.ofNullable(meaning.get(field.name())));
                assertThat(field.unit())
                        .as(field.name())
                        .isEqualTo(layers.unit(field.term().get()));
            }
        }
    }

    private static List<String> missed(FieldProposal proposal, Map<String, Term> meaning) {
        return proposal.fields().stream()
                .filter(field -> meaning.containsKey(field.name()) && !field.isSure())
                .map(field -> meaning.get(field.name()) + " " + field.name() + " (" + field.doubt() + ")")
                .toList();
    }

    /** Field names and meaning by the schema of the Open Fibre Data Standard 0.3 (spans, nodes), from memory; values made up. */
    @Test
    void anOpenFibreNetworkIsProposedRight() {
        String[] names = {
            "id",
            "name",
            "start.id",
            "start.name",
            "end.id",
            "end.name",
            "directed",
            "status",
            "supplier.id",
            "supplier.name",
            "physicalInfrastructureProvider.id",
            "physicalInfrastructureProvider.name",
            "darkFibre",
            "fibreCount",
            "fibreLength"
        };
        var spans = new FakeLayer("OGC:CRS84", names);
        var nodes = new FakeLayer("OGC:CRS84", "id", "name", "status", "type")
                .point(0, 0, "n0", "Node 0", "operational", "x");
        for (int n = 0; n < 4; n++) {
            spans.line(
                    new double[] {n * 0.01, 0, (n + 1) * 0.01, 0},
                    "s" + n,
                    "Span " + n,
                    "n" + n,
                    "Node " + n,
                    "n" + (n + 1),
                    "Node " + (n + 1),
                    true,
                    "operational",
                    "x1",
                    "Cable Works",
                    "o1",
                    "Harbor Board",
                    "true",
                    24L,
                    1.3 + n);
            nodes.point((n + 1) * 0.01, 0, "n" + (n + 1), "Node " + (n + 1), "operational", "splice");
        }
        var proposer = new FieldProposer(ShippedConfig.get());
        proposer.readRoutes(spans, LayerConfig.NONE);
        proposer.readVaults(nodes, LayerConfig.NONE);

        FieldProposal lines = proposer.proposals().get(0);
        FieldProposal points = proposer.proposals().get(1);

        assertThat(lines.fields().stream().filter(FieldProposal.Field::isSure))
                .extracting(field -> field.term().orElseThrow() + " " + field.name())
                .containsExactlyInAnyOrder(
                        "ROUTE id", "VAULT_A start.id", "VAULT_B end.id", "OWNER physicalInfrastructureProvider.name");
        assertThat(points.find(Term.VAULT)).hasValueSatisfying(field -> {
            assertThat(field.name()).isEqualTo("id");
            assertThat(field.isSure()).isTrue();
        });
    }

    /** A few lines among many vaults, drawn against the flow: the vertex decides, not the name. */
    @Test
    void theEndThatTheVaultLiesAtDecidesNotTheName() {
        var lines = new FakeLayer("OGC:CRS84", "FROM_MH", "TO_MH");
        var points = new FakeLayer("OGC:CRS84", "MH_ID");
        for (int n = 0; n < 30; n++) {
            lines.line(new double[] {(n + 1) * 0.001, 0, n * 0.001, 0}, "M" + n, "M" + (n + 1));
            points.point(n * 0.001, 0, "M" + n);
        }
        var proposer = new FieldProposer(ShippedConfig.get());
        proposer.readRoutes(lines, LayerConfig.NONE);
        proposer.readVaults(points, LayerConfig.NONE);

        FieldProposal proposal = proposer.proposals().get(0);

        assertThat(proposal.find(Term.VAULT_A).orElseThrow().name()).isEqualTo("TO_MH");
        assertThat(proposal.find(Term.VAULT_B).orElseThrow().name()).isEqualTo("FROM_MH");
    }

    /** Lines drawn in either direction leave it open which field names the vault at the first vertex. */
    @Test
    void endsThatFollowNoDirectionAreUnsure() {
        var lines = new FakeLayer("OGC:CRS84", "FROM_MH", "TO_MH");
        var points = new FakeLayer("OGC:CRS84", "MH_ID");
        for (int n = 0; n < 30; n++) {
            int turned = n % 3 == 0 ? 1 : 0;
            lines.line(new double[] {(n + turned) * 0.001, 0, (n + 1 - turned) * 0.001, 0}, "M" + n, "M" + (n + 1));
            points.point(n * 0.001, 0, "M" + n);
        }
        var proposer = new FieldProposer(ShippedConfig.get());
        proposer.readRoutes(lines, LayerConfig.NONE);
        proposer.readVaults(points, LayerConfig.NONE);

        FieldProposal proposal = proposer.proposals().get(0);

        assertThat(proposal.find(Term.VAULT_A).orElseThrow().doubt()).contains("first vertex of 20 lines");
        assertThat(proposal.find(Term.VAULT_B).orElseThrow().isSure()).isFalse();
        assertThat(proposer.proposals().get(1).find(Term.VAULT).orElseThrow().isSure())
                .isTrue();
    }
}

package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.InputConfig;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.input.proposal.ProposalYaml;
import org.spanroom.model.Term;

/** Bytes from a fuzzer as up to three layers, routes, vaults and zones, whose fields are to be guessed; what is proposed must be a config. */
final class FuzzedProposal {
    /** Between the layers. */
    static final String SEPARATOR = "\n---\n";

    private FuzzedProposal() {}

    static void read(byte[] data) throws IOException {
        String[] layers = new String(data, StandardCharsets.ISO_8859_1).split(SEPARATOR, 3);
        FuzzedFile.inFolder(folder -> {
            var files = new ArrayList<Path>();
            for (String layer : layers) {
                Path file = folder.resolve("layer" + files.size() + ".geojson");
                files.add(Files.write(file, layer.getBytes(StandardCharsets.ISO_8859_1)));
            }
            RunConfig config = config(files);
            FuzzedFile.endsWell(files.get(0), () -> write(folder, config, FieldProposals.of(config)));
        });
    }

    private static RunConfig config(List<Path> files) {
        InputConfig inputs = InputConfig.NONE;
        inputs = inputs.withRoutes(LayerConfig.NONE.withFile(files.get(0)));
        if (files.size() > 1) {
            inputs = inputs.withVaults(LayerConfig.NONE.withFile(files.get(1)));
        }
        if (files.size() > 2) {
            inputs = inputs.withZones(LayerConfig.NONE.withFile(files.get(2)));
        }
        return ShippedConfig.get().withInputs(inputs);
    }

    private static void write(Path folder, RunConfig config, List<FieldProposal> proposals) {
        for (FieldProposal proposal : proposals) {
            for (Term term : Term.values()) {
                assertThat(proposal.fields())
                        .filteredOn(field -> field.term().filter(term::equals).isPresent())
                        .as("each term is one field's")
                        .hasSizeLessThan(2);
            }
        }
        String yaml = ProposalYaml.inputs(proposals, config.inputs().contents(), Path::toString);
        Path file = FuzzedDocument.write(folder.resolve("spanroom.yaml"), yaml);
        for (FieldProposal proposal : proposals) {
            long sure = proposal.fields().stream()
                    .filter(FieldProposal.Field::isSure)
                    .count();
            assertThat(layer(ConfigReader.read(file).inputs(), proposal.role())
                            .fields()
                            .byTerm())
                    .as(yaml)
                    .hasSize((int) sure);
        }
    }

    private static LayerConfig layer(InputConfig inputs, String role) {
        return switch (role) {
            case "routes" -> inputs.routes();
            case "vaults" -> inputs.vaults();
            default -> inputs.zones();
        };
    }
}

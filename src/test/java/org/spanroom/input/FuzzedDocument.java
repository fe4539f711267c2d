package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.zip.GZIPOutputStream;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.ProgramConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.fieldbook.CloseoutReader;
import org.spanroom.input.fieldbook.CloseoutScope;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.input.fields.ConnectionsReader;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.RowProblem;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.UsualItems;
import org.spanroom.model.network.Vault;
import org.spanroom.model.program.Connection;
import org.spanroom.network.FieldChanges;
import org.spanroom.network.FieldOverlay;
import org.spanroom.output.RecordedAccount;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.pipeline.StreetReader;

/** Bytes from a fuzzer, read as one of the files beside the layers: tables, configs, and what an earlier run has left. */
final class FuzzedDocument {
    private static final RunConfig DEFAULTS = ShippedConfig.get();
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 31);

    private FuzzedDocument() {}

    /** Does what is done once, before the time of inputs counts. */
    static void begin() {
        assertThat(DEFAULTS).isNotNull();
    }

    static void readConnections(byte[] data) throws IOException {
        FuzzedFile.inFolder(folder -> {
            Path file = Files.write(folder.resolve("connections.csv"), data);
            FuzzedFile.endsWell(file, () -> {
                List<Connection> rows = ConnectionsReader.read(file);
                assertThat(rows).isNotEmpty().allSatisfy(row -> {
                    assertThat(row.problem().isPresent() || !row.name().isBlank())
                            .isTrue();
                    assertThat(row.cables()).isPositive();
                });
            });
        });
    }

    static void readProgramConfig(byte[] data) throws IOException {
        FuzzedFile.inFolder(folder -> {
            Path file = Files.write(folder.resolve("program.yaml"), data);
            endsInOneLine(
                    () -> assertThat(ProgramConfigReader.read(file).years()).isNotEmpty());
        });
    }

    /** A config that is understood has to come back from the record of its run as it was; one of eight is tried, since that takes long. */
    static void readRunConfig(byte[] data) throws IOException {
        FuzzedFile.inFolder(folder -> {
            Path file = Files.write(folder.resolve("run.yaml"), data);
            endsInOneLine(() -> {
                RunConfig config = ConfigReader.read(file);
                if (data.length % 8 == 0) {
                    Map<String, Object> recorded = ConfigReader.asMap(config);
                    Path record = write(folder.resolve("run.json"), FuzzDocumentSeeds.json(Map.of("config", recorded)));
                    assertThat(ConfigReader.asMap(ConfigReader.readRecorded(record)))
                            .isEqualTo(recorded);
                }
            });
        });
    }

    static void readCloseout(byte[] data) throws IOException {
        FuzzedFile.inFolder(folder -> {
            Path file = Files.write(folder.resolve("closeout.csv"), data);
            FuzzedFile.endsWell(file, () -> {
                CloseoutReader.Result read = new CloseoutReader(scope()).read(file);
                long wrong = read.problems().stream()
                        .mapToLong(RowProblem::line)
                        .distinct()
                        .count();
                assertThat(read.rows())
                        .isGreaterThanOrEqualTo(read.empty() + read.entries().size());
                assertThat(read.rows())
                        .as("every row is entered, empty, repeated or has a problem")
                        .isLessThanOrEqualTo((int)
                                (read.empty() + read.repeated() + read.entries().size() + wrong));
            });
        });
    }

    static CloseoutScope scope() {
        return new CloseoutScope(
                "00c0ffee",
                Map.of(
                        "D1:V1:V2", new CloseoutScope.Ends("V1", "V2", 100),
                        "D2:V2:V3", new CloseoutScope.Ends("V2", "V3", 100)),
                Set.of("V1", "V2", "V3"),
                FieldBook.EMPTY,
                1,
                TODAY,
                DEFAULTS.plausible());
    }

    static void readFieldBook(byte[] data) throws IOException {
        FuzzedFile.inFolder(folder -> {
            Path file = Files.write(folder.resolve("book.csv"), data);
            FuzzedFile.endsWell(file, () -> {
                FieldBookReader.Read read = new FieldBookReader(DEFAULTS.plausible()).read(file);
                assertThat(read.rejected()).isNotNegative();
                assertThat(read.rejected() > 0).isEqualTo(!read.problems().isEmpty());
                lay(read.book());
                lay(read.book().asOf(TODAY));
            });
        });
    }

    private static void lay(FieldBook book) {
        Network network = FuzzedNetwork.network();
        List<Vault> vaults = FuzzedNetwork.vaults();
        var overlay =
                new FieldOverlay(book, new FieldChanges(UsualItems.NONE), text -> text, new FindingLog(), "book.csv");
        Network found = overlay.spans(network);
        assertThat(overlay.vaults(vaults)).extracting(Vault::id).containsExactlyElementsOf(FuzzedNetwork.vaultIds());
        assertThat(found.spans().size()).isEqualTo(network.spans().size());
        for (int span = 0; span < network.spans().size(); span++) {
            assertThat(found.spans().id(span)).isEqualTo(network.spans().id(span));
            assertThat(found.spans().get(span).duct()).isEqualTo(found.spans().duct(span));
        }
    }

    static void readStreets(byte[] data) throws IOException {
        FuzzedFile.inFolder(folder -> {
            Path file = Files.write(folder.resolve("a.geojson"), data);
            FuzzedFile.endsWell(
                    file,
                    () -> assertThat(StreetReader.read(file, Optional.empty()))
                            .isNotEmpty()
                            .allSatisfy(street -> assertThat(street.lonLat()).isNotEmpty()));
        });
    }

    static void readRunRecord(byte[] data) throws IOException {
        FuzzedFile.inFolder(folder -> {
            Path file = Files.write(folder.resolve("run.json"), data);
            FuzzedFile.endsWell(file, () -> ConfigReader.readRecorded(file));
            FuzzedFile.endsWell(file, () -> {
                RecordedRun run = RecordedRun.read(folder);
                assertThat(run.inputs()).isNotEmpty();
                RecordedAccount.read(run);
                run.outputSystem();
            });
        });
    }

    static void readRunSpans(byte[] data) throws IOException {
        FuzzedFile.inFolder(folder -> {
            Path file = folder.resolve(RecordedSpans.FILE);
            try (OutputStream packed = new GZIPOutputStream(Files.newOutputStream(file))) {
                packed.write(data);
            }
            write(folder.resolve("run.json"), FuzzDocumentSeeds.runRecord(2));
            FuzzedFile.endsWell(file, () -> {
                var types = SpanColumns.all(new SpanLayout(List.of(), false, List.of(), ColumnGroup.all()))
                        .columns();
                RecordedSpans spans = RecordedSpans.open(RecordedRun.read(folder), types);
                var rows = new long[1];
                spans.read(types, true, row -> rows[0]++);
                assertThat(rows[0]).isEqualTo(2);
            });
        });
    }

    static Path write(Path file, String text) {
        try {
            return Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A config may name other files, and then the line is about them. */
    private static void endsInOneLine(FuzzedFile.Action action) {
        try {
            action.run();
        } catch (InputException e) {
            assertThat(e.getMessage()).contains(": ").doesNotContain("\n", "\r").hasSizeLessThan(2_300);
        }
    }
}

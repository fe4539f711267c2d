package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.spanroom.config.FieldMap;
import org.spanroom.config.FieldSource;
import org.spanroom.config.InputConfig;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.fields.ContentsTableReader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.model.Term;

/**
 * Bytes from a fuzzer or a mutator, read as a file: all that may come of it are results and findings, or the one exception for
 * unusable files, whose message is one line that names the file.
 */
public final class FuzzedFile {
    private static final List<String> SHAPEFILE = List.of("a.shp", "a.shx", "a.dbf", "a.dbt");
    private static final RunConfig DEFAULTS = ShippedConfig.get();
    private static final FieldMap ROUTE_FIELDS = new FieldMap(
            Map.of(Term.ROUTE, source("route"), Term.DUCT, source("name"), Term.INSIDE_DIAMETER, source("n")));
    private static final FieldMap VAULT_FIELDS =
            new FieldMap(Map.of(Term.VAULT, source("name"), Term.VAULT_ELEVATION, source("n")));
    private static final FieldMap ZONE_FIELDS = new FieldMap(Map.of(
            Term.ZONE, source("zone"),
            Term.ZONE_KIND, source("kind"),
            Term.ZONE_FROM, source("from"),
            Term.ZONE_UNTIL, source("until")));

    private FuzzedFile() {}

    static void readLayer(String name, byte[] data) throws IOException {
        inFolder(folder -> read(Files.write(folder.resolve(name), data)));
    }

    static void readZones(byte[] data) throws IOException {
        inFolder(folder -> {
            Path file = Files.write(folder.resolve("a.geojson"), data);
            endsWell(file, () -> new InputReader(config(file, "zones"), new FindingLog()).read());
        });
    }

    static void readShapefile(byte[] data) throws IOException {
        inFolder(folder -> {
            ByteBuffer bytes = ByteBuffer.wrap(data);
            for (String name : SHAPEFILE) {
                int length = bytes.remaining() < 2 ? 0 : Math.min(bytes.getShort() & 0xFFFF, bytes.remaining());
                byte[] part = new byte[length];
                bytes.get(part);
                if (length > 0 || name.endsWith("shp")) {
                    Files.write(folder.resolve(name), part);
                }
            }
            read(folder.resolve("a.shp"));
        });
    }

    static void readContents(byte[] data) throws IOException {
        inFolder(folder -> {
            Path file = Files.write(folder.resolve("a.csv"), data);
            endsWell(file, () -> {
                var reader = new ContentsTableReader(file, DEFAULTS, new FindingLog());
                reader.read();
                long rejected = reader.rejections().byCode().values().stream()
                        .mapToLong(Long::longValue)
                        .sum();
                assertThat(reader.rows()).isEqualTo(reader.usedRows() + rejected);
            });
        });
    }

    /** Puts the parts of a shapefile into the form that {@link #readShapefile} takes apart. */
    static byte[] joined(byte[]... parts) {
        int length = Stream.of(parts).mapToInt(part -> 2 + part.length).sum();
        ByteBuffer joined = ByteBuffer.allocate(length);
        for (byte[] part : parts) {
            joined.putShort((short) part.length).put(part);
        }
        return Stream.of(joined).map(ByteBuffer::array).findFirst().orElseThrow();
    }

    /** Reads a file as any layer, then as routes, as vaults and as zones, whatever it is. */
    public static void read(Path file) {
        endsWell(file, () -> readWithAllFields(file));
        for (String role : List.of("routes", "vaults", "zones")) {
            endsWell(file, () -> new InputReader(config(file, role), new FindingLog()).read());
        }
    }

    static void readWithAllFields(Path file) {
        try (LayerSource source = LayerSources.open(file, Optional.empty(), new FindingLog())) {
            var handedOn = new ArrayList<Long>();
            long met = source.read(source.header().fields(), feature -> handedOn.add(feature.number()));
            long rejected = source.rejected().values().stream()
                    .mapToLong(Long::longValue)
                    .sum();
            assertThat(met).isEqualTo(handedOn.size() + rejected);
        }
    }

    private static RunConfig config(Path file, String role) {
        LayerConfig layer = LayerConfig.NONE.withFile(file).withCrs("OGC:CRS84");
        InputConfig inputs = InputConfig.NONE.withRoutes(layer.withFields(ROUTE_FIELDS));
        return DEFAULTS.withInputs(
                switch (role) {
                    case "vaults" -> inputs.withVaults(layer.withFields(VAULT_FIELDS));
                    case "zones" -> inputs.withZones(layer.withFields(ZONE_FIELDS));
                    default -> inputs;
                });
    }

    private static FieldSource source(String field) {
        return new FieldSource(field, Optional.empty());
    }

    /** Something that reads. */
    interface Action {
        void run();
    }

    /** Something done in a folder of its own. */
    interface FolderAction {
        void run(Path folder) throws IOException;
    }

    static void endsWell(Path file, Action action) {
        try {
            action.run();
        } catch (InputException e) {
            assertThat(e.getMessage())
                    .startsWith(String.valueOf(file.getParent()))
                    .doesNotContain("\n", "\r")
                    .hasSizeLessThan(2_300);
        }
    }

    static void inFolder(FolderAction action) throws IOException {
        Path folder = Files.createTempDirectory("fuzz");
        try {
            action.run(folder);
        } finally {
            try (Stream<Path> files = Files.list(folder)) {
                for (Path file : files.toList()) {
                    Files.delete(file);
                }
            }
            Files.delete(folder);
        }
    }
}

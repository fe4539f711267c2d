package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;

/** The digest in a run's record is that of the bytes that were used, or the run ends. */
class ChangedWhileReadTest {
    @TempDir
    private Path folder;

    private Path file;

    /** Enough that the reader reports progress before its end. */
    private static String layer(int routes) {
        var features = new StringBuilder();
        for (int i = 0; i < routes; i++) {
            features.append(i == 0 ? "" : ",\n").append(HardJson.line(i));
        }
        return HardJson.collection(features.toString());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aFileThatIsReplacedWhileItIsReadEndsTheRun(int threads) throws IOException {
        file = Files.writeString(folder.resolve("routes.geojson"), layer(60_000));
        Path other = Files.writeString(folder.resolve("other.geojson"), layer(60_000));

        assertThatThrownBy(() -> read(threads, () -> Files.move(other, file, StandardCopyOption.REPLACE_EXISTING)))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("routes.geojson: it was changed or replaced while it was read");
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void oneThatIsRewrittenWithItsOldTimeTooWhereTheSystemKnowsBetter(int threads) throws IOException {
        file = Files.writeString(folder.resolve("routes.geojson"), layer(60_000));
        FileTime time = Files.getLastModifiedTime(file);

        assertThatThrownBy(() -> read(threads, () -> {
                    Files.writeString(file, layer(60_000).replace("\"R1\"", "\"S1\""));
                    Files.setLastModifiedTime(file, time);
                }))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("changed or replaced");
    }

    @Test
    void anUnchangedOneDoesNot() throws IOException {
        file = Files.writeString(folder.resolve("routes.geojson"), layer(60_000));

        assertThatCode(() -> read(2, () -> {})).doesNotThrowAnyException();
    }

    /** What happens to the file once. */
    private interface Change {
        void make() throws IOException;
    }

    private void read(int threads, Change change) {
        RunConfig config = ShippedConfig.get().withThreads(threads);
        LayerConfig routes = config.inputs().routes().withFile(file);
        var done = new AtomicBoolean();
        new InputReader(config.withInputs(config.inputs().withRoutes(routes)), new FindingLog(), (features, share) -> {
                    if (!done.getAndSet(true)) {
                        try {
                            change.make();
                        } catch (IOException e) {
                            throw new AssertionError(e);
                        }
                    }
                })
                .read();
    }
}

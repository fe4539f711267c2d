package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * No length, count or nesting that a file claims makes the readers take memory that its bytes do not warrant: every hard layer is read
 * in a process of 64 MiB, a feature at a time.
 */
class SmallMemoryTest {
    private static final int LONGEST_S = 300;

    @TempDir
    private Path folder;

    /** Reads each file named, and says what happened other than what may. */
    static final class Reading {
        private Reading() {}

        public static void main(String[] files) {
            for (String file : files) {
                try {
                    FuzzedFile.readWithAllFields(Path.of(file));
                } catch (org.spanroom.finding.InputException refused) {
                    // In one line, as it should be.
                } catch (Throwable other) {
                    System.out.println(file + ": " + other);
                }
            }
            System.out.println("read " + files.length + " files");
        }
    }

    @Test
    void everyHardLayerIsReadInSixtyFourMebibytes() throws Exception {
        List<String> files = write();

        Process process = start(files);
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(process.waitFor(LONGEST_S, TimeUnit.SECONDS)).isTrue();
        assertThat(said.strip()).isEqualTo("read " + files.size() + " files");
        assertThat(process.exitValue()).isZero();
    }

    /** Writes the layers, but not those that let SQLite work to its limit, which costs time and no memory. */
    private List<String> write() throws Exception {
        var files = new ArrayList<String>();
        for (HardCase hard : HardInputTest.cases().toList()) {
            boolean works = hard.words().stream().anyMatch(words -> words.contains("without end"));
            if (!hard.role().equals("contents") && !works) {
                Path own = Files.createDirectory(folder.resolve(Integer.toString(files.size())));
                files.add(hard.maker().write(own).toString());
            }
        }
        return files;
    }

    private static Process start(List<String> files) throws IOException {
        var command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx64m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Reading.class.getName()));
        command.addAll(files);
        return new ProcessBuilder(command).redirectErrorStream(true).start();
    }
}

package org.spanroom.input;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/**
 * The inputs that fuzzing has found to reach something new, kept with the tests: every hunt begins with them, and the tests read them
 * again.
 *
 * <p>As a program it replaces them by the fewest inputs of a folder that reach the same. Argument: the folder of the corpus.
 */
public final class FuzzCorpus {
    private static final Path KEPT = Path.of("src", "test", "resources", "fuzz");

    /** Larger inputs are rare, and take most of the room. */
    private static final long MOST_BYTES = 4096;

    private static final LocalDateTime SAME_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

    private FuzzCorpus() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        Path folder = Path.of(args[0]);
        for (String target : FuzzRun.all()) {
            Path fewest = Files.createDirectories(folder.resolve("fewest").resolve(target));
            int status = merge(target, folder, fewest);
            if (status != 0) {
                throw new IOException(target + ": the fuzzer ended with status " + status);
            }
            System.out.printf("%-20s %6d inputs kept%n", target, pack(fewest, target));
        }
    }

    /** Copies inputs to a folder that is empty, only those that reach something that the ones before do not. */
    private static int merge(String target, Path folder, Path fewest) throws IOException, InterruptedException {
        for (Path old : files(fewest)) {
            Files.delete(old);
        }
        var command = new ArrayList<>(FuzzRun.command(target, folder));
        command.addAll(
                List.of("-merge=1", fewest.toString(), folder.resolve(target).toString()));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve(target + ".merge.log").toFile())
                .start()
                .waitFor();
    }

    /** The same inputs give the same bytes: entries are in the order of their names and without a time. */
    private static int pack(Path inputs, String target) throws IOException {
        int kept = 0;
        try (OutputStream file =
                        Files.newOutputStream(Files.createDirectories(KEPT).resolve(target + ".zip"));
                var zip = new ZipOutputStream(file)) {
            for (Path input : files(inputs)) {
                if (Files.size(input) <= MOST_BYTES) {
                    var entry = new ZipEntry(input.getFileName().toString());
                    entry.setTimeLocal(SAME_TIME);
                    zip.putNextEntry(entry);
                    zip.write(Files.readAllBytes(input));
                    kept++;
                }
            }
        }
        return kept;
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }

    /** Writes the kept inputs of each target to its folder. */
    static void unpack(Path folder) throws IOException {
        for (String target : FuzzRun.all()) {
            try (InputStream kept = FuzzCorpus.class.getResourceAsStream("/fuzz/" + target + ".zip")) {
                if (kept != null) {
                    unpack(new ZipInputStream(kept), Files.createDirectories(folder.resolve(target)));
                }
            }
        }
    }

    private static void unpack(ZipInputStream zip, Path folder) throws IOException {
        for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
            Path file = folder.resolve(Path.of(entry.getName()).getFileName().toString());
            Files.write(file, zip.readAllBytes());
        }
    }
}

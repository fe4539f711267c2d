package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.linearsolver.MPSolver;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.testing.ForkedRun;

/** The native library is used where it can be, leaves nothing behind, and is done without elsewhere. Each case is a program of its own. */
class NativeSolverTest {
    @TempDir
    Path folder;

    /** Loads the library twice and solves a program of one variable; the end code says what happened. */
    static final class Loading {
        private static final int SOLVED = 10;
        private static final int DONE_WITHOUT = 11;

        private Loading() {}

        public static void main(String[] args) {
            Optional<String> reason = NativeSolver.load();
            if (!NativeSolver.load().equals(reason)) {
                System.exit(1);
            }
            if (reason.isPresent()) {
                System.exit(reason.get().contains("library for integer programs") ? DONE_WITHOUT : 2);
            }
            MPSolver solver = MPSolver.createSolver("SCIP");
            var number = solver.makeIntVar(0, 7.5, "");
            solver.objective().setCoefficient(number, 1);
            solver.objective().setMaximization();
            solver.solve();
            System.exit(solver.objective().value() == 7 ? SOLVED : 3);
        }
    }

    @Test
    void libraryIsLoadedFromADirectoryThatIsRemoved() throws IOException {
        Path place = Files.createDirectory(folder.resolve("tmp"));
        // Packed are three platforms
        boolean isThere = NativeSolver.class
                        .getClassLoader()
                        .getResource("ortools-" + NativeSolver.platform() + "/" + System.mapLibraryName("jniortools"))
                != null;

        assertThat(endCode(place)).isEqualTo(isThere ? Loading.SOLVED : Loading.DONE_WITHOUT);
        assertThat(left(place)).isEmpty();
    }

    @Test
    void platformWithoutLibraryIsAReason() throws IOException {
        Path place = Files.createDirectory(folder.resolve("tmp"));

        assertThat(endCode(place, "-D" + NativeSolver.PLATFORM_PROPERTY + "=none"))
                .isEqualTo(Loading.DONE_WITHOUT);
        assertThat(left(place)).isEmpty();
    }

    /** A file that is no library: an error of the linker, which must not come out. */
    @Test
    void libraryThatCannotBeLoadedIsAReason() throws IOException {
        Path place = Files.createDirectory(folder.resolve("tmp"));
        Path archive = folder.resolve("broken.jar");
        try (var out = new ZipOutputStream(Files.newOutputStream(archive))) {
            out.putNextEntry(new ZipEntry("ortools-other/" + System.mapLibraryName("jniortools")));
            out.write("not a library".getBytes(StandardCharsets.US_ASCII));
        }

        assertThat(endCode(place, "-Xbootclasspath/a:" + archive, "-D" + NativeSolver.PLATFORM_PROPERTY + "=other"))
                .isEqualTo(Loading.DONE_WITHOUT);
        assertThat(left(place)).isEmpty();
    }

    @Test
    void missingTemporaryFolderIsAReason() {
        assertThat(endCode(folder.resolve("missing"))).isEqualTo(Loading.DONE_WITHOUT);
    }

    private int endCode(Path place, String... options) {
        var java = new ArrayList<>(List.of(options));
        java.add("-Djava.io.tmpdir=" + place);
        try (ForkedRun run = ForkedRun.start(List.of(), java, Loading.class, folder, List.of())) {
            return run.exitCode();
        }
    }

    private static List<Path> left(Path place) throws IOException {
        try (Stream<Path> files = Files.list(place)) {
            return files.filter(file -> !file.getFileName().toString().startsWith("hsperfdata"))
                    .toList();
        }
    }
}

package org.spanroom.input;

import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/**
 * Reads again all that fuzzing has kept, without the fuzzer: for the coverage of a corpus, and to see whether an old failure is gone.
 *
 * <p>Argument: the folder of the corpus.
 */
public final class FuzzReplay {
    private FuzzReplay() {}

    public static void main(String[] args) throws IOException, ReflectiveOperationException {
        for (String target : FuzzRun.all()) {
            Method method = Class.forName(FuzzReplay.class.getPackageName() + "." + target)
                    .getMethod("fuzzerTestOneInput", byte[].class);
            System.out.printf("%-20s %6d files%n", target, replay(method, Path.of(args[0], target)));
        }
    }

    private static int replay(Method method, Path corpus) throws IOException, ReflectiveOperationException {
        try (Stream<Path> files = Files.list(corpus)) {
            int read = 0;
            for (Path file : files.sorted().toList()) {
                method.invoke(null, (Object) Files.readAllBytes(file));
                read++;
            }
            return read;
        }
    }
}

package org.spanroom.config;

import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * The files of one layer, in the order in which they are read: a config names one, or a list of them.
 *
 * @param paths none where the layer is not read
 */
public record InputFiles(List<Path> paths) implements Iterable<Path> {
    public static final InputFiles NONE = new InputFiles(List.of());

    public InputFiles {
        paths = List.copyOf(paths);
    }

    public static InputFiles of(Path file) {
        return new InputFiles(List.of(file));
    }

    public boolean isEmpty() {
        return paths.isEmpty();
    }

    InputFiles map(UnaryOperator<Path> other) {
        return new InputFiles(paths.stream().map(other).toList());
    }

    @Override
    public Iterator<Path> iterator() {
        return paths.iterator();
    }
}

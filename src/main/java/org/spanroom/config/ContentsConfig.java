package org.spanroom.config;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.spanroom.model.Unit;

/**
 * The table that lists what is in each duct.
 *
 * @param file the CSV file; a config names it relative to itself
 * @param encoding the text encoding, where it is not UTF-8
 * @param diameterUnit unit of outside diameters and walls
 * @param massUnit unit of mass per length
 */
public record ContentsConfig(Optional<Path> file, Optional<String> encoding, Unit diameterUnit, Unit massUnit) {
    public static final ContentsConfig NONE =
            new ContentsConfig(Optional.empty(), Optional.empty(), Unit.MM, Unit.KG_PER_M);

    public ContentsConfig {
        if (diameterUnit.dimension() != Unit.Dimension.LENGTH) {
            throw new IllegalArgumentException("diameterUnit must be a unit of length, was " + diameterUnit.symbol());
        }
        if (massUnit.dimension() != Unit.Dimension.MASS_PER_LENGTH) {
            throw new IllegalArgumentException("massUnit must be a unit of mass per length, was " + massUnit.symbol());
        }
    }

    ContentsConfig withFiles(UnaryOperator<Path> other) {
        return new ContentsConfig(file.map(other), encoding, diameterUnit, massUnit);
    }

    public ContentsConfig withFile(Path otherFile) {
        return new ContentsConfig(Optional.of(otherFile), encoding, diameterUnit, massUnit);
    }
}

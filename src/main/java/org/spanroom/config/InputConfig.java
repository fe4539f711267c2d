package org.spanroom.config;

import java.nio.file.Path;
import java.util.function.UnaryOperator;

/**
 * What is read.
 *
 * @param zones areas in which work needs permits, or is not allowed
 * @param fieldBook what crews reported
 */
public record InputConfig(
        LayerConfig routes, LayerConfig vaults, ContentsConfig contents, LayerConfig zones, FieldBookConfig fieldBook) {
    public static final InputConfig NONE =
            new InputConfig(LayerConfig.NONE, LayerConfig.NONE, ContentsConfig.NONE, LayerConfig.NONE);

    /** Inputs without a field book. */
    public InputConfig(LayerConfig routes, LayerConfig vaults, ContentsConfig contents, LayerConfig zones) {
        this(routes, vaults, contents, zones, FieldBookConfig.NONE);
    }

    /** Returns the same inputs read from other files, each made of the file that is named here. */
    public InputConfig withFiles(UnaryOperator<Path> other) {
        return new InputConfig(
                routes.withFiles(other),
                vaults.withFiles(other),
                contents.withFiles(other),
                zones.withFiles(other),
                fieldBook.withFiles(other));
    }

    public InputConfig withRoutes(LayerConfig other) {
        return new InputConfig(other, vaults, contents, zones, fieldBook);
    }

    public InputConfig withVaults(LayerConfig other) {
        return new InputConfig(routes, other, contents, zones, fieldBook);
    }

    public InputConfig withContents(ContentsConfig other) {
        return new InputConfig(routes, vaults, other, zones, fieldBook);
    }

    public InputConfig withZones(LayerConfig other) {
        return new InputConfig(routes, vaults, contents, other, fieldBook);
    }

    public InputConfig withFieldBook(FieldBookConfig other) {
        return new InputConfig(routes, vaults, contents, zones, other);
    }
}

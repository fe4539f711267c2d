package org.spanroom.config;

import java.nio.file.Path;
import java.util.function.UnaryOperator;

/**
 * What is read.
 *
 * @param zones areas in which work needs permits, or is not allowed
 */
public record InputConfig(LayerConfig routes, LayerConfig vaults, ContentsConfig contents, LayerConfig zones) {
    public static final InputConfig NONE =
            new InputConfig(LayerConfig.NONE, LayerConfig.NONE, ContentsConfig.NONE, LayerConfig.NONE);

    /** Returns the same inputs read from other files, each made of the file that is named here. */
    public InputConfig withFiles(UnaryOperator<Path> other) {
        return new InputConfig(
                routes.withFiles(other), vaults.withFiles(other), contents.withFiles(other), zones.withFiles(other));
    }

    public InputConfig withRoutes(LayerConfig other) {
        return new InputConfig(other, vaults, contents, zones);
    }

    public InputConfig withVaults(LayerConfig other) {
        return new InputConfig(routes, other, contents, zones);
    }

    public InputConfig withContents(ContentsConfig other) {
        return new InputConfig(routes, vaults, other, zones);
    }

    public InputConfig withZones(LayerConfig other) {
        return new InputConfig(routes, vaults, contents, other);
    }
}

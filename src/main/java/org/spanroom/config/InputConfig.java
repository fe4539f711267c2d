package org.spanroom.config;

/** What is read. */
public record InputConfig(LayerConfig routes, LayerConfig vaults, ContentsConfig contents) {
    public static final InputConfig NONE = new InputConfig(LayerConfig.NONE, LayerConfig.NONE, ContentsConfig.NONE);

    public InputConfig withRoutes(LayerConfig other) {
        return new InputConfig(other, vaults, contents);
    }

    public InputConfig withVaults(LayerConfig other) {
        return new InputConfig(routes, other, contents);
    }

    public InputConfig withContents(ContentsConfig other) {
        return new InputConfig(routes, vaults, other);
    }
}

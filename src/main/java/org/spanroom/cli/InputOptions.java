package org.spanroom.cli;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.FieldBookConfig;
import org.spanroom.config.InputConfig;
import org.spanroom.config.InputFiles;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.InputException;
import org.spanroom.finding.UsageException;
import picocli.CommandLine.Option;

/** The options that say what is read; what is not given here stands in the config. */
final class InputOptions {
    @Option(
            names = "--config",
            paramLabel = "FILE",
            description =
                    "Config in YAML: inputs, field map, limits. What it leaves out has the shipped values. Paths in it are relative to it.")
    @Nullable
    Path config;

    @Option(
            names = "--routes",
            paramLabel = "FILE",
            description = {
                "Duct routes (lines): GeoJSON, Shapefile or GeoPackage. May be given several times. With --routes,"
                        + " --vaults or --zones, layer, crs and axis_order of the files in the config do not apply."
            })
    @Nullable
    List<Path> routes;

    @Option(
            names = "--routes-layer",
            paramLabel = "NAME",
            description = "Layer of the routes, if the file has several.")
    @Nullable
    String routesLayer;

    @Option(
            names = "--vaults",
            paramLabel = "FILE",
            description = "Vaults (points or outlines), in the same formats. May be given several times.")
    @Nullable
    List<Path> vaults;

    @Option(
            names = "--vaults-layer",
            paramLabel = "NAME",
            description = "Layer of the vaults, if the file has several.")
    @Nullable
    String vaultsLayer;

    @Option(
            names = "--contents",
            paramLabel = "FILE",
            description = "Table of the contents of each duct (CSV). Optional.")
    @Nullable
    Path contents;

    @Option(
            names = "--zones",
            paramLabel = "FILE",
            description = "Permit zones (polygons), in the same formats. Optional; may be given several times.")
    @Nullable
    List<Path> zones;

    @Option(names = "--zones-layer", paramLabel = "NAME", description = "Layer of the zones, if the file has several.")
    @Nullable
    String zonesLayer;

    @Option(
            names = "--field-book",
            paramLabel = "FILE",
            description = "Field book: what crews reported, as closeout keeps it (CSV). Optional.")
    @Nullable
    Path fieldBook;

    @Option(
            names = "--as-of",
            paramLabel = "DAY",
            description = "Use only what the field book has up to this day, such as 2027-03-31.")
    @Nullable
    String asOf;

    @Option(
            names = "--crs",
            paramLabel = "CRS",
            description = "Reference system of all layers, such as EPSG:2263, if the files state none or a wrong one.")
    @Nullable
    String crs;

    /** Returns the config as these options override it. */
    RunConfig apply() {
        RunConfig base = config == null ? ShippedConfig.get() : ConfigReader.read(config);
        demandContent(base);
        // Only for a config that can be used: the end of the program waits for it.
        ReferenceSystem.beginToOpenDataset();
        InputConfig inputs = base.inputs();
        inputs = inputs.withRoutes(layer(inputs.routes(), routes, routesLayer));
        inputs = inputs.withVaults(layer(inputs.vaults(), vaults, vaultsLayer));
        inputs = inputs.withZones(layer(inputs.zones(), zones, zonesLayer));
        if (contents != null) {
            inputs = inputs.withContents(inputs.contents().withFile(contents));
        }
        return base.withInputs(inputs.withFieldBook(book(inputs.fieldBook())));
    }

    /** Without this, the message would be of the routes and not of the file that the user took for a config. */
    private void demandContent(RunConfig base) {
        if (config != null && routes == null && vaults == null && base.equals(ShippedConfig.get())) {
            throw new InputException(
                    config,
                    "the config is empty: it sets nothing and names no inputs",
                    "Name files at inputs.routes.file and inputs.vaults.file, or with --routes and --vaults.");
        }
    }

    private FieldBookConfig book(FieldBookConfig base) {
        FieldBookConfig book = fieldBook == null ? base : base.withFile(fieldBook);
        if (asOf == null) {
            return book;
        }
        if (book.file().isEmpty()) {
            throw new UsageException(
                    "--as-of needs a field book; name one with --field-book or at inputs.field_book.file in the config");
        }
        return book.withAsOf(DayOption.of("--as-of", asOf));
    }

    private LayerConfig layer(LayerConfig base, @Nullable List<Path> files, @Nullable String layerName) {
        LayerConfig layer = base;
        if (files != null) {
            layer = base.withOtherFiles(new InputFiles(files));
        }
        if (layerName != null) {
            layer = layer.withLayer(layerName);
        }
        return crs == null ? layer : layer.withCrs(crs);
    }
}

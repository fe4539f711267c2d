package org.spanroom.sample;

import java.nio.file.Path;
import org.spanroom.output.geopackage.GeoPackageWriter;
import org.spanroom.output.table.RowWriter;
import org.spanroom.output.text.CsvWriter;
import org.spanroom.output.text.GeoJsonWriter;

/** The files of one city, written as features come. */
final class CityFiles implements CitySink, AutoCloseable {
    private final CityLayers layers;
    private final RowWriter<ListedItem> contents;
    private final RowWriter<KnownFault> faults;
    private final RowWriter<StreetFeature> streets;
    private final GeoPackageWriter zonesFile;
    private final RowWriter<ZoneFeature> zones;

    /** Opens the two tables, the zones and the streets beside the layers, which it closes in the end. */
    CityFiles(Path folder, CityLayers layers, boolean zonesInFeet) {
        this.layers = layers;
        contents = new CsvWriter<>(folder.resolve("contents.csv"), CityTables.contents());
        zonesFile = CityLayers.ofZones(folder.resolve("zones.gpkg"), zonesInFeet);
        zones = zonesFile.layer(CityTables.zones());
        streets = new GeoJsonWriter<>(folder.resolve(DemoCity.STREETS), CityTables.streets());
        faults = new CsvWriter<>(folder.resolve("known-faults.csv"), CityTables.faults());
    }

    @Override
    public void route(RouteFeature route) {
        layers.routes().write(route);
    }

    @Override
    public void vault(VaultFeature vault) {
        layers.vaults().write(vault);
    }

    @Override
    public void contents(ListedItem row) {
        contents.write(row);
    }

    @Override
    public void zone(ZoneFeature zone) {
        zones.write(zone);
    }

    @Override
    public void street(StreetFeature street) {
        streets.write(street);
    }

    @Override
    public void fault(KnownFault fault) {
        faults.write(fault);
    }

    @Override
    public void close() {
        try (contents;
                faults;
                streets;
                zonesFile;
                zones) {
            layers.close();
        }
    }
}

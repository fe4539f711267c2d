package org.spanroom.sample;

import java.nio.file.Path;
import java.util.List;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Table;
import org.spanroom.output.text.GeoJsonWriter;

/**
 * A small town as another owner would hand it over: other names of fields, and nothing recorded of what is in the ducts. Streets, sizes
 * and faults are those of a city of its own.
 */
final class OldTown implements CitySink, AutoCloseable {
    static final String ROUTES = "oldtown";
    static final String VAULTS = "oldtown_vaults";

    private static final int SPANS = 160;
    private static final long SEED = 9;

    private final GeoJsonWriter<RouteFeature> routes;
    private final GeoJsonWriter<VaultFeature> vaults;

    private OldTown(Path folder) {
        routes = new GeoJsonWriter<>(folder.resolve(ROUTES + ".geojson"), routeTable());
        vaults = new GeoJsonWriter<>(folder.resolve(VAULTS + ".geojson"), vaultTable());
    }

    /** Writes both layers into a folder. */
    static void write(Path folder) {
        try (var town = new OldTown(folder)) {
            new CityBuilder(SPANS, SEED, town).build();
        }
    }

    private static Table<RouteFeature> routeTable() {
        return Table.layer(
                ROUTES,
                "conduits of a town that does not record contents",
                GeometryKind.MULTILINE,
                RouteFeature::shape,
                List.of(
                        column("conduit_id", "conduit_id", RouteField.DUCT_ID),
                        Column.real(
                                "diam_in",
                                "diam_in",
                                3,
                                RouteField.BORE_IN.meaning(),
                                route -> route.attributes().find(RouteField.BORE_IN)),
                        column("conduit_type", "type", RouteField.DUCT_TYPE),
                        Column.integer(
                                "install_yr",
                                "install_yr",
                                RouteField.YEAR.meaning(),
                                route -> route.attributes().find(RouteField.YEAR)),
                        column("owned_by", "owned_by", RouteField.OWNER),
                        column("from_mh", "from_mh", RouteField.VAULT_A),
                        column("to_mh", "to_mh", RouteField.VAULT_B)));
    }

    private static Column<RouteFeature> column(String name, String shortName, RouteField field) {
        return Column.text(
                name, shortName, field.meaning(), route -> route.attributes().find(field));
    }

    private static Table<VaultFeature> vaultTable() {
        return Table.layer(
                VAULTS,
                "manholes of that town",
                GeometryKind.POINT,
                VaultFeature::shape,
                List.of(
                        Column.text("mh_id", "mh_id", "name of the manhole", VaultFeature::id),
                        Column.text("mh_type", "mh_type", "manhole, handhole, vault or pull box", VaultFeature::kind),
                        Column.text(
                                "cover_surface",
                                "cover_surf",
                                "surface around the cover",
                                vault -> vault.fittings().surface())));
    }

    @Override
    public void route(RouteFeature route) {
        routes.write(route);
    }

    @Override
    public void vault(VaultFeature vault) {
        vaults.write(vault);
    }

    @Override
    public void contents(ListedItem row) {
        // This town lists none.
    }

    @Override
    public void zone(ZoneFeature zone) {
        // Nor permit zones.
    }

    @Override
    public void street(StreetFeature street) {
        // Nor streets.
    }

    @Override
    public void fault(KnownFault fault) {
        // Its faults are for its owner to find.
    }

    @Override
    public void close() {
        try (routes;
                vaults) {
            // There is only closing to do.
        }
    }
}

package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Table;

/** The layers and tables that the city is written as. */
final class CityTables {
    private CityTables() {}

    static Table<RouteFeature> routes(String name) {
        return Table.layer(
                name,
                "drawn lines, one per duct",
                GeometryKind.MULTILINE,
                RouteFeature::shape,
                Stream.of(RouteField.values()).map(RouteField::column).toList());
    }

    static Table<VaultFeature> vaults(String name) {
        return Table.layer(
                name,
                "places where ducts are accessible",
                GeometryKind.POINT,
                VaultFeature::shape,
                Stream.of(vaultColumns(), crewColumns()).flatMap(List::stream).toList());
    }

    private static List<Column<VaultFeature>> vaultColumns() {
        return List.of(
                Column.text("vault_id", "vault_id", "name of the vault", VaultFeature::id),
                Column.text("kind", "kind", "maintenance hole, handhole, vault or pull box", VaultFeature::kind),
                Column.real("elev_m", "elev_m", 2, "elevation of the cover in meters", VaultFeature::elevationM),
                Column.text(
                        "volume",
                        "volume",
                        "air volume, in m3 or with its unit",
                        vault -> vault.fittings().volume()),
                Column.text(
                        "water",
                        "water",
                        "whether it has standing water",
                        vault -> vault.fittings().water()),
                Column.text(
                        "surface",
                        "surface",
                        "surface around the cover",
                        vault -> vault.fittings().surface()),
                Column.text(
                        "hold",
                        "hold",
                        "whether a live cable can be restrained there",
                        vault -> vault.fittings().hold()),
                Column.integer(
                        "slack_ft",
                        "slack_ft",
                        "cable slack stored in it, in feet",
                        vault -> vault.fittings().slackFt()));
    }

    private static List<Column<VaultFeature>> crewColumns() {
        return List.of(
                Column.real(
                        "depth_ft",
                        "depth_ft",
                        1,
                        "depth from the cover to the floor, in feet",
                        crew(CrewFacts::depthFt)),
                Column.real("in_len_ft", "in_len_ft", 1, "inside length in feet", crew(CrewFacts::lengthFt)),
                Column.real("in_wid_ft", "in_wid_ft", 1, "inside width in feet", crew(CrewFacts::widthFt)),
                Column.real("in_high_ft", "in_high_ft", 1, "inside height in feet", crew(CrewFacts::heightFt)),
                Column.integer("lid_in", "lid_in", "opening under the cover, in inches", crew(CrewFacts::coverIn)),
                Column.text("gas", "gas", "whether gas was found in it", crew(CrewFacts::gas)),
                Column.text("power", "power", "whether power cables share it", crew(CrewFacts::power)),
                Column.text("inspected", "inspected", "day of its last inspection", crew(CrewFacts::inspected)));
    }

    private static <T> Function<VaultFeature, T> crew(Function<CrewFacts, T> cell) {
        return vault -> cell.apply(vault.fittings().crew());
    }

    static Table<ZoneFeature> zones() {
        return Table.layer(
                "zones",
                "areas where work needs permits or is restricted",
                GeometryKind.POLYGON,
                ZoneFeature::shape,
                List.of(
                        Column.text("zone_id", "zone_id", "name of the zone", ZoneFeature::id),
                        Column.text("zone_type", "zone_type", "kind of restriction", ZoneFeature::type),
                        Column.text("title", "title", "common name", ZoneFeature::title),
                        Column.text("until", "until", "last day of the restriction", ZoneFeature::until),
                        Column.text("starts", "starts", "first day of the restriction", ZoneFeature::starts)));
    }

    static Table<StreetFeature> streets() {
        return Table.layer(
                "streets",
                "center lines of streets",
                GeometryKind.LINE,
                StreetFeature::shape,
                List.of(
                        Column.text("name", "name", "name of the street", StreetFeature::name),
                        Column.text("rank", "rank", "main, side or link", StreetFeature::rank)));
    }

    static Table<ListedItem> contents() {
        var columns = new ArrayList<>(itemColumns());
        columns.addAll(noteColumns());
        return Table.plain("contents", "innerducts, cables and sleeves of ducts with mixed contents", columns);
    }

    private static List<Column<ListedItem>> itemColumns() {
        return List.of(
                Column.text("duct", "duct", "duct_id of the duct", ListedItem::duct),
                Column.text("item", "item", "name of the item in its duct", ListedItem::item),
                Column.text("kind", "kind", "innerduct, cable or sleeve", ListedItem::kind),
                Column.text("inside", "inside", "the innerduct or sleeve that contains the cable", ListedItem::inside),
                Column.real("outside_diameter", "od", 3, "in inches", ListedItem::outsideIn),
                Column.real(
                        "sdr",
                        "sdr",
                        1,
                        "outside diameter over wall",
                        row -> row.sizes().sdr()),
                Column.real(
                        "wall", "wall", 3, "wall in inches", row -> row.sizes().wallIn()));
    }

    private static List<Column<ListedItem>> noteColumns() {
        return List.of(
                Column.real("mass", "mass", 1, "pounds per 1000 feet", ListedItem::massLbKft),
                Column.text("in_service", "in_service", "live, dead or unknown", ListedItem::service),
                Column.text("catalog", "catalog", "catalog row instead of sizes", ListedItem::catalog),
                Column.text("may_move", "may_move", "no: the cable must not be moved", ListedItem::mayMove),
                Column.integer(
                        "cells",
                        "cells",
                        "cells of a sleeve",
                        row -> row.cells().map(ListedItem.Cells::all)),
                Column.integer(
                        "reserved",
                        "reserved",
                        "number of its free cells that are promised",
                        row -> row.cells().map(ListedItem.Cells::reserved)),
                Column.text(
                        "color",
                        "color",
                        "color of an innerduct",
                        row -> row.notes().color()),
                Column.text("tag", "tag", "tag of a cable", row -> row.notes().tag()),
                Column.text(
                        "continuous_at_a",
                        "cont_at_a",
                        "whether an innerduct runs uncut through the vault where its duct begins",
                        row -> row.notes().uncutAtA()),
                Column.text(
                        "continuous_at_b",
                        "cont_at_b",
                        "whether it does so where its duct ends",
                        row -> row.notes().uncutAtB()));
    }

    static Table<KnownFault> faults() {
        return Table.plain(
                "known-faults",
                "faults that were added to the data on purpose",
                List.of(
                        Column.text(
                                "fault",
                                "fault",
                                "kind of fault",
                                known -> known.fault().key()),
                        Column.text("layer", "layer", "ducts, vaults, contents or zones", KnownFault::layer),
                        Column.text("feature", "feature", "duct_id, vault_id or zone_id", KnownFault::feature),
                        Column.text("detail", "detail", "description", KnownFault::detail)));
    }
}

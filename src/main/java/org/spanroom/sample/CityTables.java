package org.spanroom.sample;

import java.util.List;
import java.util.stream.Stream;
import org.spanroom.output.Column;
import org.spanroom.output.GeometryKind;
import org.spanroom.output.Table;

/** The layers and tables that the city is written as. */
final class CityTables {
    private CityTables() {}

    static Table<RouteFeature> routes(String name) {
        return Table.layer(
                name,
                "drawn lines, one for each duct",
                GeometryKind.MULTILINE,
                RouteFeature::shape,
                Stream.of(RouteField.values()).map(RouteField::column).toList());
    }

    static Table<VaultFeature> vaults(String name) {
        return Table.layer(
                name,
                "places where ducts can be opened",
                GeometryKind.POINT,
                VaultFeature::shape,
                List.of(
                        Column.text("vault_id", "vault_id", "name of the vault", VaultFeature::id),
                        Column.text(
                                "kind", "kind", "maintenance hole, handhole, vault or pull box", VaultFeature::kind),
                        Column.real("elev_m", "elev_m", 2, "height of the cover in metres", VaultFeature::elevationM)));
    }

    static Table<ContentsRow> contents() {
        return Table.plain(
                "contents",
                "innerducts and cables of ducts with mixed contents",
                List.of(
                        Column.text("duct", "duct", "duct_id of the duct", ContentsRow::duct),
                        Column.text("item", "item", "name of the item in its duct", ContentsRow::item),
                        Column.text("kind", "kind", "innerduct or cable", ContentsRow::kind),
                        Column.text("inside", "inside", "the innerduct that a cable lies in", ContentsRow::inside),
                        Column.real("outside_diameter", "od", 3, "in inches", ContentsRow::outsideIn),
                        Column.real("sdr", "sdr", 1, "outside diameter over wall", ContentsRow::sdr),
                        Column.real("wall", "wall", 3, "wall in inches", ContentsRow::wallIn),
                        Column.real("mass", "mass", 1, "pounds per 1000 feet", ContentsRow::massLbKft),
                        Column.text("in_service", "in_service", "live, dead or unknown", ContentsRow::service)));
    }

    static Table<KnownFault> faults() {
        return Table.plain(
                "known-faults",
                "faults that were put into the data on purpose",
                List.of(
                        Column.text(
                                "fault",
                                "fault",
                                "kind of fault",
                                known -> known.fault().key()),
                        Column.text("layer", "layer", "ducts, vaults or contents", KnownFault::layer),
                        Column.text("feature", "feature", "duct_id or vault_id", KnownFault::feature),
                        Column.text("detail", "detail", "what was done", KnownFault::detail)));
    }
}

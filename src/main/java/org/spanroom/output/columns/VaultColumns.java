package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.network.VaultUse;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of the vaults. */
public final class VaultColumns {
    /** Name of the column with the owner's name. */
    public static final String VAULT_ID = "vault_id";

    public static final Table<VaultUse> TABLE = Table.layer(
            "vaults",
            "One row for each vault that is used, in the order of reading; a footprint is shown by a point inside it.",
            GeometryKind.POINT,
            row -> Shape.point(row.vault().lonDeg(), row.vault().latDeg()),
            columns());

    private VaultColumns() {}

    private static List<Column<VaultUse>> columns() {
        var columns = new ArrayList<>(List.<Column<VaultUse>>of(
                Column.text(
                        VAULT_ID,
                        "vault_id",
                        "The owner's name of the vault.",
                        row -> row.vault().id()),
                Column.real(
                        "elevation_m",
                        "elev_m",
                        3,
                        "Recorded elevation.",
                        row -> row.vault().elevationM()),
                Column.integer("span_ends", "span_ends", "How many span ends lie at the vault.", VaultUse::spanCount),
                Column.flag(
                        "footprint",
                        "footprint",
                        "Whether the vault is drawn as an outline.",
                        row -> !row.vault().footprint().isEmpty()),
                Column.text(
                        "merged_vaults",
                        "merged",
                        "Other vaults at the same location that are treated as this one, joined by ;.",
                        row -> String.join(";", row.mergedIds()))));
        columns.addAll(1, VaultFactColumns.all());
        columns.addAll(PermitColumns.ofVaults());
        return columns;
    }
}

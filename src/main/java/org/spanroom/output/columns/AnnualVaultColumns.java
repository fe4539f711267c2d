package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of the vaults of an annual program: each once, with all the work at it. */
public final class AnnualVaultColumns {
    /** One row for each vault. */
    public static final Table<VaultWork> VAULTS = Table.layer(
            "program_vaults",
            "One row for each vault at which the program has work, in the order in which the work comes to them.",
            GeometryKind.POINT,
            AnnualVaultColumns::point,
            columns());

    private AnnualVaultColumns() {}

    private static List<Column<VaultWork>> columns() {
        var columns = new ArrayList<Column<VaultWork>>(List.of(
                Column.text("vault", "vault", "Name of the vault.", VaultWork::vaultId),
                Column.integer(
                        "visits",
                        "visits",
                        "In how many weeks crews work at it; each crew counts by itself.",
                        VaultWork::visits),
                Column.integer(
                        "spans",
                        "spans",
                        "How many spans that end at it are recovered.",
                        row -> row.items().size()),
                Column.text("first_day", "first_day", "Day of the first shift at it.", VaultWork::firstDay),
                Column.text("last_day", "last_day", "Day of the last shift at it.", VaultWork::lastDay),
                Column.text(
                        "weeks",
                        "weeks",
                        "Mondays of the weeks with work at it, as year-month-day, joined by ;.",
                        row -> joined(row.weeks())),
                Column.text("crews", "crews", "Crews that work at it, joined by ;.", row -> joined(row.crews())),
                Column.text(
                        "years",
                        "years",
                        "Years of the program with work at it, from 1, joined by ;.",
                        row -> joined(row.years().stream().map(year -> year + 1).toList()))));
        VaultFactColumns.all()
                .forEach(column -> columns.add(
                        column.with(row -> Optional.ofNullable(row.facts().get(column.name())))));
        return columns;
    }

    private static Shape point(VaultWork row) {
        return row.place()
                .filter(place -> Double.isFinite(place.lonDeg()) && Double.isFinite(place.latDeg()))
                .map(place -> Shape.point(place.lonDeg(), place.latDeg()))
                .orElse(Shape.EMPTY);
    }

    private static String joined(List<?> parts) {
        return parts.stream().map(Object::toString).collect(Collectors.joining(";"));
    }
}

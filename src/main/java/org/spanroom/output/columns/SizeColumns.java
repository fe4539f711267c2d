package org.spanroom.output.columns;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.model.Term;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.SizeSource;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of a span that say where the sizes of its duct and contents are from. */
final class SizeColumns {
    private static final String WORDS = ": recorded (as a size), catalog (a row that the data names) or assumed"
            + " (the configured default); if there are several, the least certain.";

    private SizeColumns() {}

    static List<Column<RankedSpan>> all() {
        return List.of(
                Column.text(
                        "inside_diameter_source",
                        "inside_src",
                        CellRange.oneOf(Stream.of(SizeSource.values()).map(SizeSource::key)),
                        "Where the inside diameter is from" + WORDS,
                        duct(duct -> duct.sizeSource(Term.INSIDE_DIAMETER).key())),
                Column.text(
                        "innerduct_diameter_source",
                        "innerd_src",
                        CellRange.oneOf(Stream.of(SizeSource.values()).map(SizeSource::key)),
                        "The same for the innerducts' outside diameter; empty without innerducts.",
                        innerducts(Term.INNERDUCT_OUTSIDE_DIAMETER)),
                Column.text(
                        "innerduct_wall_source",
                        "wall_src",
                        CellRange.oneOf(Stream.of(SizeSource.values()).map(SizeSource::key)),
                        "The same for their wall, recorded directly or calculated from the SDR.",
                        innerducts(Term.INNERDUCT_WALL, Term.INNERDUCT_SDR)),
                Column.text(
                        "cable_diameter_source",
                        "cable_src",
                        CellRange.oneOf(Stream.of(SizeSource.values()).map(SizeSource::key)),
                        "The same for the cables' outside diameter; empty without cables.",
                        cables(Term.CABLE_OUTSIDE_DIAMETER)),
                Column.text(
                        "cable_mass_source",
                        "mass_src",
                        CellRange.oneOf(Stream.of(SizeSource.values()).map(SizeSource::key)),
                        "The same for the cables' mass.",
                        cables(Term.CABLE_MASS)),
                Column.text(
                        "catalog_rows",
                        "cat_rows",
                        "The rows of the catalog that sizes were taken from, joined by ;.",
                        duct(duct -> String.join(";", duct.catalogUse().rows()))));
    }

    private static Function<RankedSpan, Object> innerducts(Term... terms) {
        return ifAny(contents -> !contents.innerducts().isEmpty(), terms);
    }

    private static Function<RankedSpan, Object> cables(Term... terms) {
        return ifAny(contents -> !contents.cables().isEmpty(), terms);
    }

    private static Function<RankedSpan, Object> ifAny(Function<Contents, Boolean> holds, Term... terms) {
        return duct(
                duct -> holds.apply(duct.contents()) ? duct.sizeSource(terms).key() : "");
    }

    private static Function<RankedSpan, Object> duct(Function<Duct, Object> cell) {
        return row -> cell.apply(row.span().duct());
    }
}

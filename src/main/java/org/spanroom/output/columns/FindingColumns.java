package org.spanroom.output.columns;

import java.util.List;
import java.util.Locale;
import org.spanroom.finding.Finding;
import org.spanroom.finding.Place;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of the findings. */
public final class FindingColumns {
    public static final Column<Finding> CODE = Column.text(
            "code", "code", "Kind of problem, as a key.", row -> row.code().key());

    public static final Column<Finding> SEVERITY = Column.text(
            "severity",
            "severity",
            "rejected: not in the results; suspect: in them, but doubtful; note: nothing to fix.",
            row -> row.code().severity().name().toLowerCase(Locale.ROOT));

    public static final Column<Finding> COUNT = Column.integer(
            "problem_count",
            "problems",
            "How many problems of the same kind the row represents: more than 1 where there are too many to list.",
            Finding::count);

    public static final Table<Finding> TABLE = Table.layer(
            "findings",
            "One row for each problem of the data, by kind, then source and feature.",
            GeometryKind.POINT,
            row -> row.place()
                    .map(place -> Shape.point(place.lonDeg(), place.latDeg()))
                    .orElse(Shape.EMPTY),
            List.of(
                    CODE,
                    SEVERITY,
                    Column.text(
                            "meaning",
                            "meaning",
                            "What the kind of problem means.",
                            row -> row.code().meaning()),
                    Column.text(
                            "source",
                            "source",
                            "File, or file and layer, that the feature came from.",
                            Finding::source),
                    Column.text(
                            "feature",
                            "feature",
                            "The owner's name of the feature, or its number in the file.",
                            Finding::featureId),
                    Column.text("field", "field", "The source field or term concerned.", Finding::field),
                    Column.text("detail", "detail", "What was found and what was expected.", Finding::detail),
                    COUNT,
                    Column.real(
                            "lost_length_m",
                            "lost_m",
                            3,
                            "Drawn length that is not assigned to a span because of the problem; 0 if none.",
                            Finding::lengthM),
                    Column.real(
                            "lon_deg",
                            "lon_deg",
                            9,
                            "Longitude of the place on WGS 84.",
                            row -> row.place().map(Place::lonDeg)),
                    Column.real(
                            "lat_deg",
                            "lat_deg",
                            9,
                            "Latitude of the place on WGS 84.",
                            row -> row.place().map(Place::latDeg))));

    private FindingColumns() {}
}

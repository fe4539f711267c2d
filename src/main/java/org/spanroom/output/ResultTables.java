package org.spanroom.output;

import static org.spanroom.model.OutputFormat.CSV;
import static org.spanroom.model.OutputFormat.GEOJSON;
import static org.spanroom.model.OutputFormat.SHAPEFILE;

import java.util.List;
import org.spanroom.finding.Finding;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.columns.BendColumns;
import org.spanroom.output.columns.BendRow;
import org.spanroom.output.columns.ChoiceRow;
import org.spanroom.output.columns.CostItemRow;
import org.spanroom.output.columns.FieldCheckColumns;
import org.spanroom.output.columns.FindingColumns;
import org.spanroom.output.columns.PermitRow;
import org.spanroom.output.columns.PullRow;
import org.spanroom.output.columns.ScenarioColumns;
import org.spanroom.output.columns.ScorePartRow;
import org.spanroom.output.columns.SectionColumns;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.StepHoursRow;
import org.spanroom.output.columns.SurveyColumns;
import org.spanroom.output.columns.VaultColumns;
import org.spanroom.output.columns.ZoneColumns;
import org.spanroom.output.columns.ZoneMetersRow;

/** The tables of results: the one list that writers, the data dictionary, the record of a run and readers of earlier runs follow. */
public final class ResultTables {
    public static final ResultTable<RankedSpan> SPANS =
            ResultTable.spans(SpanColumns.NAME, SpanColumns::table).alsoIn(CSV, GEOJSON, SHAPEFILE);

    static final ResultTable<RankedSection> SECTIONS = ResultTable.ofRun(
                    SectionColumns.NAME, SectionColumns::table, Results::sections)
            .alsoIn(CSV, GEOJSON, SHAPEFILE);

    static final ResultTable<ScorePartRow> SCORE_PARTS = ResultTable.ofSpans(ScorePartRow.TABLE, ScorePartRow::of)
            .alsoIn(CSV)
            .in(ColumnGroup.SCORE);

    static final ResultTable<Finding> FINDINGS = ResultTable.ofRun(FindingColumns.TABLE, Results::findings)
            .alsoIn(CSV)
            .written();

    /** In the order in which they stand in a GeoPackage and in the data dictionary. */
    public static final List<ResultTable<?>> ALL = List.of(
            SPANS,
            SECTIONS,
            ResultTable.ofRun(VaultColumns.TABLE, results -> results.network().vaults()),
            ResultTable.ofSpans(BendColumns.TABLE, BendRow::of).in(ColumnGroup.PULL),
            ResultTable.ofSpans(PermitRow.TABLE, PermitRow::of)
                    .alsoIn(CSV, GEOJSON)
                    .in(ColumnGroup.PERMITS),
            SCORE_PARTS,
            ResultTable.ofSpans(ChoiceRow.TABLE, ChoiceRow::of).alsoIn(CSV).in(ColumnGroup.ROOM),
            ResultTable.ofSpans(PullRow.TABLE, PullRow::of).alsoIn(CSV).in(ColumnGroup.PULL),
            ResultTable.ofRun(ZoneColumns.TABLE, Results::zones).alsoIn(GEOJSON),
            ResultTable.ofSpans(ZoneMetersRow.TABLE, ZoneMetersRow::of)
                    .alsoIn(CSV)
                    .in(ColumnGroup.PERMITS),
            ResultTable.ofSpans(StepHoursRow.TABLE, StepHoursRow::of)
                    .alsoIn(CSV)
                    .in(ColumnGroup.EFFORT),
            ResultTable.ofSpans(CostItemRow.TABLE, CostItemRow::of).alsoIn(CSV).in(ColumnGroup.MONEY),
            FINDINGS,
            ResultTable.ofRun(FieldCheckColumns.TABLE, Results::fieldChecks)
                    .alsoIn(CSV)
                    .scored(),
            ResultTable.ofRun(
                            ScenarioColumns.TABLE, results -> results.contents().scenarios())
                    .alsoIn(CSV)
                    .scored(),
            ResultTable.ofRun(SurveyColumns.TABLE, Results::survey).alsoIn(CSV));

    private ResultTables() {}
}

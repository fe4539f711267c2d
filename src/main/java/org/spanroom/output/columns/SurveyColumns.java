package org.spanroom.output.columns;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.spanroom.model.rank.Unknown;
import org.spanroom.model.survey.StratumEstimate;
import org.spanroom.model.survey.SurveyStop;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of the vaults to open first. */
public final class SurveyColumns {
    public static final Table<SurveyStop> TABLE = Table.layer(
            "vault_survey",
            "One row for each vault to open first, in order, to survey ducts whose contents are not recorded or "
                    + "were assumed; no "
                    + "row where everything is recorded.",
            GeometryKind.POINT,
            row -> Shape.point(row.vault().lonDeg(), row.vault().latDeg()),
            List.of(
                    Column.integer("visit", "visit", "Its place in the order, 1 for the first.", SurveyStop::order),
                    Column.text(
                            "vault",
                            "vault",
                            "The vault to open.",
                            row -> row.vault().id()),
                    Column.text(
                            "kind",
                            "kind",
                            "Its recorded kind.",
                            row -> row.vault().kind()),
                    Column.flag(
                            "in_roadway",
                            "in_roadway",
                            "Whether its cover is in the roadway, or its surface is not recorded.",
                            SurveyStop::inRoadway),
                    Column.integer(
                            "ducts_shown",
                            "ducts_n",
                            "How many ducts of unrecorded contents enter it.",
                            row -> row.ducts().size()),
                    Column.text("ducts", "ducts", "These ducts, joined by ;.", row -> String.join(";", row.ducts())),
                    Column.integer(
                            "spans_shown",
                            "spans_n",
                            "How many spans of unrecorded contents it shows that no earlier visit has shown.",
                            SurveyStop::spansShown),
                    Column.real(
                            "spans_seen_pct",
                            "seen_pct",
                            1,
                            "Share of all spans of unrecorded contents that have been seen after this visit.",
                            row -> 100 * row.coverRatio()),
                    Column.integer(
                            "strata_shown",
                            "strata_n",
                            "How many strata it represents: spans of one decade, duct type and owner, where recorded.",
                            row -> row.estimates().size()),
                    Column.text(
                            "main_stratum",
                            "stratum",
                            "The stratum of which it shows the most spans.",
                            row -> row.estimates().stream()
                                    .map(StratumEstimate::stratum)
                                    .findFirst()),
                    Column.real(
                            "margin_pct",
                            "margin_pct",
                            1,
                            "Margin of error in that stratum after this visit, for a share such as that of the "
                                    + "spans that gain room: plus or minus, with 95 percent confidence.",
                            row -> row.estimates().stream()
                                    .map(found -> 100 * found.marginRatio())
                                    .findFirst()),
                    Column.text(
                            "strata",
                            "strata",
                            "Every stratum that it represents, with spans seen so far, total spans and margin, "
                                    + "joined by ;.",
                            row -> row.estimates().stream()
                                    .map(SurveyColumns::words)
                                    .collect(Collectors.joining("; "))),
                    Column.text("look_at", "look_at", "What to do there.", row -> Unknown.CONTENTS.whatToLookAt()),
                    Column.text(
                            "cautions",
                            "cautions",
                            "Cautions for the crew at this vault, joined by ;.",
                            row -> String.join("; ", row.cautions()))));

    private SurveyColumns() {}

    private static String words(StratumEstimate found) {
        return String.format(
                Locale.ROOT,
                "%s: %d of %d seen, +/- %.0f %%",
                found.stratum(),
                found.seen(),
                found.spans(),
                100 * found.marginRatio());
    }
}

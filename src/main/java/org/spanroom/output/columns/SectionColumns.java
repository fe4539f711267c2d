package org.spanroom.output.columns;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of the sections. */
public final class SectionColumns {
    public static final String NAME = "sections";

    private static final Table<RankedSection> TABLE = Table.layer(
            NAME,
            "One row for each section: the spans of one bank between the same two vaults, in the order of their "
                    + "best spans; those "
                    + "without a ranked span last, by section_id. A duct without a recorded bank is a section "
                    + "of its own.",
            GeometryKind.LINE,
            row -> row.first().lonLat().map(Shape::line).orElse(Shape.EMPTY),
            List.of(
                    Column.text(
                            "section_id",
                            "section_id",
                            "Name of the section, the same in every run on the same data: bank and the two "
                                    + "vaults in the order of "
                                    + "their ids, joined by :; without a recorded bank, : and the duct replace it.",
                            key(SectionKey::id)),
                    Column.integer(
                            "section_rank",
                            "sect_rank",
                            "Place among the sections by the best span of each, 1 for the best; empty if no "
                                    + "span of it is ranked.",
                            RankedSection::rank),
                    Column.text("bank_id", "bank_id", "The bank of its ducts.", key(SectionKey::bankId)),
                    Column.text(
                            "vault_a",
                            "vault_a",
                            "The vault where the section's line begins: that of its best span.",
                            section -> section.first().vaultA()),
                    Column.text(
                            "vault_b",
                            "vault_b",
                            "The vault where that line ends.",
                            section -> section.first().vaultB()),
                    Column.integer(
                            "spans",
                            "spans",
                            "How many spans it has, one for each duct.",
                            counts(RankedSection.Counts::spans)),
                    Column.integer(
                            "spans_ranked",
                            "ranked",
                            "How many of them are ranked.",
                            counts(RankedSection.Counts::ranked)),
                    Column.integer(
                            "spans_excluded", "excluded", "How many are not.", counts(RankedSection.Counts::excluded)),
                    Column.integer(
                            "spans_spare",
                            "spare",
                            "How many are spare ducts: recorded as empty and sound, not refused by their owner.",
                            counts(RankedSection.Counts::spare)),
                    Column.integer(
                            "positions_now",
                            "pos_now",
                            "Positions now, of all its spans together; a span of unknown contents adds none.",
                            counts(RankedSection.Counts::positionsNow)),
                    Column.integer(
                            "positions_after",
                            "pos_after",
                            "Positions after its ranked spans are recovered, of all its spans together; excluded spans keep "
                                    + "those of today.",
                            counts(RankedSection.Counts::positionsAfter)),
                    Column.integer(
                            "positions_gained",
                            "pos_gained",
                            "Positions that recovery gains, of its ranked spans together.",
                            counts(RankedSection.Counts::positionsGained)),
                    Column.integer(
                            "spans_contents_assumed",
                            "cont_assum",
                            "How many of its ranked spans are based on an assumed count of innerducts or cables.",
                            counts(RankedSection.Counts::contentsAssumed)),
                    Column.text(
                            "best_span",
                            "best_span",
                            "Its best span; empty if none is ranked.",
                            best(RankedSection.First::spanId)),
                    Column.integer(
                            "best_rank",
                            "best_rank",
                            "Rank of that span among all spans.",
                            best(RankedSection.First::rank)),
                    Column.real(
                            "best_score_points",
                            "best_pts",
                            2,
                            "Score of that span out of 100.",
                            best(RankedSection.First::scorePoints)),
                    Column.real(
                            "best_length_m",
                            "best_len_m",
                            3,
                            "Length of that span, as used in the calculation.",
                            best(RankedSection.First::lengthM)),
                    Column.integer(
                            "best_cautions",
                            "best_caut",
                            "How many cautions that span has; the spans table says which.",
                            best(RankedSection.First::cautions))));

    private SectionColumns() {}

    /** Returns the layer of a run. Its shapes are the lines of the best spans or, where none is ranked, of the first ones by id. */
    public static Table<RankedSection> table(SpanLayout run) {
        return run.hasElevations() ? TABLE.withZ() : TABLE;
    }

    private static Function<RankedSection, Object> key(Function<SectionKey, Object> cell) {
        return row -> cell.apply(row.key());
    }

    private static Function<RankedSection, Object> counts(Function<RankedSection.Counts, Object> cell) {
        return row -> cell.apply(row.counts());
    }

    private static Function<RankedSection, Object> best(Function<RankedSection.First, Object> cell) {
        return row -> row.rank().isPresent() ? cell.apply(row.first()) : Optional.empty();
    }
}

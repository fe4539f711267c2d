package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.spanroom.model.Line;
import org.spanroom.model.program.Corridor;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.SectionNeed;
import org.spanroom.model.program.Way;
import org.spanroom.model.program.WayStep;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of what {@code corridors} finds: one row for each corridor, and one for each section of the network. */
public final class CorridorColumns {
    /** One row for each corridor. */
    public static final Table<CorridorRow> CORRIDORS = Table.layer(
            "corridors",
            "One row for each corridor: sections that follow one another, over which the cables can go together after recovery; the one "
                    + "that gains most for its money first.",
            GeometryKind.LINE,
            row -> joined(row.found().way()),
            List.of(
                    Column.integer(
                            "corridor",
                            "corridor",
                            "Number of the corridor; 1 gains most for its money.",
                            CorridorRow::number),
                    Column.text(
                            "vault_from",
                            "vault_from",
                            "Vault where it begins.",
                            row -> row.network().vaultId(row.steps().get(0).from())),
                    Column.text(
                            "vault_to",
                            "vault_to",
                            "Vault where it ends.",
                            row -> row.network()
                                    .vaultId(row.steps()
                                            .get(row.steps().size() - 1)
                                            .to())),
                    Column.integer(
                            "cables",
                            "cables",
                            "Cables that can go together along it.",
                            row -> row.found().way().cables()),
                    Column.real(
                            "length_m",
                            "length_m",
                            3,
                            "Length.",
                            row -> row.found().way().lengthM()),
                    Column.integer(
                            "sections",
                            "sections",
                            "How many sections it has.",
                            row -> row.steps().size()),
                    Column.integer(
                            "sections_recover",
                            "sect_recov",
                            "Sections where a duct is recovered.",
                            row -> row.found().recovered().size()),
                    Column.flag(
                            "island",
                            "island",
                            "Whether it is a single section that no other one continues.",
                            row -> row.found().isIsland()),
                    Column.integer(
                            "positions_gained",
                            "pos_gain",
                            "By how many positions its narrowest section is wider than today.",
                            row -> row.found().gainedPositions()),
                    Column.real(
                            "cost_money",
                            "cost_money",
                            2,
                            "Cost of recovery, with all rates at their values.",
                            row -> row.found().way().costs().money()),
                    Column.real(
                            "cost_low_money",
                            "cost_low",
                            2,
                            "Its low value.",
                            row -> row.found().way().costs().range().lowMoney()),
                    Column.real(
                            "cost_likely_money",
                            "cost_like",
                            2,
                            "Its likely value.",
                            row -> row.found().way().costs().range().likelyMoney()),
                    Column.real(
                            "cost_high_money",
                            "cost_high",
                            2,
                            "Its high value.",
                            row -> row.found().way().costs().range().highMoney()),
                    Column.real(
                            "site_hours",
                            "site_hours",
                            2,
                            "Hours on site, each span by itself; what a shared vault saves is not deducted.",
                            row -> row.found().way().siteHours()),
                    Column.real(
                            "position_m_per_money",
                            "pos_m_mon",
                            4,
                            "Positions gained times length for each unit of money; corridors are in the order of it.",
                            row -> row.found().metersPerMoney()),
                    Column.text(
                            "binding_section",
                            "binding",
                            "Section in whose widest duct the fewest cables can go together without new build.",
                            row -> row.found().way().binding().section().id()),
                    Column.text(
                            "spans_recover",
                            "spans_rec",
                            "Spans to recover, in order, joined by ;.",
                            row -> row.found().recovered().stream()
                                    .map(DuctOffer::spanId)
                                    .collect(Collectors.joining(";")))));

    /** One row for each section of the network. */
    public static final Table<NeedRow> SECTIONS = Table.layer(
            "sections",
            "One row for each section of the network: what it offers to the cables, and how often it is needed.",
            GeometryKind.LINE,
            row -> row.need().section().lonLat().map(Shape::line).orElse(Shape.EMPTY),
            List.of(
                    Column.text(
                            "section_id",
                            "section_id",
                            "Name of the section.",
                            row -> row.need().section().id()),
                    Column.text(
                            "vault_a",
                            "vault_a",
                            "The vault where its line begins.",
                            row -> row.network().vaultId(row.need().section().from())),
                    Column.text(
                            "vault_b",
                            "vault_b",
                            "The vault where its line ends.",
                            row -> row.network().vaultId(row.need().section().to())),
                    Column.real(
                            "length_m",
                            "length_m",
                            3,
                            "Length of its shortest span.",
                            row -> row.need().section().lengthM()),
                    Column.text(
                            "action",
                            "action",
                            "free: a duct takes the cables today; recover: one does once recovered; empty: none does without new build.",
                            row -> row.need().step().map(step -> step.action().key())),
                    Column.text(
                            "span_id",
                            "span_id",
                            "Span whose duct takes the cables.",
                            row -> row.need().step().flatMap(WayStep::duct).map(DuctOffer::spanId)),
                    Column.integer(
                            "widest_now_positions",
                            "wide_now",
                            "Cables that can go together in its widest duct today.",
                            row -> row.need().section().widthNowPositions()),
                    Column.integer(
                            "widest_positions",
                            "widest_pos",
                            "Cables that can go together in its widest duct once recovered.",
                            row -> row.need().section().widthPositions()),
                    Column.real(
                            "cost_money",
                            "cost_money",
                            2,
                            "Cost of that recovery, with all rates at their values.",
                            row -> row.need().step().map(step -> step.costs().money())),
                    Column.integer(
                            "hub_ways",
                            "hub_ways",
                            "How many of the cheapest ways between hubs pass it.",
                            row -> row.need().ways()),
                    Column.integer(
                            "hub_ways_narrowest",
                            "hub_narrow",
                            "On how many of these it is the narrowest section, or one of several: the more, the sooner it is needed.",
                            row -> row.need().narrowest()),
                    Column.integer(
                            "corridor",
                            "corridor",
                            "Number of the corridor that it is in; empty where it is in none.",
                            row -> row.need().corridor() > 0
                                    ? Optional.of(row.need().corridor())
                                    : Optional.empty())));

    private CorridorColumns() {}

    /** A corridor, its number and its network. */
    public record CorridorRow(int number, Corridor found, DuctNetwork network) {
        List<WayStep> steps() {
            return found.way().steps();
        }
    }

    /** A section and its network. */
    public record NeedRow(SectionNeed need, DuctNetwork network) {}

    /** Returns the sections of a way as one line, the end of each being the beginning of the next. */
    static Shape joined(Way way) {
        var ordinates = new ArrayList<Double>();
        for (WayStep step : way.steps()) {
            Optional<Line> drawn = step.section().lonLat().map(line -> step.forward() ? line : line.reversed());
            drawn.ifPresent(line -> {
                for (int vertex = 0; vertex < line.size(); vertex++) {
                    int last = ordinates.size() - 2;
                    if (last < 0
                            || ordinates.get(last) != line.x(vertex)
                            || ordinates.get(last + 1) != line.y(vertex)) {
                        ordinates.add(line.x(vertex));
                        ordinates.add(line.y(vertex));
                    }
                }
            });
        }
        return ordinates.size() < 4
                ? Shape.EMPTY
                : Shape.line(Line.ofXy(
                        ordinates.stream().mapToDouble(Double::doubleValue).toArray()));
    }
}

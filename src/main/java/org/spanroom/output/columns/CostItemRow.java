package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.effort.Amounts;
import org.spanroom.model.effort.BuildItem;
import org.spanroom.model.effort.CostItem;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortPart;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** One item of what recovering a span, or a new build on its path, costs, as a row. */
public record CostItemRow(String spanId, String work, String item, double costMoney) {
    public static final Table<CostItemRow> TABLE = Table.plain(
            "cost_items",
            "One row for each item of the cost of recovery and of new build that is not 0, with all rates at their values, span by span in the"
                    + " order of the ranking.",
            List.of(
                    Column.text("span_id", "span_id", "The span.", CostItemRow::spanId),
                    Column.text("work", "work", "What it is a cost of: recovery or build.", CostItemRow::work),
                    Column.text("item", "item", "The item.", CostItemRow::item),
                    Column.real(
                            "cost_money",
                            "cost_money",
                            2,
                            "Its cost; below 0 where it is paid for.",
                            CostItemRow::costMoney)));

    /** Returns a span's rows, those of recovery first. */
    public static List<CostItemRow> of(RankedSpan span) {
        return span.assessment()
                .effort()
                .map(effort -> rows(span.spanId(), effort))
                .orElse(List.of());
    }

    private static List<CostItemRow> rows(String spanId, Effort effort) {
        var rows = new ArrayList<CostItemRow>();
        put(spanId, "recovery", CostItem.values(), effort.costMoney(), rows);
        put(spanId, "build", BuildItem.values(), effort.newBuild().costMoney(), rows);
        return rows;
    }

    private static <E extends Enum<E> & EffortPart> void put(
            String spanId, String work, E[] items, Amounts<E> costs, List<CostItemRow> rows) {
        for (E item : items) {
            double money = costs.of(item);
            if (money != 0) {
                rows.add(new CostItemRow(spanId, work, item.key(), money));
            }
        }
    }
}

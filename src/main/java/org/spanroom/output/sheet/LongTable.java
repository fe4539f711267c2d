package org.spanroom.output.sheet;

import java.util.List;
import java.util.function.BiFunction;
import java.util.stream.Stream;

/**
 * A table of which a page has the first rows only; the rest is on the additional page. A row puts its blanks on the page that it stands on.
 *
 * @param most how many items the page has room for
 * @param rows the rows of an item
 */
record LongTable<T>(
        String title,
        String style,
        List<SheetHead> heads,
        List<T> items,
        int most,
        BiFunction<SheetBlanks, T, List<SheetRow>> rows) {
    LongTable {
        items = List.copyOf(items);
    }

    SheetTable first(SheetBlanks page) {
        int rest = items.size() - kept();
        return new SheetTable(
                title,
                style,
                heads,
                rows(page, items.subList(0, kept())),
                rest == 0 ? "" : "and " + rest + " more on the additional page",
                0);
    }

    /** Returns the same table on a page that has room for so many items. */
    LongTable<T> upTo(int number) {
        return new LongTable<>(title, style, heads, items, number, rows);
    }

    /** Returns the rows that the page has no room for, as items that each keep together. */
    Stream<MoreRows> rest() {
        return items.subList(kept(), items.size()).stream()
                .map(item -> new MoreRows(title, style, heads, page -> rows.apply(page, item)));
    }

    private int kept() {
        return Math.min(most, items.size());
    }

    private List<SheetRow> rows(SheetBlanks page, List<T> some) {
        return some.stream().flatMap(item -> rows.apply(page, item).stream()).toList();
    }
}

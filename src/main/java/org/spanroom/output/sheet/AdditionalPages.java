package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;

/** Puts rows that other pages had no room for on additional pages, as many as they need. */
final class AdditionalPages {
    private static final int MOST_ROWS = 40;
    private static final int ROWS_OF_A_HEAD = 3;

    private final SheetUnits units;
    private final String spanId;
    private final List<Page> pages = new ArrayList<>();
    private final List<SheetTable> tables = new ArrayList<>();
    private final List<SheetRow> rows = new ArrayList<>();
    private final List<SheetBlank> blanks = new ArrayList<>();
    private MoreRows open = new MoreRows("", "", List.of(), page -> List.of());
    private int used;

    AdditionalPages(SheetUnits units, String spanId) {
        this.units = units;
        this.spanId = spanId;
    }

    /** What one page has. */
    record Page(List<SheetTable> tables, List<SheetBlank> blanks) {}

    void add(MoreRows more) {
        var own = new SheetBlanks(units, spanId);
        List<SheetRow> added = more.rows().apply(own);
        boolean begins = rows.isEmpty()
                || !more.title().equals(open.title())
                || !more.style().equals(open.style());
        if (used + added.size() + (begins ? ROWS_OF_A_HEAD : 0) > MOST_ROWS && used > 0) {
            endPage();
            begins = true;
        }
        if (begins) {
            endTable();
            open = more;
            used += ROWS_OF_A_HEAD;
        }
        rows.addAll(added);
        blanks.addAll(own.all());
        used += added.size();
    }

    private void endTable() {
        if (!rows.isEmpty()) {
            tables.add(SheetTable.whole(open.title(), open.style(), open.heads(), rows));
            rows.clear();
        }
    }

    private void endPage() {
        endTable();
        if (!tables.isEmpty()) {
            pages.add(new Page(List.copyOf(tables), List.copyOf(blanks)));
        }
        tables.clear();
        blanks.clear();
        used = 0;
    }

    List<Page> finish() {
        endPage();
        return List.copyOf(pages);
    }
}

package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.fieldwork.FieldFact;

/** The blanks of one page: each is listed as it is put on the page, so that page and close-out file have the same. */
final class SheetBlanks {
    private final SheetUnits units;
    private final String spanId;
    private final List<SheetBlank> all = new ArrayList<>();

    /** @param spanId the span that the page is about */
    SheetBlanks(SheetUnits units, String spanId) {
        this.units = units;
        this.spanId = spanId;
    }

    /** Adds a blank for a fact of the span. */
    SheetBlank of(FieldFact fact, String item, String planned) {
        return add(fact, spanId, item, planned);
    }

    /** Adds a blank for a fact of the span for which a number is planned. */
    SheetBlank of(FieldFact fact, String item, double plannedKept, int decimals) {
        return of(fact, item, units.planned(fact.kind(), plannedKept, decimals));
    }

    /** Adds a blank for a fact of the span for which nothing is planned. */
    SheetBlank of(FieldFact fact, String item) {
        return of(fact, item, "");
    }

    /** Adds a blank for a fact of a vault. */
    SheetBlank ofVault(String vaultId, FieldFact fact, String item, String planned) {
        return add(fact, vaultId, item, planned);
    }

    private SheetBlank add(FieldFact fact, String subjectId, String item, String planned) {
        var blank = new SheetBlank(fact, subjectId, item, planned, units.unit(fact.kind()));
        all.add(blank);
        return blank;
    }

    List<SheetBlank> all() {
        return List.copyOf(all);
    }
}

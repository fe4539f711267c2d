package org.spanroom.sample;

import java.util.List;
import java.util.Optional;

/**
 * What is in one invented duct.
 *
 * @param cables all of them; one in each innerduct, or loose where there is no innerduct
 * @param service "live", "dead" or "unknown" for all cables; empty where there is none
 * @param rows the items one by one, without their duct; empty if all are the same
 */
record Filling(
        Kind kind,
        int innerducts,
        Optional<InnerductSize> innerduct,
        int cables,
        Optional<CableSize> cable,
        String service,
        List<ListedItem> rows) {
    static final Filling NOTHING = new Filling(Kind.EMPTY, 0, Optional.empty(), 0, Optional.empty(), "", List.of());

    /** How a duct is used. */
    enum Kind {
        EMPTY("empty"),
        UNUSED("empty innerducts"),
        FULL("a cable in every innerduct"),
        PARTLY("innerducts partly used"),
        ROOMY("few or small innerducts with room beside them"),
        LOOSE("loose cables only"),
        MIXED("mixed contents, in the contents table"),
        CROWDED("crowded: loose cables beside as many innerducts as fit"),
        SLEEVED("with fabric sleeves");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    Filling {
        rows = List.copyOf(rows);
    }

    /** Returns equal innerducts, of which some hold a cable each. */
    static Filling of(Kind kind, int innerducts, InnerductSize size, int cables, CableSize cable, String service) {
        return new Filling(
                kind,
                innerducts,
                Optional.of(size),
                cables,
                cables == 0 ? Optional.empty() : Optional.of(cable),
                cables == 0 ? "" : service,
                List.of());
    }

    /** Returns items of the table, summed up as the simple fields can say it: by the first of each kind. */
    static Filling listed(Kind kind, List<ListedItem> rows) {
        List<ListedItem> innerducts =
                rows.stream().filter(row -> row.kind().equals("innerduct")).toList();
        List<ListedItem> cables =
                rows.stream().filter(row -> row.kind().equals("cable")).toList();
        Optional<ListedItem> cable = cables.stream().findFirst();
        return new Filling(
                kind,
                innerducts.size(),
                innerducts.stream().findFirst().flatMap(ListedItem::innerduct),
                cables.size(),
                cable.map(row -> new CableSize(row.outsideIn(), row.massLbKft().orElseThrow())),
                cable.map(ListedItem::service).orElse(""),
                rows);
    }

    boolean isEmpty() {
        return kind == Kind.EMPTY;
    }

    /** Returns how many cells of its sleeves are promised. */
    int reservedCells() {
        return rows.stream()
                .flatMap(row -> row.cells().stream())
                .mapToInt(ListedItem.Cells::reserved)
                .sum();
    }
}

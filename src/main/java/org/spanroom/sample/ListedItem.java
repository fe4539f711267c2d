package org.spanroom.sample;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One row of the contents table: an innerduct, a cable or a fabric sleeve in a duct.
 *
 * @param inside the item that this one is in, or empty where it is in the duct itself
 * @param innerduct the size of an innerduct
 * @param sizes its recorded sizes
 * @param cells the cells of a sleeve
 * @param catalog the row of a catalog that replaces sizes, or empty
 * @param mayMove whether a cable may be laid into a sleeve, or empty
 * @param notes by what crews know it
 */
record ListedItem(
        String duct,
        String item,
        String kind,
        String inside,
        Optional<InnerductSize> innerduct,
        Sizes sizes,
        Optional<Cells> cells,
        String service,
        String catalog,
        String mayMove,
        ItemNotes.Notes notes) {
    /**
     * Sizes as recorded.
     *
     * @param outsideIn NaN where it is not recorded
     */
    record Sizes(double outsideIn, OptionalDouble sdr, OptionalDouble wallIn, OptionalDouble massLbKft) {
        static final Sizes NONE =
                new Sizes(Double.NaN, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }

    /**
     * Cells of a sleeve.
     *
     * @param all each takes one cable
     * @param reserved promised, of those that are free
     */
    record Cells(int all, int reserved) {}

    /** Returns an innerduct, whose wall is recorded by its ratio or as such. */
    static ListedItem innerduct(String item, InnerductSize size, boolean byWall) {
        var sizes = new Sizes(
                size.outsideIn(),
                byWall ? OptionalDouble.empty() : OptionalDouble.of(size.sdr()),
                byWall ? OptionalDouble.of(size.wallIn()) : OptionalDouble.empty(),
                OptionalDouble.empty());
        return plain(item, "innerduct", "", Optional.of(size), sizes, Optional.empty(), "");
    }

    static ListedItem cable(String item, String inside, CableSize size, String service) {
        var sizes = new Sizes(
                size.outsideIn(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(size.massLbKft()));
        return plain(item, "cable", inside, Optional.empty(), sizes, Optional.empty(), service);
    }

    static ListedItem sleeve(String item, Cells cells) {
        return plain(item, "sleeve", "", Optional.empty(), Sizes.NONE, Optional.of(cells), "");
    }

    private static ListedItem plain(
            String item,
            String kind,
            String inside,
            Optional<InnerductSize> innerduct,
            Sizes sizes,
            Optional<Cells> cells,
            String service) {
        return new ListedItem("", item, kind, inside, innerduct, sizes, cells, service, "", "", ItemNotes.Notes.NONE);
    }

    private boolean isInSleeve() {
        return inside.startsWith("S");
    }

    double outsideIn() {
        return sizes.outsideIn();
    }

    OptionalDouble massLbKft() {
        return sizes.massLbKft();
    }

    ListedItem inDuct(String otherDuct) {
        return new ListedItem(otherDuct, item, kind, inside, innerduct, sizes, cells, service, catalog, mayMove, notes);
    }

    ListedItem ofKind(String otherKind) {
        return new ListedItem(duct, item, otherKind, inside, innerduct, sizes, cells, service, catalog, mayMove, notes);
    }

    /** Returns the row with a catalog's row instead of an innerduct's sizes, and with a cable that must stay where it lies. */
    ListedItem written(boolean byName, boolean fixed) {
        boolean named = byName && innerduct.isPresent();
        return new ListedItem(
                duct,
                item,
                kind,
                inside,
                innerduct,
                named ? Sizes.NONE : sizes,
                cells,
                service,
                named ? innerduct.get().catalogName() : catalog,
                fixed && kind.equals("cable") && !isInSleeve() ? "no" : mayMove,
                notes);
    }

    /** Returns the row with what crews noted. */
    ListedItem noted(ItemNotes.Notes others) {
        return new ListedItem(duct, item, kind, inside, innerduct, sizes, cells, service, catalog, mayMove, others);
    }
}

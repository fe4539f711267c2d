package org.spanroom.input.fields;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Term;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.CatalogUse;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Innerduct;

/** The items of one duct while its rows are read, which may come in any order. */
final class DuctItems {
    private final ItemReader reader;
    private final Map<String, ItemReader.Pipe> pipes = new LinkedHashMap<>();
    private final List<Inserted> cables = new ArrayList<>();
    private final Set<Term> assumed = EnumSet.noneOf(Term.class);
    private CatalogUse catalogUse = CatalogUse.NONE;

    DuctItems(ItemReader reader) {
        this.reader = reader;
    }

    /** A cable with the name of the item that it lies in, or "" for the duct. */
    private record Inserted(Cable cable, String inside, ContentsRow.Place place) {}

    /** Takes an innerduct from its row; false and a finding if the row does not give one. */
    boolean addInnerduct(ContentsRow row) {
        if (!row.cell("inside").isEmpty()) {
            row.add(
                    FindingCode.UNUSABLE_VALUE,
                    "inside",
                    () -> "an innerduct inside '" + row.cell("inside") + "' is taken as lying in the duct itself");
        }
        ItemReader.Pipe pipe = reader.pipe(row);
        if (!pipe.isUsable()) {
            return row.unusable("its outside diameter or wall is neither given nor assumed");
        }
        String item = row.cell("item").isEmpty() ? "innerduct-" + (pipes.size() + 1) : row.cell("item");
        if (pipes.putIfAbsent(item, pipe) != null) {
            return row.unusable("the duct has an innerduct '" + item + "' already");
        }
        noteSources(row);
        return true;
    }

    private void noteSources(ContentsRow row) {
        assumed.addAll(row.assumed());
        catalogUse = catalogUse.and(row.offers().use());
    }

    /** Takes a cable from its row; false and a finding if the row does not give one. */
    boolean addCable(ContentsRow row) {
        ItemReader.CableKind cable = reader.cable(row);
        if (!cable.isUsable()) {
            return row.unusable("its outside diameter or mass is neither given nor assumed");
        }
        String item = row.cell("item").isEmpty() ? "cable-" + (cables.size() + 1) : row.cell("item");
        cables.add(new Inserted(cable.named(item), row.cell("inside"), row.place()));
        noteSources(row);
        return true;
    }

    /** Returns what lies in the duct; unknown where no row could be used. */
    ContentsTable.Listed build() {
        if (pipes.isEmpty() && cables.isEmpty()) {
            return new ContentsTable.Listed(Contents.UNKNOWN, Set.of(), CatalogUse.NONE);
        }
        var inside = new LinkedHashMap<String, List<Cable>>();
        pipes.keySet().forEach(item -> inside.put(item, new ArrayList<>()));
        var loose = new ArrayList<Cable>();
        for (Inserted inserted : cables) {
            List<Cable> home = inserted.inside().isEmpty() ? loose : inside.get(inserted.inside());
            if (home == null) {
                inserted.place()
                        .add(
                                FindingCode.UNUSABLE_VALUE,
                                "inside",
                                () -> "the duct has no innerduct '" + inserted.inside()
                                        + "'; the cable is taken as loose");
                home = loose;
            }
            home.add(inserted.cable());
        }
        List<Innerduct> innerducts = pipes.entrySet().stream()
                .map(entry -> new Innerduct(
                        entry.getKey(),
                        entry.getValue().outsideMm(),
                        entry.getValue().wallMm(),
                        inside.getOrDefault(entry.getKey(), List.of())))
                .toList();
        return new ContentsTable.Listed(new Contents(innerducts, loose, true), Set.copyOf(assumed), catalogUse);
    }
}

package org.spanroom.input;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Cable;
import org.spanroom.model.CatalogUse;
import org.spanroom.model.Contents;
import org.spanroom.model.Innerduct;
import org.spanroom.model.Term;

/** The items of one duct while its rows are read, which may come in any order. */
final class DuctItems {
    private final Map<String, Pipe> pipes = new LinkedHashMap<>();
    private final List<Inserted> cables = new ArrayList<>();
    private final Set<Term> assumed = EnumSet.noneOf(Term.class);
    private CatalogUse catalogUse = CatalogUse.NONE;

    /** An innerduct without what lies in it. */
    private record Pipe(double outsideMm, double wallMm) {}

    /** A cable with the name of the item that it lies in, or "" for the duct. */
    private record Inserted(Cable cable, String inside, ContentsRow.RowPlace place) {}

    /** Takes an innerduct from its row; false and a finding if the row does not give one. */
    boolean addInnerduct(ContentsRow row) {
        if (!row.cell("inside").isEmpty()) {
            row.tell(
                    FindingCode.UNUSABLE_VALUE,
                    "inside",
                    "an innerduct inside '" + row.cell("inside") + "' is taken as lying in the duct itself");
        }
        row.offerInnerduct();
        double outsideMm = row.outsideMm(Term.INNERDUCT_OUTSIDE_DIAMETER);
        double wallMm = row.wallMm(outsideMm);
        if (!(outsideMm > 0) || !(wallMm > 0) || 2 * wallMm >= outsideMm) {
            return row.unusable("its outside diameter or wall is neither given nor assumed");
        }
        String item = row.cell("item").isEmpty() ? "innerduct-" + (pipes.size() + 1) : row.cell("item");
        if (pipes.putIfAbsent(item, new Pipe(outsideMm, wallMm)) != null) {
            return row.unusable("the duct has an innerduct '" + item + "' already");
        }
        noteSources(row);
        return true;
    }

    private void noteSources(ContentsRow row) {
        assumed.addAll(row.assumed());
        catalogUse = catalogUse.and(row.catalogUse());
    }

    /** Takes a cable from its row; false and a finding if the row does not give one. */
    boolean addCable(ContentsRow row) {
        row.offerCable();
        double outsideMm = row.outsideMm(Term.CABLE_OUTSIDE_DIAMETER);
        double massKgPerM = row.massKgPerM();
        if (!(outsideMm > 0) || !(massKgPerM >= 0)) {
            return row.unusable("its outside diameter or mass is neither given nor assumed");
        }
        String item = row.cell("item").isEmpty() ? "cable-" + (cables.size() + 1) : row.cell("item");
        var cable = new Cable(item, outsideMm, massKgPerM, row.service(), row.mayMove());
        cables.add(new Inserted(cable, row.cell("inside"), row.place()));
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
                        .tell(
                                FindingCode.UNUSABLE_VALUE,
                                "inside",
                                "the duct has no innerduct '" + inserted.inside() + "'; the cable is taken as loose");
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

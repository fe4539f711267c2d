package org.spanroom.input.fields;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.CatalogUse;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.RejectedValue;
import org.spanroom.model.network.Sleeve;

/** The items of one duct while its rows are read, which may come in any order. */
final class DuctItems {
    private final ItemReader reader;
    private final int usualCells;
    private final Map<String, Marked> pipes = new LinkedHashMap<>();
    private final Map<String, Laid> fabrics = new LinkedHashMap<>();
    private final List<Inserted> cables = new ArrayList<>();
    private final Set<String> cableNames = new HashSet<>();
    private final Set<Term> assumed = EnumSet.noneOf(Term.class);
    private final List<RejectedValue> rejected = new ArrayList<>();
    private CatalogUse catalogUse = CatalogUse.NONE;

    /** @param usualCells how many cells a sleeve has whose contents are not recorded */
    DuctItems(ItemReader reader, int usualCells) {
        this.reader = reader;
        this.usualCells = usualCells;
    }

    /** An innerduct with what crews know it by. */
    private record Marked(ItemReader.Pipe pipe, ItemReader.Marks marks) {
        Innerduct named(String item, List<Cable> inside) {
            return new Innerduct(
                    item, pipe.outsideMm(), pipe.wallMm(), inside, marks.color(), marks.uncutAtA(), marks.uncutAtB());
        }
    }

    /** A sleeve with the place of its row. */
    private record Laid(ItemReader.Fabric fabric, ContentsRow.Place place) {}

    /** A cable with the name of the item that it is in, or "" for the duct. */
    private record Inserted(Cable cable, String inside, ContentsRow.Place place) {}

    /** Takes an innerduct from its row; false and a finding if the row does not give one. */
    boolean addInnerduct(ContentsRow row) {
        if (!row.cell("inside").isEmpty()) {
            row.add(
                    FindingCode.UNUSABLE_VALUE,
                    "inside",
                    () -> "an innerduct inside '" + row.cell("inside") + "' is treated as directly in the duct");
        }
        reportCells(row);
        ItemReader.Pipe pipe = reader.pipe(row);
        if (!pipe.isUsable()) {
            return reject(row, "its outside diameter or wall is neither given nor assumed");
        }
        String item = row.cell("item").isEmpty() ? "innerduct-" + (pipes.size() + 1) : row.cell("item");
        if (isTaken(item)) {
            return reject(row, "the duct already has an item '" + item + "'");
        }
        pipes.put(item, new Marked(pipe, reader.marks(row)));
        noteSources(row);
        return true;
    }

    /** Only a sleeve has cells; places that are promised elsewhere in the duct are in a field of the routes layer. */
    private static void reportCells(ContentsRow row) {
        for (String column : List.of("cells", "reserved")) {
            String text = row.cell(column);
            if (!text.isEmpty() && !text.equals("0")) {
                row.add(
                        FindingCode.UNUSABLE_VALUE,
                        column,
                        () -> "'" + text
                                + "' is not used: the row is not a sleeve; positions reserved in the duct are recorded as "
                                + Term.POSITIONS_RESERVED.key() + " of its route");
            }
        }
    }

    private boolean isTaken(String item) {
        return pipes.containsKey(item) || fabrics.containsKey(item);
    }

    /** Takes a sleeve from its row; false and a finding if the row does not give one. */
    boolean addSleeve(ContentsRow row) {
        if (!row.cell("inside").isEmpty()) {
            row.add(
                    FindingCode.UNUSABLE_VALUE,
                    "inside",
                    () -> "a sleeve inside '" + row.cell("inside") + "' is treated as directly in the duct");
        }
        String item = row.cell("item").isEmpty() ? "sleeve-" + (fabrics.size() + 1) : row.cell("item");
        if (isTaken(item)) {
            return reject(row, "the duct already has an item '" + item + "'");
        }
        fabrics.put(item, new Laid(reader.fabric(row, usualCells), row.place()));
        noteSources(row);
        return true;
    }

    /** Notes that a row cannot be used, so that its item is unknown and not absent; false for the caller to return. */
    boolean reject(ContentsRow row, String why) {
        rejected.addAll(row.rejected());
        rejected.add(
                new RejectedValue(RejectedValue.CONTENTS_ROW, row.cell("kind") + " '" + row.cell("item") + "'", why));
        return row.unusable(why);
    }

    private void noteSources(ContentsRow row) {
        assumed.addAll(row.assumed());
        rejected.addAll(row.rejected());
        catalogUse = catalogUse.and(row.offers().use());
    }

    /** Takes a cable from its row; false and a finding if the row does not give one. */
    boolean addCable(ContentsRow row) {
        reportCells(row);
        ItemReader.CableKind cable = reader.cable(row);
        if (!cable.isUsable()) {
            return reject(row, "its outside diameter or mass is neither given nor assumed");
        }
        String item = row.cell("item").isEmpty() ? "cable-" + (cables.size() + 1) : row.cell("item");
        if (!cableNames.add(item)) {
            // Counted: an extra cable understates the room, a missing one would overstate it.
            row.add(
                    FindingCode.UNUSABLE_VALUE,
                    "item",
                    () -> "the duct already has a cable '" + item
                            + "'; both are counted. Remove one row, or give each cable its own item");
        }
        cables.add(new Inserted(cable.named(item, row.cell("tag")), row.cell("inside"), row.place()));
        noteSources(row);
        return true;
    }

    /** Returns what is in the duct; unknown where no row could be used. */
    ContentsTable.Listed build() {
        if (pipes.isEmpty() && fabrics.isEmpty() && cables.isEmpty()) {
            return new ContentsTable.Listed(Contents.UNKNOWN, Set.of(), CatalogUse.NONE, List.copyOf(rejected));
        }
        var inside = new LinkedHashMap<String, List<Cable>>();
        pipes.keySet().forEach(item -> inside.put(item, new ArrayList<>()));
        fabrics.keySet().forEach(item -> inside.put(item, new ArrayList<>()));
        var loose = new ArrayList<Cable>();
        cables.forEach(inserted -> home(inserted, inside, loose).add(inserted.cable()));
        var contents = new Contents(innerducts(inside), sleeves(inside), loose, true);
        return new ContentsTable.Listed(contents, Set.copyOf(assumed), catalogUse, List.copyOf(rejected));
    }

    /** Returns where a cable lies, with a finding where the duct has no such item. */
    private static List<Cable> home(Inserted inserted, Map<String, List<Cable>> inside, List<Cable> loose) {
        if (inserted.inside().isEmpty()) {
            return loose;
        }
        List<Cable> home = inside.get(inserted.inside());
        if (home != null) {
            return home;
        }
        inserted.place()
                .add(
                        FindingCode.UNUSABLE_VALUE,
                        "inside",
                        () -> "the duct has no innerduct or sleeve '" + inserted.inside()
                                + "'; the cable is treated as loose");
        return loose;
    }

    private List<Innerduct> innerducts(Map<String, List<Cable>> inside) {
        return pipes.entrySet().stream()
                .map(entry -> entry.getValue().named(entry.getKey(), inside.getOrDefault(entry.getKey(), List.of())))
                .toList();
    }

    private List<Sleeve> sleeves(Map<String, List<Cable>> inside) {
        return fabrics.entrySet().stream()
                .map(entry -> sleeve(entry.getKey(), entry.getValue(), inside.getOrDefault(entry.getKey(), List.of())))
                .toList();
    }

    /** Reports cells that the sleeve does not have: more cables, or more of them reserved, than there can be. */
    private static Sleeve sleeve(String item, Laid laid, List<Cable> cables) {
        Sleeve sleeve = laid.fabric().named(item, cables);
        if (cables.size() + sleeve.reservedCells() > sleeve.cells()) {
            laid.place()
                    .add(
                            FindingCode.CABLES_EXCEED_CELLS,
                            "cells",
                            () -> Counted.of(cables.size(), "cable") + " and "
                                    + Counted.of(sleeve.reservedCells(), "reserved cell")
                                    + " are recorded in a sleeve of " + Counted.of(sleeve.cells(), "cell"));
        }
        return sleeve;
    }
}

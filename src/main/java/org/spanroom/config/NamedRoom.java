package org.spanroom.config;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.model.bore.Catalog;
import org.spanroom.model.bore.RoomSettings;

/**
 * The room's sleeve and design cable as rows of the catalog, where the config names them, turned into the numbers that they
 * stand for. A number beside the name is used instead of the row's.
 */
final class NamedRoom {
    private static final String SLEEVE = "sleeve";
    private static final String DESIGN_CABLE = "design_cable";
    private static final int NEAREST_SHOWN = 3;

    private final ConfigNode root;
    private final Map<String, ConfigNode.Entry> room;
    private final int line;
    private final Optional<Catalog.Sleeve> sleeve;
    private final Optional<Catalog.DesignCable> cable;

    NamedRoom(ConfigNode root, Catalog catalog) {
        this.root = root;
        ConfigNode section =
                root instanceof ConfigNode.Mapping mapping && mapping.entries().containsKey("room")
                        ? mapping.entries().get("room").value()
                        : new ConfigNode.Mapping(Map.of(), 0);
        room = section instanceof ConfigNode.Mapping mapping ? mapping.entries() : Map.of();
        line = section.line();
        List<String> sleeves =
                catalog.sleeves().stream().map(Catalog.Sleeve::name).toList();
        List<String> cables =
                catalog.designCables().stream().map(Catalog.DesignCable::name).toList();
        sleeve = name(SLEEVE).map(name -> catalog.findSleeve(name).orElseThrow(() -> unknown(SLEEVE, name, sleeves)));
        cable = name(DESIGN_CABLE)
                .map(name -> catalog.findDesignCable(name).orElseThrow(() -> unknown(DESIGN_CABLE, name, cables)));
    }

    /** Returns the whole config with numbers instead of the names. */
    ConfigNode resolved() {
        if (!room.containsKey(SLEEVE) && !room.containsKey(DESIGN_CABLE)) {
            return root;
        }
        var entries = new LinkedHashMap<>(room);
        entries.remove(SLEEVE);
        entries.remove(DESIGN_CABLE);
        cable.ifPresent(row -> {
            put(entries, "design_cable_outside_diameter_mm", number(row.outsideDiameterMm()));
            put(entries, "design_cable_mass_kg_per_m", number(row.massKgPerM()));
        });
        sleeve.ifPresent(row -> {
            put(entries, "cells_per_sleeve", scalar(Integer.toString(row.cells())));
            put(entries, "sleeve_fabric_mm", number(row.fabricMm()));
            put(entries, "sleeves_by_duct", counts(row));
        });
        var sections = new LinkedHashMap<>(((ConfigNode.Mapping) root).entries());
        sections.put("room", new ConfigNode.Entry(new ConfigNode.Mapping(entries, line), line));
        return new ConfigNode.Mapping(sections, root.line());
    }

    /**
     * Refuses a design cable that is wider than the named sleeve's cells take.
     *
     * @throws ConfigProblem naming both
     */
    void demandThatTheCableFits(RoomSettings settings) {
        double cableMm = settings.designCableOutsideDiameterMm();
        sleeve.filter(row -> cableMm > row.widestCableMm()).ifPresent(row -> {
            throw new ConfigProblem(
                    lineOf(SLEEVE),
                    "the design cable of " + cableMm + " mm does not fit into a cell of the sleeve '" + row.name()
                            + "', which takes up to " + row.widestCableMm() + " mm",
                    "Name a narrower cable or a sleeve with wider cells.");
        });
    }

    /** Returns what to write instead of a name that no row has. */
    static String remedy(String wrong, List<String> names) {
        return names.isEmpty()
                ? "That list of the catalog is empty."
                : "The nearest are: " + String.join(", ", NearestWord.nearest(wrong, names, NEAREST_SHOWN)) + ".";
    }

    private Optional<String> name(String key) {
        ConfigNode.Entry entry = room.get(key);
        return entry == null || isNothing(entry)
                ? Optional.empty()
                : Optional.of(Binder.scalar(entry.value(), key).text());
    }

    private int lineOf(String key) {
        ConfigNode.Entry entry = room.get(key);
        return entry == null ? line : entry.line();
    }

    private static boolean isNothing(ConfigNode.Entry entry) {
        return entry.value() instanceof ConfigNode.Scalar scalar && scalar.isNull();
    }

    private ConfigProblem unknown(String key, String name, List<String> names) {
        return new ConfigProblem(lineOf(key), key + ": the catalog has no row '" + name + "'", remedy(name, names));
    }

    private void put(Map<String, ConfigNode.Entry> entries, String key, ConfigNode value) {
        ConfigNode.Entry given = entries.get(key);
        if (given == null || isNothing(given)) {
            entries.put(key, new ConfigNode.Entry(value, line));
        }
    }

    private ConfigNode counts(Catalog.Sleeve row) {
        var items = new ArrayList<ConfigNode>();
        for (RoomSettings.SleeveCount count : row.sleevesByDuct()) {
            var item = new LinkedHashMap<String, ConfigNode.Entry>();
            put(item, "from_inside_diameter_mm", number(count.fromInsideDiameterMm()));
            put(item, "sleeves", scalar(Integer.toString(count.sleeves())));
            items.add(new ConfigNode.Mapping(item, line));
        }
        return new ConfigNode.Sequence(items, line);
    }

    private ConfigNode number(double number) {
        return scalar(Double.toString(number));
    }

    private ConfigNode scalar(String text) {
        return new ConfigNode.Scalar(text, false, line);
    }
}

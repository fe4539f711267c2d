package org.spanroom.sample;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.spanroom.sample.CityOnDisk.Route;

/** The sections of a written city, counted in its files: the vaults that a bank's ducts pass within a meter, less one. */
final class SectionsOnDisk {
    private static final double NEAR_M = 1;
    private static final Set<String> SOUND = Set.of("sound", "good", "OK");

    private final List<BankOnDisk> banks = new ArrayList<>();
    private final Map<String, List<CSVRecord>> rows;
    private final STRtree vaults = new STRtree();

    private record BankOnDisk(int sections, List<List<Route>> ducts) {}

    SectionsOnDisk(CityOnDisk city) {
        rows = city.contents().stream().collect(Collectors.groupingBy(row -> row.get("duct")));
        city.vaults().values().stream()
                .filter(vault -> !vault.id().endsWith("A"))
                .flatMap(vault -> vault.place().stream())
                .forEach(at -> vaults.insert(new Envelope(at), at));
        Map<String, Map<String, List<Route>>> byBank = city.routes().stream()
                .collect(Collectors.groupingBy(
                        route -> route.text("bank_id"),
                        TreeMap::new,
                        Collectors.groupingBy(route -> route.text("duct_id"))));
        byBank.values().forEach(ducts -> {
            int sections =
                    ducts.values().stream().mapToInt(this::sections).max().orElseThrow();
            banks.add(new BankOnDisk(sections, List.copyOf(ducts.values())));
        });
    }

    private int sections(List<Route> pieces) {
        Set<Coordinate> passed = new HashSet<>();
        for (Route piece : pieces) {
            Geometry shape = piece.shape();
            Envelope around = shape.getEnvelopeInternal();
            around.expandBy(NEAR_M);
            for (Object at : vaults.query(around)) {
                if (shape.isWithinDistance(new GeometryFactory().createPoint((Coordinate) at), NEAR_M)) {
                    passed.add((Coordinate) at);
                }
            }
        }
        return Math.max(1, passed.size() - 1);
    }

    int count() {
        return banks.stream().mapToInt(BankOnDisk::sections).sum();
    }

    /** Returns the share of sections with at least one such duct. */
    double shareWith(Predicate<Route> duct) {
        return shareWith(1, duct);
    }

    /** Returns the share of sections with this many ducts, at least. */
    double shareWith(int least, Predicate<Route> duct) {
        double with = banks.stream()
                .filter(bank -> bank.ducts().stream()
                                .filter(pieces -> pieces.stream().anyMatch(duct))
                                .count()
                        >= least)
                .mapToInt(BankOnDisk::sections)
                .sum();
        return with / count();
    }

    boolean isSoundAndEmpty(Route route) {
        return route.text("innerducts").equals("0")
                && route.text("cables").equals("0")
                && SOUND.contains(route.text("condition"))
                && rowsOf(route).isEmpty();
    }

    boolean hasSleeve(Route route) {
        return rowsOf(route).stream().anyMatch(row -> row.get("kind").equals("sleeve"));
    }

    /** Returns whether loose cables are beside innerducts. */
    boolean isCrowded(Route route) {
        List<CSVRecord> items = rowsOf(route);
        return items.stream().anyMatch(row -> row.get("kind").equals("innerduct"))
                && items.stream()
                        .anyMatch(row -> row.get("kind").equals("cable")
                                && row.get("inside").isEmpty());
    }

    boolean hasReserved(Route route) {
        return route.number("reserved") > 0
                || rowsOf(route).stream().anyMatch(row -> row.get("reserved").matches("[1-9]"));
    }

    static boolean isFlooded(Route route) {
        return Set.of("yes", "Y", "wet", "full of water").contains(route.text("flooded"));
    }

    static boolean isLooseOnly(Route route) {
        return route.text("innerducts").equals("0") && route.number("cables") > 0;
    }

    List<CSVRecord> rowsOf(Route route) {
        return rows.getOrDefault(route.text("duct_id"), List.of());
    }
}

package org.spanroom.network;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.spanroom.model.Term;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Sleeve;

/** What differs between the attributes of two pieces of one duct. */
final class DuctDifferences {
    private final List<Difference> found = new ArrayList<>();

    /** One attribute that differs, by the key of its term. */
    record Difference(String term, String before, String after) {}

    private DuctDifferences() {}

    static List<Difference> between(Duct a, Duct b) {
        if (a.equals(b)) {
            return List.of();
        }
        var differences = new DuctDifferences();
        differences.compare(Term.DUCT_BANK, a.bankId(), b.bankId());
        differences.compare(Term.BORE_SHAPE, a.boreShape(), b.boreShape());
        differences.compare(Term.INSIDE_DIAMETER, a.insideDiameterMm() + " mm", b.insideDiameterMm() + " mm");
        differences.compare(Term.DUCT_TYPE, type(a), type(b));
        differences.compare(Term.DUCT_MATERIAL, a.material(), b.material());
        differences.compare(Term.FLOODED, a.flooded(), b.flooded());
        differences.compare(Term.CONDITION, a.condition(), b.condition());
        differences.compare(Term.SURFACE, a.surface(), b.surface());
        differences.compare(Term.OWNER, a.owner(), b.owner());
        differences.compare(Term.YEAR, year(a.installedYear()), year(b.installedYear()));
        differences.compareContents(a.contents(), b.contents());
        return differences.found;
    }

    private void compareContents(Contents a, Contents b) {
        int before = found.size();
        compare(
                Term.INNERDUCT_COUNT,
                count(a, a.innerducts().size()),
                count(b, b.innerducts().size()));
        compare(
                Term.CABLE_COUNT,
                count(a, a.cables().size()),
                count(b, b.cables().size()));
        compare(Term.SLEEVE_CELLS, cells(a), cells(b));
        if (found.size() == before) {
            compare(Term.INNERDUCT_OUTSIDE_DIAMETER, diameters(a), diameters(b));
        }
        if (found.size() == before && !a.equals(b)) {
            found.add(new Difference("contents", "one mix of items", "another"));
        }
    }

    private void compare(Term term, Object before, Object after) {
        if (!before.equals(after)) {
            found.add(new Difference(term.key(), word(before), word(after)));
        }
    }

    private static String type(Duct duct) {
        return duct.directBuried() ? duct.type() + " (direct-buried)" : duct.type();
    }

    private static String word(Object value) {
        String word = value.toString();
        return word.isEmpty() ? "none" : word;
    }

    private static String year(OptionalInt year) {
        return year.isPresent() ? Integer.toString(year.getAsInt()) : "";
    }

    private static String count(Contents contents, int number) {
        return contents.known() ? Integer.toString(number) : "unknown";
    }

    private static int cells(Contents contents) {
        return contents.sleeves().stream().mapToInt(Sleeve::cells).sum();
    }

    private static List<Double> diameters(Contents contents) {
        return contents.innerducts().stream()
                .map(Innerduct::outsideDiameterMm)
                .sorted()
                .toList();
    }
}

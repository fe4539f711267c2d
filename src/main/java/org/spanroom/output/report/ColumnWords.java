package org.spanroom.output.report;

import java.util.LinkedHashMap;
import java.util.Map;

/** Names of columns in words for people: the last word of a name that is a unit becomes the unit, the rest the label. */
final class ColumnWords {
    /** A longer ending first: a name that ends in kg_per_m ends in m too. */
    private static final Map<String, String> UNITS = units();

    private static final String OWN_FIELD = "src_";

    private final String currency;

    ColumnWords(String currency) {
        this.currency = currency;
    }

    /** A label without its unit, and the unit; "" where the name has none. */
    record Words(String label, String unit) {}

    /** Takes a name apart. A field of the owner's own keeps its words, since its unit is not known. */
    Words of(String name) {
        if (name.startsWith(OWN_FIELD)) {
            return new Words(spaced(name.substring(OWN_FIELD.length())), "");
        }
        for (Map.Entry<String, String> unit : UNITS.entrySet()) {
            String end = "_" + unit.getKey();
            if (name.endsWith(end)) {
                String word = unit.getKey().equals("money") ? currency : unit.getValue();
                return new Words(spaced(name.substring(0, name.length() - end.length())), word);
            }
        }
        return new Words(spaced(name), "");
    }

    private static String spaced(String name) {
        return name.replace('_', ' ').strip();
    }

    private static Map<String, String> units() {
        var units = new LinkedHashMap<String, String>();
        units.put("kg_per_m3", "kg/m3");
        units.put("lb_per_ft3", "lb/ft3");
        units.put("lbf_per_ft", "lbf/ft");
        units.put("kg_per_m", "kg/m");
        units.put("lb_per_ft", "lb/ft");
        units.put("n_per_m", "N/m");
        units.put("money", "");
        units.put("mm2", "mm2");
        units.put("in2", "in2");
        units.put("mm", "mm");
        units.put("in", "in");
        units.put("m3", "m3");
        units.put("ft3", "ft3");
        units.put("km", "km");
        units.put("m", "m");
        units.put("ft", "ft");
        units.put("n", "N");
        units.put("lbf", "lbf");
        units.put("kg", "kg");
        units.put("lb", "lb");
        units.put("l", "l");
        units.put("gal", "gal");
        units.put("pct", "%");
        units.put("deg", "\u00b0");
        units.put("points", "points");
        units.put("hours", "h");
        units.put("minutes", "min");
        units.put("days", "days");
        return units;
    }
}

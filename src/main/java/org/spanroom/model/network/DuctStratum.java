package org.spanroom.model.network;

import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.model.Term;

/** The stratum of a duct: ducts of one decade, type and owner, so far as these are recorded, are likely to be similar inside. */
public final class DuctStratum {
    private static final int DECADE = 10;

    private DuctStratum() {}

    /** Returns the name of the stratum of a duct: what is recorded of year, type and owner. */
    public static String name(Duct duct) {
        return joined(
                decade(duct), recorded(duct, Term.DUCT_TYPE, duct.type()), recorded(duct, Term.OWNER, duct.owner()));
    }

    /** Returns the same name without the owner. */
    public static String typeAndDecade(Duct duct) {
        return joined(decade(duct), recorded(duct, Term.DUCT_TYPE, duct.type()));
    }

    private static String joined(String... words) {
        return Stream.of(words).filter(word -> !word.isEmpty()).collect(Collectors.joining(", "));
    }

    private static String decade(Duct duct) {
        return duct.installedYear().isPresent()
                ? Math.floorDiv(duct.installedYear().getAsInt(), DECADE) * DECADE + "s"
                : "year unknown";
    }

    private static String recorded(Duct duct, Term term, String word) {
        return duct.assumed().contains(term) ? "" : word.strip().toLowerCase(Locale.ROOT);
    }
}

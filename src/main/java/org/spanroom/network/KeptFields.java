package org.spanroom.network;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.spanroom.model.network.Duct;

/** The owner's own fields of a span that consists of several routes: of each the distinct values, in the order of the span. */
final class KeptFields {
    private static final String SEPARATOR = ";";

    private KeptFields() {}

    /** Returns a duct with the values of all pieces; itself where they are the same. */
    static Duct together(Duct duct, List<ChainLink> pieces) {
        if (pieces.stream().allMatch(piece -> piece.route().duct().kept().equals(duct.kept()))) {
            return duct;
        }
        List<String> together = new ArrayList<>();
        for (int field = 0; field < duct.kept().size(); field++) {
            Set<String> distinct = new LinkedHashSet<>();
            for (ChainLink piece : pieces) {
                distinct.add(piece.route().duct().kept().get(field));
            }
            distinct.remove("");
            together.add(String.join(SEPARATOR, distinct));
        }
        return duct.withKept(together);
    }
}

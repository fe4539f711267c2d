package org.spanroom.model;

import java.util.ArrayList;
import java.util.List;

/**
 * What lies in a duct.
 *
 * @param looseCables cables that lie in the duct itself, in no innerduct
 * @param known false where the records say nothing of the contents, so that the lists are empty for want of knowledge
 */
public record Contents(List<Innerduct> innerducts, List<Cable> looseCables, boolean known) {
    public static final Contents UNKNOWN = new Contents(List.of(), List.of(), false);

    public Contents {
        innerducts = List.copyOf(innerducts);
        looseCables = List.copyOf(looseCables);
    }

    /** Returns every cable, those in innerducts first. */
    public List<Cable> cables() {
        var all = new ArrayList<Cable>();
        innerducts.forEach(innerduct -> all.addAll(innerduct.cables()));
        all.addAll(looseCables);
        return List.copyOf(all);
    }
}

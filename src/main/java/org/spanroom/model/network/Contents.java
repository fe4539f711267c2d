package org.spanroom.model.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What lies in a duct.
 *
 * @param looseCables cables that lie in the duct itself, in no innerduct
 * @param known false where the records say nothing of the contents, so that the lists are empty for want of knowledge
 */
public record Contents(List<Innerduct> innerducts, List<Cable> looseCables, boolean known) {
    public static final Contents UNKNOWN = new Contents(List.of(), List.of(), false);

    private static final Comparator<Cable> BY_SIZE = Comparator.comparingDouble(Cable::outsideDiameterMm)
            .reversed()
            .thenComparing(cable -> cable.service() == Service.DEAD)
            .thenComparing(cable -> !cable.mayMove());

    private static final Comparator<Innerduct> ORDER_OUT = Comparator.<Innerduct, Boolean>comparing(
                    innerduct -> !innerduct.isEmpty())
            .thenComparing(
                    Comparator.comparingDouble(Innerduct::outsideDiameterMm).reversed())
            .thenComparingDouble(Innerduct::wallMm)
            .thenComparing(Contents::byCables);

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

    /**
     * Returns the innerducts in the order in which they are chosen to come out: the empty ones, which touch no cable; then
     * the widest, which give most room for one pull. Equal ones keep the order of the records.
     */
    public List<Innerduct> innerductsByOrderOut() {
        return innerducts.stream().sorted(ORDER_OUT).toList();
    }

    private static int byCables(Innerduct a, Innerduct b) {
        List<Cable> inA = a.cables().stream().sorted(BY_SIZE).toList();
        List<Cable> inB = b.cables().stream().sorted(BY_SIZE).toList();
        for (int i = 0; i < Math.min(inA.size(), inB.size()); i++) {
            int order = BY_SIZE.compare(inA.get(i), inB.get(i));
            if (order != 0) {
                return order;
            }
        }
        return Integer.compare(inA.size(), inB.size());
    }
}

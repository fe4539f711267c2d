package org.spanroom.model.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.spanroom.model.Answer;

/**
 * What is in a duct.
 *
 * @param sleeves fabric sleeves already in, with the cables in their cells
 * @param looseCables cables that are in the duct itself, in no innerduct and no sleeve
 * @param known false where the records say nothing of the contents, so that the lists are empty because they are unknown
 */
public record Contents(List<Innerduct> innerducts, List<Sleeve> sleeves, List<Cable> looseCables, boolean known) {
    /**
     * A duct of more innerducts, cables and cells than this is not packed, since an answer would take long and the count is wrong. A count
     * of innerducts or of cables beyond it is no plausible value, whatever the config, so that readers create no more of them.
     */
    public static final int MOST_THINGS = 300;

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
        sleeves = List.copyOf(sleeves);
        looseCables = List.copyOf(looseCables);
    }

    /** Contents without sleeves. */
    public Contents(List<Innerduct> innerducts, List<Cable> looseCables, boolean known) {
        this(innerducts, List.of(), looseCables, known);
    }

    /** Returns whether the records say of any innerduct whether it runs uncut through a vault. */
    public boolean hasUncutRecord() {
        for (Innerduct innerduct : innerducts) {
            if (innerduct.uncutAtA() != Answer.UNKNOWN || innerduct.uncutAtB() != Answer.UNKNOWN) {
                return true;
            }
        }
        return false;
    }

    /** Returns the same contents with other innerducts. */
    public Contents withInnerducts(List<Innerduct> others) {
        return new Contents(others, sleeves, looseCables, known);
    }

    /** Returns whether nothing at all is in the duct, for all that is known. */
    public boolean isEmpty() {
        return known && innerducts.isEmpty() && sleeves.isEmpty() && looseCables.isEmpty();
    }

    /** Returns the cables that are beside the innerducts: in sleeves and loose. */
    public List<Cable> cablesBeside() {
        if (sleeves.isEmpty()) {
            return looseCables;
        }
        var all = new ArrayList<Cable>();
        sleeves.forEach(sleeve -> all.addAll(sleeve.cables()));
        all.addAll(looseCables);
        return List.copyOf(all);
    }

    /** Returns every cable, those in innerducts first, then those in sleeves. */
    public List<Cable> cables() {
        var all = new ArrayList<Cable>();
        innerducts.forEach(innerduct -> all.addAll(innerduct.cables()));
        all.addAll(cablesBeside());
        return List.copyOf(all);
    }

    /** Returns how many cables there are, wherever they are. */
    public int cableCount() {
        int count = looseCables.size();
        for (Innerduct innerduct : innerducts) {
            count += innerduct.cables().size();
        }
        for (Sleeve sleeve : sleeves) {
            count += sleeve.cables().size();
        }
        return count;
    }

    /**
     * Returns the innerducts in the order in which they are chosen to come out: the empty ones, which touch no cable; then
     * the widest, which give most room for one pull. Equal ones keep the order of the records.
     */
    public List<Innerduct> innerductsByOrderOut() {
        for (int i = 1; i < innerducts.size(); i++) {
            if (ORDER_OUT.compare(innerducts.get(i - 1), innerducts.get(i)) > 0) {
                return innerducts.stream().sorted(ORDER_OUT).toList();
            }
        }
        return innerducts;
    }

    private static int byCables(Innerduct a, Innerduct b) {
        List<Cable> inA = bySize(a.cables());
        List<Cable> inB = bySize(b.cables());
        for (int i = 0; i < Math.min(inA.size(), inB.size()); i++) {
            int order = BY_SIZE.compare(inA.get(i), inB.get(i));
            if (order != 0) {
                return order;
            }
        }
        return Integer.compare(inA.size(), inB.size());
    }

    private static List<Cable> bySize(List<Cable> cables) {
        return cables.size() < 2 ? cables : cables.stream().sorted(BY_SIZE).toList();
    }
}

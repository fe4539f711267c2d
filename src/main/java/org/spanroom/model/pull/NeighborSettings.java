package org.spanroom.model.pull;

import org.spanroom.model.Check;

/**
 * How the other contents of a duct weigh on the innerduct that is pulled.
 *
 * @param restingShareRatio share of the weight of all other contents that rests on the pulled innerduct; 0 where it rests on
 *     top, at most 1
 * @param wedgedFromInnerducts with how many other innerducts still in the duct the pulled one is treated as wedged between two
 *     supports
 */
public record NeighborSettings(double restingShareRatio, int wedgedFromInnerducts) {
    public NeighborSettings {
        Check.within("restingShareRatio", restingShareRatio, 0, 1);
        Check.positive("wedgedFromInnerducts", wedgedFromInnerducts);
    }
}

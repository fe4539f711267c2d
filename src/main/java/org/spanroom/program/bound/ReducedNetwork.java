package org.spanroom.program.bound;

import java.util.List;
import org.spanroom.program.design.Demand;

/**
 * A network of the same least cost as a design problem's, with fewer places and links.
 *
 * @param places how many place numbers there are; some have no link
 * @param sizes cables of a demand of each size, ascending
 */
@SuppressWarnings(
        "ArrayRecordComponent") // Inside the search only, where objects would cost too much; never changed or compared.
record ReducedNetwork(int places, List<Link> links, List<Demand> demands, int[] sizes) {
    ReducedNetwork {
        links = List.copyOf(links);
        demands = List.copyOf(demands);
        sizes = sizes.clone();
    }

    /** Returns the number of a demand's size. */
    int sizeOf(Demand demand) {
        for (int k = 0; k < sizes.length; k++) {
            if (sizes[k] == demand.cables()) {
                return k;
            }
        }
        throw new IllegalArgumentException("no size of " + demand.cables() + " cables");
    }
}

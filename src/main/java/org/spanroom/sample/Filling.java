package org.spanroom.sample;

import java.util.List;
import java.util.Optional;

/**
 * What lies in one invented duct.
 *
 * @param cables all of them; one in each innerduct, or loose where there is no innerduct
 * @param service "live", "dead" or "unknown" for all cables; empty where there is none
 * @param rows the items one by one, without their duct; empty where they are all alike
 */
record Filling(
        int innerducts,
        Optional<InnerductSize> innerduct,
        int cables,
        Optional<CableSize> cable,
        String service,
        List<ListedItem> rows) {
    static final Filling NOTHING = new Filling(0, Optional.empty(), 0, Optional.empty(), "", List.of());

    Filling {
        rows = List.copyOf(rows);
    }
}

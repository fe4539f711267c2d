package org.spanroom.input;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.spanroom.model.Cable;
import org.spanroom.model.Contents;
import org.spanroom.model.Innerduct;
import org.spanroom.model.Service;

/**
 * Contents as attributes of the duct give them: so many innerducts of one size, so many cables of one size.
 *
 * <p>One cable lies in each innerduct, in order; the rest lies loose in the duct. Sizes of what there is none of are 0.
 */
record SimpleContents(
        int innerducts,
        double innerductOutsideMm,
        double wallMm,
        int cables,
        double cableOutsideMm,
        double cableMassKgPerM,
        Service service,
        boolean cablesMayMove) {
    static final SimpleContents EMPTY = new SimpleContents(0, 0, 0, 0, 0, 0, Service.UNKNOWN, true);

    Contents contents() {
        List<Cable> all = IntStream.rangeClosed(1, cables)
                .mapToObj(
                        number -> new Cable("cable-" + number, cableOutsideMm, cableMassKgPerM, service, cablesMayMove))
                .toList();
        var pipes = new ArrayList<Innerduct>();
        for (int i = 0; i < innerducts; i++) {
            List<Cable> inside = i < cables ? List.of(all.get(i)) : List.of();
            pipes.add(new Innerduct("innerduct-" + (i + 1), innerductOutsideMm, wallMm, inside));
        }
        return new Contents(pipes, all.subList(Math.min(innerducts, cables), cables), true);
    }
}

package org.spanroom.input.fields;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Innerduct;

/**
 * Contents as attributes of the duct give them: this many innerducts of one size, this many cables of one size.
 *
 * <p>One cable is in each innerduct, in order; the rest is loose in the duct. What there is none of has no size.
 */
record SimpleContents(
        int innerducts, Optional<ItemReader.Pipe> pipe, int cables, Optional<ItemReader.CableKind> cable) {

    /** Returns whether everything that is there has a size. */
    boolean isSized() {
        return pipe.map(ItemReader.Pipe::isUsable).orElse(true)
                && cable.map(ItemReader.CableKind::isUsable).orElse(true);
    }

    Contents contents() {
        List<Cable> all = IntStream.rangeClosed(1, cables)
                .mapToObj(number -> cable.orElseThrow().named("cable-" + number))
                .toList();
        var pipes = new ArrayList<Innerduct>();
        for (int i = 0; i < innerducts; i++) {
            List<Cable> inside = i < cables ? List.of(all.get(i)) : List.of();
            ItemReader.Pipe size = pipe.orElseThrow();
            pipes.add(new Innerduct("innerduct-" + (i + 1), size.outsideMm(), size.wallMm(), inside));
        }
        return new Contents(pipes, all.subList(Math.min(innerducts, cables), cables), true);
    }
}

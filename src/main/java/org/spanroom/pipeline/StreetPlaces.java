package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.Line;
import org.spanroom.model.Surroundings;
import org.spanroom.model.network.Street;

/** Whether streets of the user's own lie where the spans are: a wrong reference system looks as if a backdrop were merely empty. */
final class StreetPlaces {
    private StreetPlaces() {}

    /**
     * Returns a sentence if no street is within about 5 km of the spans; empty where one is, and where no span has a line.
     *
     * @param file the layer of the streets
     * @param spans lines of the spans, where they are known
     */
    static Optional<String> farWords(Path file, List<Street> streets, List<Optional<Line>> spans) {
        var places = new Surroundings();
        spans.forEach(line -> line.ifPresent(places::add));
        boolean near =
                streets.stream().flatMap(street -> street.lonLat().stream()).anyMatch(places::isNear);
        return near || places.isEmpty() || streets.isEmpty()
                ? Optional.empty()
                : Optional.of("No street of " + file.getFileName() + " is " + Surroundings.NEAR
                        + " of the spans, so no map shows them; check the layer's"
                        + " reference system and the order of its axes.");
    }
}

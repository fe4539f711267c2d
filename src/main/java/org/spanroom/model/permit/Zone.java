package org.spanroom.model.permit;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.Check;
import org.spanroom.model.Line;

/**
 * A permit zone: an area of streets in which work needs a permit of some kind, or is not allowed at all.
 *
 * @param sequence place in the order of reading, from 0
 * @param kind key of the zone's kind, as the permit settings name it
 * @param name what people call it, or empty
 * @param from first day on which its rule applies; empty where it has always applied
 * @param until last day on which its rule applies; empty where it applies for good
 * @param outlines its polygons
 * @param sourceRow number of the feature in its layer, from 1; 0 where it is of none
 */
public record Zone(
        int sequence,
        String id,
        String kind,
        String name,
        Optional<LocalDate> from,
        Optional<LocalDate> until,
        List<Outline> outlines,
        long sourceRow) {
    /**
     * One polygon, longitude and latitude in degrees on WGS 84.
     *
     * @param shell closed outer ring
     * @param holes closed inner rings
     */
    public record Outline(Line shell, List<Line> holes) {
        public Outline {
            holes = List.copyOf(holes);
        }
    }

    public Zone {
        Check.notBlank("id", id);
        Check.notBlank("kind", kind);
        outlines = List.copyOf(outlines);
    }

    /** A zone that is no feature of a layer. */
    public Zone(
            int sequence,
            String id,
            String kind,
            String name,
            Optional<LocalDate> from,
            Optional<LocalDate> until,
            List<Outline> outlines) {
        this(sequence, id, kind, name, from, until, outlines, 0);
    }

    /** A zone without a first day. */
    public Zone(int sequence, String id, String kind, String name, Optional<LocalDate> until, List<Outline> outlines) {
        this(sequence, id, kind, name, Optional.empty(), until, outlines);
    }
}

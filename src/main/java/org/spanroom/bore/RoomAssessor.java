package org.spanroom.bore;

import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.function.Supplier;
import org.spanroom.model.Cable;
import org.spanroom.model.Condition;
import org.spanroom.model.Duct;
import org.spanroom.model.Exclusion;
import org.spanroom.model.Room;
import org.spanroom.model.RoomSettings;
import org.spanroom.model.Service;

/**
 * Finds the room that recovering its innerducts would give in a duct.
 *
 * <p>Many ducts share few distinct cross-sections: each distinct one is worked out once in an assessor's life, whichever
 * thread asks first, and the answer depends on the sizes only. Safe for use by several threads.
 */
public final class RoomAssessor {
    private final RoomCount count;
    private final ConcurrentMap<Section, Once> rooms = new ConcurrentHashMap<>();

    public RoomAssessor(RoomSettings settings) {
        count = new RoomCount(settings);
    }

    /**
     * Returns the room in a duct; where it is not to be recovered, with the reason. New cables are counted all the same, for
     * whoever opens that gate, except where no known innerduct can leave a duct.
     */
    public Room assess(Duct duct) {
        var section = Section.of(duct);
        Room room = rooms.computeIfAbsent(section, key -> new Once(() -> count.count(key)))
                .get();
        return findExclusion(duct).map(reason -> because(room, reason)).orElseGet(() -> withoutGainExcluded(room));
    }

    private static Room because(Room room, Exclusion reason) {
        return switch (reason) {
            case CONTENTS_UNKNOWN, NO_INNERDUCT, NO_OUTER_DUCT -> room.excluded(reason);
            default -> room.withExclusion(reason);
        };
    }

    /** Returns how many distinct cross-sections were asked for so far. */
    public int distinctSections() {
        return rooms.size();
    }

    private static Room withoutGainExcluded(Room room) {
        return room.cablesGained() > 0 ? room : room.withExclusion(Exclusion.NO_ROOM_GAINED);
    }

    private static Optional<Exclusion> findExclusion(Duct duct) {
        if (!duct.contents().known()) {
            return Optional.of(Exclusion.CONTENTS_UNKNOWN);
        }
        if (duct.contents().innerducts().isEmpty()) {
            return Optional.of(Exclusion.NO_INNERDUCT);
        }
        if (duct.directBuried()) {
            return Optional.of(Exclusion.NO_OUTER_DUCT);
        }
        if (duct.condition() == Condition.COLLAPSED) {
            return Optional.of(Exclusion.DUCT_COLLAPSED);
        }
        if (duct.condition() == Condition.BLOCKED) {
            return Optional.of(Exclusion.DUCT_BLOCKED);
        }
        return findServiceExclusion(duct);
    }

    private static Optional<Exclusion> findServiceExclusion(Duct duct) {
        var services =
                duct.contents().cables().stream().map(Cable::service).distinct().toList();
        if (services.contains(Service.UNKNOWN)) {
            return Optional.of(Exclusion.SERVICE_UNKNOWN);
        }
        boolean allDead = !services.isEmpty() && !services.contains(Service.LIVE);
        return allDead ? Optional.of(Exclusion.ALL_CABLES_DEAD) : Optional.empty();
    }

    /** A room worked out by the first thread that asks; a thread that wants another one does not wait for it. */
    private static final class Once {
        private final Supplier<Room> work;
        private Optional<Room> room = Optional.empty();

        Once(Supplier<Room> work) {
            this.work = work;
        }

        synchronized Room get() {
            Room known = room.orElseGet(work);
            room = Optional.of(known);
            return known;
        }
    }
}

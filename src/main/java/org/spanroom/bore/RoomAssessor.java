package org.spanroom.bore;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.spanroom.model.bore.KnownPacking;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Sleeve;
import org.spanroom.model.network.Unrecoverable;

/**
 * Finds the room that recovering its innerducts would give in a duct.
 *
 * <p>Many ducts share few distinct cross-sections: each distinct one is calculated once, unless it was forgotten since over many
 * others; whichever thread asks first, the answer depends on the sizes only. Safe for use by several threads.
 */
public final class RoomAssessor {
    /** Names the way of searching: what another way found is not an answer for this one. Change it with the search. */
    public static final String METHOD = "2";

    /** As many as a city of half a million ducts has; about a kilobyte each. */
    private static final int ROOMS_KEPT = 150_000;

    private final RoomSettings settings;
    private final Packer packer = new Packer();
    private final RoomCount count;
    private final RecentAnswers<BoreContents, Once> rooms = new RecentAnswers<>(ROOMS_KEPT);

    public RoomAssessor(RoomSettings settings) {
        this.settings = settings;
        count = new RoomCount(settings, packer);
    }

    /**
     * Returns the room in a duct with all innerducts out; where none can come out, what there is now and nothing more; where the
     * contents are unknown, or more than {@value Contents#MOST_THINGS} things, the bore's area alone.
     *
     * <p>Into a duct recorded as collapsed or blocked nothing goes today; after recovery it is treated as cleared.
     */
    public Room assess(Duct duct) {
        if (!duct.contents().known()) {
            return Room.unknown(duct.boreAreaMm2());
        }
        if (things(duct.contents()) > Contents.MOST_THINGS) {
            return Room.unknown(duct.boreAreaMm2());
        }
        var section = BoreContents.of(duct, settings);
        Room room = rooms.get(section, key -> new Once(() -> count.count(key))).get();
        Room recovered = Unrecoverable.of(duct).map(room::unrecovered).orElse(room);
        Room passable = isClosed(duct.condition()) ? recovered.closed(Room.BORE_CLOSED) : recovered;
        return passable.reserving(duct.circumstances().positionsReserved());
    }

    private static long things(Contents contents) {
        long cells = 0;
        for (Sleeve sleeve : contents.sleeves()) {
            cells += sleeve.cells();
        }
        return contents.innerducts().size() + contents.cableCount() + cells;
    }

    private static boolean isClosed(Condition condition) {
        return condition == Condition.COLLAPSED || condition == Condition.BLOCKED;
    }

    /** Returns what was searched for so far, for {@link #recall} of a later run. */
    public List<KnownPacking> known() {
        return packer.known();
    }

    /**
     * Takes over what an earlier run of the same {@link #METHOD} searched for; an arrangement that does not fit when looked at
     * again is not taken.
     *
     * @return how many were taken over
     */
    public int recall(List<KnownPacking> packings) {
        return packer.recall(packings);
    }

    /** Returns how many cross-sections were calculated so far: the distinct ones, and again those that were forgotten since then. */
    public long sectionsWorkedOut() {
        return rooms.workedOut();
    }

    /** A room calculated by the first thread that asks; a thread that wants another one does not wait for it. */
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

package org.spanroom.testing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.Positions;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;

/** Rooms made by hand for tests of what uses them. */
public final class Rooms {
    public static final Packing PACKED = new Packing(PackingOutcome.FITS, 1, "", 0, Optional.empty());

    private Rooms() {}

    /** Returns a room in which this many innerducts come out for new cables, where this many empty innerducts are positions now. */
    public static Room recovering(int innerductsOut, int positionsNow, int sleeves, int newCables, String rule) {
        return of(
                Optional.empty(),
                OptionalDouble.empty(),
                innerductsOut,
                positionsNow,
                sleeves,
                newCables,
                rule,
                PACKED);
    }

    /** Returns such a room with what its cross-section says. */
    public static Room of(
            Optional<String> contradiction,
            OptionalDouble jamRatio,
            int innerductsOut,
            int positionsNow,
            int sleeves,
            int newCables,
            String rule,
            Packing after) {
        PullChoice now = choice(0, innerductsOut, new Positions(positionsNow, 0, 0, 0), positionsNow, 0, rule, PACKED);
        PullChoice all =
                choice(innerductsOut, 0, new Positions(0, 0, newCables, 0), positionsNow, sleeves, rule, after);
        var section = new CrossSection(PACKED, contradiction, jamRatio, List.of(now, all));
        return new Room(8213, Optional.of(section), Optional.of(all), Optional.empty());
    }

    /** Returns a choice by what decides about it: filled by half now, by a tenth once innerducts are out. */
    public static PullChoice choice(
            int out, int left, Positions positions, int now, int sleeves, String rule, Packing after) {
        double fillRatio = out == 0 ? 0.51 : 0.091;
        return new PullChoice(
                out,
                0,
                0,
                true,
                left,
                positions,
                now,
                sleeves,
                rule,
                Optional.empty(),
                fillRatio,
                fillRatio + 0.01 * positions.beside(),
                out == 0 ? 0 : 3456.78,
                after);
    }

    /** Returns the room of a duct in which cables have room beside the innerducts today. */
    public static Room beside(int besideNow, int newCables) {
        PullChoice now = choice(0, 1, new Positions(0, 0, besideNow, 0), besideNow, 1, Room.FREE_BORE, PACKED);
        PullChoice all = choice(1, 0, new Positions(0, 0, newCables, 0), besideNow, 3, Room.SLEEVES_PER_DUCT, PACKED);
        var section = new CrossSection(PACKED, Optional.empty(), OptionalDouble.empty(), List.of(now, all));
        return new Room(8213, Optional.of(section), Optional.of(all), Optional.empty());
    }
}

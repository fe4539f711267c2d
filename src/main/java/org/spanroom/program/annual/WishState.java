package org.spanroom.program.annual;

import java.util.Arrays;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.NewDucts;
import org.spanroom.program.design.Piece;

/**
 * Which tasks are done and which new ducts are built when, and how many cables lie in each bin by the end of each year. Every change can be taken back. Not thread-safe.
 *
 * <p>The bins of a piece and the new ducts that could be built there are its slots, numbered through all pieces.
 */
final class WishState {
    private static final int TASK = 0;
    private static final int DUCT = 1;
    private static final int LOAD = 2;
    private static final int OP = 4;

    private final WishNetwork network;
    private final int years;
    private final YearAccount account;
    private final int[] slotStart;
    private final int[] pieceOf;
    private final int[] yearOf;
    private final int[] builtIn;
    private final int[] load;
    private final long[][] firstUnits;
    private final long[][] furtherUnits;
    private final boolean[] isTouched;
    private final int[] touched;
    private int touchedCount;
    private int[] ops = new int[OP * 64];
    private int opCount;
    private double taskValue;

    WishState(WishNetwork network, YearAccount account) {
        this.network = network;
        this.account = account;
        years = network.problem().years();
        slotStart = new int[network.pieces() + 1];
        for (int piece = 0; piece < network.pieces(); piece++) {
            Piece each = network.piece(piece);
            slotStart[piece + 1] =
                    slotStart[piece] + each.bins().size() + each.more().most();
        }
        int slots = slotStart[network.pieces()];
        pieceOf = new int[slots];
        builtIn = new int[slots];
        Arrays.fill(builtIn, YearPlan.NEVER);
        load = new int[slots * years];
        yearOf = new int[network.problem().tasks().size()];
        Arrays.fill(yearOf, YearPlan.NEVER);
        firstUnits = new long[network.pieces()][];
        furtherUnits = new long[network.pieces()][];
        for (int piece = 0; piece < network.pieces(); piece++) {
            Arrays.fill(pieceOf, slotStart[piece], slotStart[piece + 1], piece);
            firstUnits[piece] = units(piece, true);
            furtherUnits[piece] = units(piece, false);
        }
        isTouched = new boolean[network.links()];
        touched = new int[network.links()];
        recount();
    }

    private long[] units(int piece, boolean isFirst) {
        long[] units = new long[network.problem().resources()];
        for (int resource = 0; resource < units.length; resource++) {
            units[resource] = account.units(network.connections().buildUse(piece, resource, isFirst), resource);
        }
        return units;
    }

    /** Sums the values of tasks up from the start, so that roundings do not add up. */
    void recount() {
        taskValue = 0;
        for (int task = 0; task < yearOf.length; task++) {
            taskValue += value(task, yearOf[task]);
        }
    }

    private double value(int task, int year) {
        Task each = network.problem().tasks().get(task);
        return year < 0 ? each.valueNever() : each.values().get(year);
    }

    double taskValue() {
        return taskValue;
    }

    YearAccount account() {
        return account;
    }

    int years() {
        return years;
    }

    int slotStart(int piece) {
        return slotStart[piece];
    }

    int pieceOf(int slot) {
        return pieceOf[slot];
    }

    /** Returns the year in which a task is done, or {@link YearPlan#NEVER}. */
    int yearOf(int task) {
        return yearOf[task];
    }

    /** Returns the year in which the new duct of a slot is built, or {@link YearPlan#NEVER}. */
    int builtIn(int slot) {
        return builtIn[slot];
    }

    /** Returns how many cables lie in a slot by the end of a year. */
    int load(int slot, int year) {
        return load[slot * years + year];
    }

    /** Returns the task of a slot, or -1. */
    int taskOf(int slot) {
        int piece = pieceOf[slot];
        return isDuct(slot) ? -1 : network.taskOf(piece, slot - slotStart[piece]);
    }

    boolean isDuct(int slot) {
        int piece = pieceOf[slot];
        return slot - slotStart[piece] >= network.piece(piece).bins().size();
    }

    /** Returns the positions of a slot by the end of a year. */
    int positions(int slot, int year) {
        int piece = pieceOf[slot];
        if (isDuct(slot)) {
            NewDucts more = network.piece(piece).more();
            return builtIn[slot] >= 0 && builtIn[slot] <= year ? more.positions() : 0;
        }
        Bin bin = network.piece(piece).bins().get(slot - slotStart[piece]);
        int task = network.taskOf(piece, slot - slotStart[piece]);
        return task >= 0 && yearOf[task] >= 0 && yearOf[task] <= year ? bin.after() : bin.now();
    }

    /** Returns the first year from which on a slot takes so many cables more; the number of years where there is none. */
    int freeFrom(int slot, int cables) {
        int year = years;
        while (year > 0 && positions(slot, year - 1) - load(slot, year - 1) >= cables) {
            year--;
        }
        return year;
    }

    /** Returns whether a done task, or a built duct, is needed by what lies in its bins. */
    boolean isNeeded(int slot) {
        if (isDuct(slot)) {
            return load(slot, years - 1) > 0;
        }
        return isTaskNeeded(taskOf(slot));
    }

    /** Returns whether more cables lie in some bin of a task than it takes as it is. */
    boolean isTaskNeeded(int task) {
        for (int index = 0; index < network.piecesOfTask(task).length; index++) {
            int piece = network.piecesOfTask(task)[index];
            int bin = network.binsOfTask(task)[index];
            if (load(slotStart[piece] + bin, years - 1) > network.piece(piece).bins().get(bin).now()) {
                return true;
            }
        }
        return false;
    }

    /** Moves a task to a year, or never. */
    void setTask(int task, int year) {
        note(TASK, task, yearOf[task], 0);
        moveTask(task, year);
    }

    private void moveTask(int task, int year) {
        taskValue += value(task, year) - value(task, yearOf[task]);
        if (yearOf[task] >= 0) {
            account.remove(task, yearOf[task]);
        }
        yearOf[task] = year;
        if (year >= 0) {
            account.add(task, year);
        }
        for (int piece : network.piecesOfTask(task)) {
            touch(piece);
        }
    }

    /** Moves the building of a slot's new duct to a year, or never. */
    void setDuct(int slot, int year) {
        note(DUCT, slot, builtIn[slot], 0);
        moveDuct(slot, year);
    }

    private void moveDuct(int slot, int year) {
        int piece = pieceOf[slot];
        useDucts(piece, -1);
        builtIn[slot] = year;
        useDucts(piece, 1);
        touch(piece);
    }

    /** The earliest duct of a piece is its first. */
    private void useDucts(int piece, int by) {
        int first = -1;
        for (int slot = slotStart[piece]; slot < slotStart[piece + 1]; slot++) {
            if (builtIn[slot] >= 0 && (first < 0 || builtIn[slot] < builtIn[first])) {
                first = slot;
            }
        }
        for (int slot = slotStart[piece]; slot < slotStart[piece + 1]; slot++) {
            if (builtIn[slot] >= 0) {
                long[] units = (slot == first ? firstUnits : furtherUnits)[piece].clone();
                for (int resource = 0; resource < units.length; resource++) {
                    units[resource] *= by;
                }
                account.use(builtIn[slot], units);
            }
        }
    }

    /** Adds cables to a slot from a year on; a negative number removes them. */
    void addLoad(int slot, int fromYear, int cables) {
        note(LOAD, slot, fromYear, cables);
        moveLoad(slot, fromYear, cables);
    }

    private void moveLoad(int slot, int fromYear, int cables) {
        for (int year = fromYear; year < years; year++) {
            load[slot * years + year] += cables;
        }
        touch(pieceOf[slot]);
    }

    private void touch(int piece) {
        int link = network.linkOf(piece);
        if (link >= 0 && !isTouched[link]) {
            isTouched[link] = true;
            touched[touchedCount++] = link;
        }
    }

    /** Returns a link that was changed since it was returned last, each once; -1 where there is none left. */
    int nextTouched() {
        if (touchedCount == 0) {
            return -1;
        }
        int link = touched[--touchedCount];
        isTouched[link] = false;
        return link;
    }

    private void note(int kind, int number, int old, int cables) {
        if (opCount * OP == ops.length) {
            ops = Arrays.copyOf(ops, 2 * ops.length);
        }
        int at = opCount++ * OP;
        ops[at] = kind;
        ops[at + 1] = number;
        ops[at + 2] = old;
        ops[at + 3] = cables;
    }

    /** Returns how many changes can be taken back. */
    int mark() {
        return opCount;
    }

    /** Makes all changes so far final. */
    void forget() {
        opCount = 0;
    }

    /** Takes back the changes since a mark. */
    void undo(int mark) {
        while (opCount > mark) {
            int at = --opCount * OP;
            if (ops[at] == TASK) {
                moveTask(ops[at + 1], ops[at + 2]);
            } else if (ops[at] == DUCT) {
                moveDuct(ops[at + 1], ops[at + 2]);
            } else {
                moveLoad(ops[at + 1], ops[at + 2], -ops[at + 3]);
            }
        }
    }
}

package org.spanroom.program.design;

/**
 * A duct of a piece, as a bin for cables.
 *
 * @param now positions that are free today, at no cost
 * @param after positions once the duct is recovered; equal to {@code now} where it cannot be, or gains nothing
 * @param money cost of recovering it, paid once; 0 where {@code after} equals {@code now}
 */
public record Bin(int now, int after, double money) {
    public Bin {
        if (now < 0 || after < now || !(money >= 0) || Double.isInfinite(money)) {
            throw new IllegalArgumentException("now " + now + ", after " + after + ", money " + money);
        }
    }

    /** Returns whether recovery adds a position. */
    public boolean isRecoverable() {
        return after > now;
    }
}

package org.spanroom.program.design;

/**
 * Further ducts that could be built on the path of a piece: each is a bin of its own.
 *
 * @param positions cables that each of them takes
 * @param firstMoney cost of the first, with its trench or bore
 * @param furtherMoney cost of each one after it, in the same trench or bore
 * @param most how many may be built; 0 where none may
 */
public record NewDucts(int positions, double firstMoney, double furtherMoney, int most) {
    /** No duct may be built. */
    public static final NewDucts NONE = new NewDucts(0, 0, 0, 0);

    public NewDucts {
        if (positions < 0 || most < 0 || !(firstMoney >= 0) || !(furtherMoney >= 0)) {
            throw new IllegalArgumentException("positions " + positions + ", most " + most);
        }
    }

    /** Returns the cost of so many of them. */
    public double money(int ducts) {
        return ducts == 0 ? 0 : firstMoney + (ducts - 1) * furtherMoney;
    }
}

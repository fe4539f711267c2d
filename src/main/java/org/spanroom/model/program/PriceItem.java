package org.spanroom.model.program;

/**
 * What a condition of a program costs: how much more the program is worth without it.
 *
 * @param kind must, must_not, stop_window, change_freeze, needed_by or crew
 * @param name of the condition
 * @param valueMoney what the program would be worth in addition
 * @param positions positions that it would add in addition; below 0 where it would add fewer
 * @param connections connections that it would serve in addition
 * @param spentMoney money that it would spend in addition
 */
public record PriceItem(
        String kind, String name, double valueMoney, int positions, int connections, double spentMoney) {}

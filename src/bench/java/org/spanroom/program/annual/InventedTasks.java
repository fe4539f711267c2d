package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * An invented city of tasks: sections as the edges of a grid of vaults, each with 1 to 3 ducts to recover; money and crew-hours of every year and
 * the hours of each of four districts are limited, and the set-up of a vault is shared. Costs and values are invented.
 */
final class InventedTasks {
    private static final int DISTRICTS = 4;
    private static final int RESOURCES = 2 + DISTRICTS;
    private static final double SET_UP_HOURS = 0.6;
    private static final double SET_UP_MONEY = 90;
    private static final double MUSTS = 0.03;
    private static final double LATER = 0.1;
    private static final double VALUE_KEPT_IN_YEAR = 0.96;
    private static final double SHARE_OF_MONEY = 0.45;
    private static final double SHARE_OF_HOURS = 0.5;
    private static final double SHARE_OF_DISTRICT = 0.3;

    private final SplittableRandom random;
    private final int years;
    private final int side;

    private InventedTasks(int sections, int years, long seed) {
        random = new SplittableRandom(seed);
        this.years = years;
        side = (int) Math.max(2, Math.round(Math.sqrt(sections / 2.0)));
    }

    /** Returns a city of about so many sections, with twice as many tasks. */
    static YearProblem drawn(int sections, int years, long seed) {
        return new InventedTasks(sections, years, seed).city();
    }

    private YearProblem city() {
        List<Task> tasks = new ArrayList<>();
        for (int vault = 0; vault < side * side; vault++) {
            if (vault % side + 1 < side) {
                section(vault, vault + 1, tasks);
            }
            if (vault + side < side * side) {
                section(vault, vault + side, tasks);
            }
        }
        var used = new double[RESOURCES];
        for (Task task : tasks) {
            for (int resource = 0; resource < RESOURCES; resource++) {
                used[resource] += task.uses().get(resource);
            }
        }
        List<Double> limits = IntStream.range(0, RESOURCES)
                .mapToObj(resource -> Math.rint(used[resource] * share(resource) / years))
                .toList();
        return new YearProblem(
                IntStream.range(0, years).mapToObj(year -> limits).toList(), tasks, side * side, Optional.empty());
    }

    private static double share(int resource) {
        return resource == YearProblem.MONEY
                ? SHARE_OF_MONEY
                : resource == YearProblem.HOURS ? SHARE_OF_HOURS : SHARE_OF_DISTRICT + 0.15 * (resource - 2);
    }

    private void section(int from, int to, List<Task> tasks) {
        double lengthM = random.nextInt(40, 160);
        int district = from % side * 2 / side + 2 * (from / side * 2 / side);
        int ducts = 1 + random.nextInt(3);
        for (int duct = 0; duct < ducts; duct++) {
            tasks.add(task(List.of(from, to), lengthM, district));
        }
    }

    private Task task(List<Integer> places, double lengthM, int district) {
        double hours = Math.rint(10 * (2 * SET_UP_HOURS + 1 + lengthM * random.nextDouble(0.01, 0.05))) / 10;
        double money = Math.rint(2 * SET_UP_MONEY + hours * 85 + lengthM * random.nextDouble(2, 9));
        double worth = lengthM * random.nextDouble(5, 60) - 400;
        int first = random.nextDouble() < LATER ? random.nextInt(years) : 0;
        int last = random.nextDouble() < LATER ? first + random.nextInt(years - first) : years - 1;
        List<Double> values = IntStream.range(0, years)
                .mapToObj(year -> Math.rint(worth * Math.pow(VALUE_KEPT_IN_YEAR, year)))
                .toList();
        List<SetUp> setUps = places.stream()
                .map(place -> new SetUp(place, uses(SET_UP_MONEY, SET_UP_HOURS, district)))
                .toList();
        boolean isMust = random.nextDouble() < MUSTS;
        return new Task(values, 0, uses(money, hours, district), first, last, isMust, setUps);
    }

    private static List<Double> uses(double money, double hours, int district) {
        return IntStream.range(0, RESOURCES)
                .mapToObj(resource -> resource == YearProblem.MONEY
                        ? money
                        : resource == YearProblem.HOURS || resource == 2 + district ? hours : 0.0)
                .toList();
    }
}

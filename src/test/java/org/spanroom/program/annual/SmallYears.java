package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/** Problems that are small enough to try every plan: up to six tasks, three years and three resources, set-ups shared at three places. */
final class SmallYears {
    private final SplittableRandom random;
    private final int years;
    private final int resources;

    private SmallYears(long seed) {
        random = new SplittableRandom(seed);
        years = 1 + random.nextInt(3);
        resources = 1 + random.nextInt(3);
    }

    static YearProblem draw(long seed) {
        return new SmallYears(seed).problem(seed % 3 == 0);
    }

    private YearProblem problem(boolean hasFractions) {
        List<List<Double>> limits = new ArrayList<>();
        for (int year = 0; year < years; year++) {
            List<Double> ofYear = new ArrayList<>();
            for (int resource = 0; resource < resources; resource++) {
                ofYear.add(random.nextInt(12) == 0 ? Double.POSITIVE_INFINITY : amount(25, hasFractions));
            }
            limits.add(ofYear);
        }
        List<Task> tasks = new ArrayList<>();
        int count = 1 + random.nextInt(6);
        for (int task = 0; task < count; task++) {
            tasks.add(task(hasFractions));
        }
        return new YearProblem(limits, tasks, 3, Optional.empty());
    }

    private double amount(int most, boolean hasFractions) {
        int whole = random.nextInt(most);
        return hasFractions ? whole * 0.7 + random.nextInt(4) * 0.1 : whole;
    }

    private Task task(boolean hasFractions) {
        List<SetUp> setUps = new ArrayList<>();
        for (int place = 0; place < 3; place++) {
            if (random.nextInt(2) == 0) {
                List<Double> uses = new ArrayList<>();
                for (int resource = 0; resource < resources; resource++) {
                    uses.add(amount(5, hasFractions));
                }
                setUps.add(new SetUp(place, uses));
            }
        }
        List<Double> uses = new ArrayList<>();
        for (int resource = 0; resource < resources; resource++) {
            double use = amount(8, hasFractions);
            for (SetUp setUp : setUps) {
                use += setUp.uses().get(resource);
            }
            uses.add(use);
        }
        List<Double> values = new ArrayList<>();
        for (int year = 0; year < years; year++) {
            values.add(amount(30, hasFractions) - 6);
        }
        double never = random.nextInt(4) == 0 ? -amount(10, hasFractions) : 0;
        int first = random.nextInt(3) == 0 ? random.nextInt(years) : 0;
        int last = random.nextInt(3) == 0 ? random.nextInt(years) : years - 1;
        return new Task(values, never, uses, first, last, random.nextInt(6) == 0, setUps);
    }

    /** Returns the best value of all plans, each checked from scratch; empty where there is none. */
    static OptionalDouble best(YearProblem problem) {
        return best(problem, new ArrayList<>());
    }

    private static OptionalDouble best(YearProblem problem, List<Integer> years) {
        if (years.size() == problem.tasks().size()) {
            return isWithin(problem, years) ? OptionalDouble.of(value(problem, years)) : OptionalDouble.empty();
        }
        Task task = problem.tasks().get(years.size());
        OptionalDouble best = OptionalDouble.empty();
        for (int year = task.isMust() ? 0 : YearPlan.NEVER; year < problem.years(); year++) {
            if (year == YearPlan.NEVER || task.isPossibleIn(year)) {
                years.add(year);
                OptionalDouble other = best(problem, years);
                years.remove(years.size() - 1);
                best = other.isPresent() && !(other.getAsDouble() <= best.orElse(Double.NEGATIVE_INFINITY))
                        ? other
                        : best;
            }
        }
        return best;
    }

    private static double value(YearProblem problem, List<Integer> years) {
        double value = 0;
        for (int task = 0; task < years.size(); task++) {
            Task each = problem.tasks().get(task);
            int year = years.get(task);
            value += year == YearPlan.NEVER ? each.valueNever() : each.values().get(year);
        }
        return value;
    }

    private static boolean isWithin(YearProblem problem, List<Integer> years) {
        for (int year = 0; year < problem.years(); year++) {
            for (int resource = 0; resource < problem.resources(); resource++) {
                double limit = problem.limits().get(year).get(resource);
                if (used(problem, years, year, resource) > limit + 1e-9 * limit) {
                    return false;
                }
            }
        }
        return true;
    }

    /** What the record of the problem says: all uses, less all set-ups of a place but the greatest. */
    private static double used(YearProblem problem, List<Integer> years, int year, int resource) {
        double used = 0;
        for (int place = 0; place < problem.places(); place++) {
            double greatest = 0;
            for (int task = 0; task < years.size(); task++) {
                for (SetUp setUp : problem.tasks().get(task).setUps()) {
                    if (years.get(task) == year && setUp.place() == place) {
                        used -= setUp.uses().get(resource);
                        greatest = Math.max(greatest, setUp.uses().get(resource));
                    }
                }
            }
            used += greatest;
        }
        for (int task = 0; task < years.size(); task++) {
            used += years.get(task) == year ? problem.tasks().get(task).uses().get(resource) : 0;
        }
        return used;
    }
}

package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.NewDucts;
import org.spanroom.program.design.Piece;

/** Problems of two or three years with a few pieces, tasks that share set-ups, free positions, new ducts, musts and last years. */
final class TinyYears {
    private static final int MOST_TASKS = 4;

    private final SplittableRandom random;
    private final int years;
    private final int places;
    private final List<Task> tasks = new ArrayList<>();

    private TinyYears(long seed) {
        random = new SplittableRandom(seed);
        years = random.nextInt(2, 4);
        places = random.nextInt(2, 5);
    }

    static YearProblem drawn(long seed) {
        return new TinyYears(seed).problem();
    }

    private YearProblem problem() {
        List<Piece> pieces = new ArrayList<>();
        List<List<Integer>> taskOfBin = new ArrayList<>();
        int count = random.nextInt(places - 1, places + 2);
        for (int number = 0; number < count; number++) {
            int from = number < places - 1 ? number : random.nextInt(places);
            int to = number < places - 1 ? number + 1 : (from + 1 + random.nextInt(places - 1)) % places;
            List<Integer> tasksHere = new ArrayList<>();
            List<Bin> bins = new ArrayList<>();
            for (int bin = random.nextInt(1, 3); bin > 0; bin--) {
                bins.add(bin(from, to, tasksHere));
            }
            NewDucts more = random.nextInt(5) == 0
                    ? new NewDucts(random.nextInt(1, 4), random.nextInt(4, 20), random.nextInt(1, 10), 1)
                    : NewDucts.NONE;
            pieces.add(new Piece(from, to, random.nextInt(1, 50), bins, more));
            taskOfBin.add(tasksHere);
        }
        List<Integer> firstBuildYears = pieces.stream()
                .map(piece -> piece.more().most() == 0 ? years : random.nextInt(2))
                .toList();
        List<List<Double>> buildUses = pieces.stream()
                .map(piece -> List.of(piece.more().firstMoney(), (double) random.nextInt(5)))
                .toList();
        List<Demand> demands = new ArrayList<>();
        List<Wish> wishes = new ArrayList<>();
        for (int demand = random.nextInt(1, 4); demand > 0; demand--) {
            int from = random.nextInt(places);
            demands.add(new Demand(from, (from + 1 + random.nextInt(places - 1)) % places, random.nextInt(1, 3), 1));
            wishes.add(wish());
        }
        var network = new DesignProblem(places, pieces, demands);
        List<List<Double>> limits =
                IntStream.range(0, years).mapToObj(year -> limits()).toList();
        return new YearProblem(
                limits,
                tasks,
                places,
                Optional.of(new Connections(network, taskOfBin, firstBuildYears, buildUses, wishes)));
    }

    private List<Double> limits() {
        double money = random.nextInt(6) == 0 ? Double.POSITIVE_INFINITY : random.nextInt(0, 25);
        return List.of(money, (double) random.nextInt(0, 15));
    }

    private Bin bin(int from, int to, List<Integer> tasksHere) {
        int now = Math.max(0, random.nextInt(-2, 3));
        int gained = random.nextInt(0, 4);
        if (gained == 0 || tasks.size() == MOST_TASKS) {
            tasksHere.add(-1);
            return new Bin(now, now, 0);
        }
        tasksHere.add(tasks.size());
        double money = random.nextInt(3, 12);
        double hours = random.nextInt(3, 8);
        int first = random.nextInt(4) == 0 ? 1 : 0;
        int last = random.nextInt(6) == 0 ? 0 : years - 1;
        boolean hasValue = random.nextInt(3) == 0;
        List<Double> values = IntStream.range(0, years)
                .mapToObj(year -> hasValue ? (double) random.nextInt(-8, 15) : 0.0)
                .toList();
        double never = random.nextInt(8) == 0 ? -random.nextInt(5) : 0;
        List<SetUp> setUps = List.of(
                new SetUp(from, List.of((double) random.nextInt(2), 1.0)),
                new SetUp(to, List.of(1.0, (double) random.nextInt(2))));
        tasks.add(new Task(values, never, List.of(money, hours), first, last, random.nextInt(15) == 0, setUps));
        return new Bin(now, now + gained, money);
    }

    private Wish wish() {
        double value = random.nextInt(1, 40);
        int last = random.nextInt(years);
        double ratio = random.nextInt(2) == 0 ? 1 : 0.7;
        List<Double> values = new ArrayList<>();
        for (int year = 0; year < years; year++) {
            values.add(year <= last ? value * Math.pow(ratio, year) : 0);
        }
        if (random.nextInt(10) == 0) {
            Collections.reverse(values);
        }
        boolean isMust = random.nextInt(6) == 0;
        return new Wish(values, isMust, isMust ? random.nextInt(years) : last);
    }
}

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
import org.spanroom.program.design.InventedCity;
import org.spanroom.program.design.Piece;

/**
 * An invented city with years: every duct that can be recovered is a task with money, hours and a set-up at both its vaults, new ducts can be built from the second
 * year on, connections are needed by some year, and serving one later is worth a little less. All figures are invented.
 */
final class AnnualCity {
    private static final double LEAST_HOURS = 4;
    private static final double MOST_HOURS = 10;
    private static final double SET_UP_HOURS = 0.6;
    private static final double SET_UP_MONEY = 60;
    private static final double HOURS_OF_DUCT = 40;
    private static final double MONEY_OF_CONNECTION = 10_000;
    private static final double HOURS_OF_CONNECTION = 50;
    private static final double LATER_RATIO = 0.95;
    private static final double MUSTS = 0.05;
    private static final double VALUE_OF_MUST = 50_000;

    private final SplittableRandom random;
    private final DesignProblem network;
    private final int years;
    private final List<Task> tasks = new ArrayList<>();
    private final List<List<Integer>> taskOfBin = new ArrayList<>();

    private AnnualCity(DesignProblem network, int years, long seed) {
        random = new SplittableRandom(seed);
        this.network = network;
        this.years = years;
    }

    /** Returns a city of about so many spans. */
    static YearProblem drawn(int spans, int connections, int years, long seed) {
        return new AnnualCity(InventedCity.drawn(spans, connections, seed), years, seed).problem();
    }

    private YearProblem problem() {
        network.pieces().forEach(piece -> taskOfBin.add(
                piece.bins().stream().map(bin -> task(piece, bin)).toList()));
        List<Integer> firstBuildYears = Collections.nCopies(taskOfBin.size(), 1);
        List<List<Double>> buildUses = network.pieces().stream()
                .map(piece -> List.of(piece.more().firstMoney(), HOURS_OF_DUCT))
                .toList();
        List<Wish> wishes = network.demands().stream().map(this::wish).toList();
        double money = MONEY_OF_CONNECTION * wishes.size() / years;
        double hours = HOURS_OF_CONNECTION * wishes.size() / years;
        return new YearProblem(
                Collections.nCopies(years, List.of(money, hours)),
                tasks,
                network.places(),
                Optional.of(new Connections(network, taskOfBin, firstBuildYears, buildUses, wishes)));
    }

    private int task(Piece piece, Bin bin) {
        if (!bin.isRecoverable()) {
            return -1;
        }
        List<SetUp> setUps = List.of(
                new SetUp(piece.from(), List.of(SET_UP_MONEY, SET_UP_HOURS)),
                new SetUp(piece.to(), List.of(SET_UP_MONEY, SET_UP_HOURS)));
        double hours = LEAST_HOURS + random.nextDouble() * (MOST_HOURS - LEAST_HOURS);
        tasks.add(new Task(
                Collections.nCopies(years, 0.0), 0, List.of(bin.money(), hours), 0, years - 1, false, setUps));
        return tasks.size() - 1;
    }

    private Wish wish(Demand demand) {
        int last = random.nextInt(years);
        boolean isMust = random.nextDouble() < MUSTS;
        double value = demand.isMust() ? VALUE_OF_MUST : demand.prize();
        List<Double> values = IntStream.range(0, years)
                .mapToObj(year -> year <= last ? value * Math.pow(LATER_RATIO, year) : 0)
                .toList();
        return new Wish(values, isMust, isMust ? Math.max(1, last) : last);
    }
}

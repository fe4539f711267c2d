package org.spanroom.program;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.ConnectionResult;
import org.spanroom.model.program.ProgramConnection;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.program.annual.Connections;
import org.spanroom.program.annual.YearPlan;
import org.spanroom.program.annual.YearProblem;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Design;
import org.spanroom.program.design.Piece;

/** What becomes of the connections of a program. */
final class ConnectionOutcomes {
    private final ProgramInputs inputs;
    private final YearProblem problem;
    private final ProgramPlanner.Planned planned;

    ConnectionOutcomes(ProgramInputs inputs, YearProblem problem, ProgramPlanner.Planned planned) {
        this.inputs = inputs;
        this.problem = problem;
        this.planned = planned;
    }

    /**
     * Returns them in the order of their table.
     *
     * @param takes by name of a connection that is not served, what it would take to serve it
     */
    List<ProgramConnection> list(Map<String, String> takes) {
        if (problem.connections().isEmpty()) {
            return List.of();
        }
        var works = new ServedWorks(problem.connections().get(), planned.plan());
        List<ConnectionResult> results = inputs.connectPlan().results(design(), Map.of());
        var rows = new ArrayList<ProgramConnection>();
        int demand = 0;
        for (ConnectionResult result : results) {
            boolean isUsable = result.connection().problem().isEmpty();
            rows.add(isUsable && result.isServed() ? served(demand, result, works) : unserved(result, takes));
            demand += isUsable ? 1 : 0;
        }
        return rows;
    }

    private ProgramConnection served(int demand, ConnectionResult result, ServedWorks works) {
        YearPlan.Served served = planned.plan().served().get(demand).orElseThrow();
        return new ProgramConnection(
                result.connection(),
                result.steps(),
                OptionalInt.of(served.year()),
                Optional.of(servedOn(demand, served, works.tasks(demand))),
                "",
                "");
    }

    /** Returns the day on which the last of its work is done. */
    private LocalDate servedOn(int demand, YearPlan.Served served, List<Integer> tasks) {
        LocalDate day = inputs.rules().readyOn();
        for (int task : tasks) {
            day = later(day, lastDay(task));
        }
        List<Piece> pieces = inputs.connectPlan().problem().pieces();
        for (int place = 0; place < served.way().size(); place++) {
            int piece = served.way().get(place);
            int built = served.bins().get(place) - pieces.get(piece).bins().size();
            if (built >= 0) {
                int year = Objects.requireNonNull(planned.plan().built().get(piece))
                        .get(built);
                Connection own = inputs.connectPlan().usable().get(demand);
                day = later(
                        day,
                        NewDuctDays.builtBy(
                                inputs,
                                year,
                                inputs.network().sections().get(piece).newDuct(),
                                List.of(own)));
            }
        }
        return day;
    }

    private LocalDate lastDay(int task) {
        String span = inputs.eligibleSpans().get(task).facts().spanId();
        return planned.calendar().entries().stream()
                .filter(entry -> entry.order().spanId().equals(span))
                .map(WorkCalendar.Entry::days)
                .map(days -> days.get(days.size() - 1))
                .findFirst()
                .orElse(LocalDate.MIN);
    }

    private static LocalDate later(LocalDate one, LocalDate other) {
        return other.isAfter(one) ? other : one;
    }

    private ProgramConnection unserved(ConnectionResult result, Map<String, String> takes) {
        Connection connection = result.connection();
        String whyNot = connection.problem().orElseGet(() -> whyNot(connection));
        return new ProgramConnection(
                connection,
                List.of(),
                OptionalInt.empty(),
                Optional.empty(),
                whyNot,
                takes.getOrDefault(connection.name(), ""));
    }

    private String whyNot(Connection connection) {
        LocalDate first = inputs.rules().years().get(0).from();
        if (connection.neededBy().filter(first::isAfter).isPresent()) {
            return "needed by " + connection.neededBy().get() + ", before the program begins on " + first;
        }
        return connection.neededBy().isPresent()
                ? "until " + connection.neededBy().get()
                        + ", other work is worth more, or the budget or the hours are too small"
                : "other work is worth more, or the budget or the hours are too small";
    }

    /** Returns the plan of all years together as a design, from which shares of costs follow. */
    private Design design() {
        Connections all = problem.connections().orElseThrow();
        var ways = new ArrayList<List<Integer>>();
        Map<Integer, Map<Integer, Integer>> binOf = new HashMap<>();
        for (int demand = 0; demand < all.wishes().size(); demand++) {
            Optional<YearPlan.Served> served = planned.plan().served().get(demand);
            ways.add(served.map(YearPlan.Served::way).orElse(List.of()));
            for (int place = 0; served.isPresent() && place < served.get().way().size(); place++) {
                binOf.computeIfAbsent(served.get().way().get(place), none -> new HashMap<>())
                        .put(demand, served.get().bins().get(place));
            }
        }
        Map<Integer, Design.Use> uses = new HashMap<>();
        binOf.forEach((piece, bins) -> uses.put(piece, use(all, piece, bins)));
        return new Design(ways, uses, 0, 0);
    }

    private Design.Use use(Connections all, int piece, Map<Integer, Integer> bins) {
        var recovered = new ArrayList<Integer>();
        List<Integer> tasks = all.taskOfBin().get(piece);
        List<Bin> of = all.network().pieces().get(piece).bins();
        for (int bin = 0; bin < tasks.size(); bin++) {
            boolean isDone = tasks.get(bin) >= 0 && planned.plan().yearOf().get(tasks.get(bin)) != YearPlan.NEVER;
            if (isDone && cables(all, bins, bin) > of.get(bin).now()) {
                recovered.add(bin);
            }
        }
        int built = planned.plan().built().getOrDefault(piece, List.of()).size();
        return new Design.Use(bins, recovered, built, 0);
    }

    private static int cables(Connections all, Map<Integer, Integer> bins, int bin) {
        return bins.entrySet().stream()
                .filter(entry -> entry.getValue() == bin)
                .mapToInt(entry -> all.network().demands().get(entry.getKey()).cables())
                .sum();
    }
}

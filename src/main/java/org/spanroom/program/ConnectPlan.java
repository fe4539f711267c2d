package org.spanroom.program;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.spanroom.model.Counted;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.ConnectionResult;
import org.spanroom.model.program.ConnectionStep;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.Gap;
import org.spanroom.model.program.NewDuctOffer;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.WayStep;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.Design;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.NewDucts;
import org.spanroom.program.design.Piece;
import org.spanroom.program.design.Unserved;

/** Connections through the network of a run as a design problem, and a design as what becomes of each connection. */
public final class ConnectPlan {
    /** New ducts that may be built in one section: more than any bank gets in one trench. */
    private static final int MOST_NEW_DUCTS = 8;

    private final DuctNetwork network;
    private final List<Connection> connections;
    private final List<Connection> usable = new ArrayList<>();
    private final DesignProblem problem;

    /**
     * Prepares the problem.
     *
     * @param connections rows with a problem are left out of it
     * @param serveAll whether each is served at any cost; otherwise those that are no must only if they are worth it
     */
    public ConnectPlan(DuctNetwork network, List<Connection> connections, boolean serveAll) {
        this.network = network;
        var gaps = new GapFinder(network);
        this.connections = connections.stream().map(row -> checked(row, gaps)).toList();
        var demands = new ArrayList<Demand>();
        for (Connection connection : this.connections) {
            if (connection.problem().isEmpty()) {
                usable.add(connection);
                double prize = serveAll || connection.must()
                        ? Double.POSITIVE_INFINITY
                        : connection.value().orElse(0);
                demands.add(new Demand(
                        network.find(connection.from()).orElseThrow(),
                        network.find(connection.to()).orElseThrow(),
                        connection.cables(),
                        prize));
            }
        }
        problem = new DesignProblem(
                network.vaults().size(),
                network.sections().stream().map(ConnectPlan::piece).toList(),
                demands);
    }

    public DesignProblem problem() {
        return problem;
    }

    /** Returns all connections in the order of the table; those that cannot be used say why. */
    public List<Connection> connections() {
        return connections;
    }

    /** Returns the connections of the problem, in the order of its demands. */
    public List<Connection> usable() {
        return Collections.unmodifiableList(usable);
    }

    private Connection checked(Connection row, GapFinder gaps) {
        if (row.problem().isPresent()) {
            return row;
        }
        if (row.from().equals(row.to())) {
            return row.withProblem("it connects vault " + row.from() + " to itself");
        }
        for (String vault : List.of(row.from(), row.to())) {
            if (network.find(vault).isEmpty()) {
                return row.withProblem("no span of the run ends at vault " + vault);
            }
        }
        int from = network.find(row.from()).orElseThrow();
        int to = network.find(row.to()).orElseThrow();
        return gaps.isJoined(from, to, row.cables()) ? row : row.withProblem(words(row, gaps.find(from, to)));
    }

    private String words(Connection row, Gap gap) {
        if (gap.isJoined()) {
            return gap.widestCables() == 0
                    ? "every way has a section that takes no cable: no free position, no duct to recover, no price of a new one"
                    : "no way takes " + Counted.of(row.cables(), "cable") + " in one duct, recovered or new; at most "
                            + gap.widestCables() + " can go together";
        }
        return "no sections join its vaults"
                + gap.ends()
                        .map(ends -> String.format(
                                Locale.ROOT,
                                "; the gap is narrowest between vault %s and vault %s, %,.0f m apart",
                                network.vaultId(ends.from()),
                                network.vaultId(ends.to()),
                                ends.gapM()))
                        .orElse("");
    }

    private static Piece piece(SectionOffer section) {
        List<Bin> bins = section.ducts().stream()
                .map(duct -> new Bin(
                        duct.positionsNow(),
                        duct.positionsAfter(),
                        duct.recovery()
                                .map(recovery -> recovery.costs().money())
                                .orElse(0.0)))
                .toList();
        NewDuctOffer offer = section.newDuct();
        NewDucts more = offer.positions() == 0
                ? NewDucts.NONE
                : new NewDucts(
                        offer.positions(),
                        offer.first().money(),
                        Math.max(0, offer.further().money()),
                        MOST_NEW_DUCTS);
        return new Piece(section.from(), section.to(), section.lengthM(), bins, more);
    }

    /** Returns what becomes of each connection, in the order of the table. */
    public List<ConnectionResult> results(Design design, Map<Integer, Unserved> unserved) {
        Map<Connection, Integer> numbers = new HashMap<>();
        usable.forEach(connection -> numbers.put(connection, numbers.size()));
        return connections.stream()
                .map(connection -> connection
                        .problem()
                        .map(why -> new ConnectionResult(connection, List.of(), why, Double.POSITIVE_INFINITY))
                        .orElseGet(() -> result(connection, numbers.getOrDefault(connection, -1), design, unserved)))
                .toList();
    }

    private ConnectionResult result(Connection connection, int demand, Design design, Map<Integer, Unserved> unserved) {
        List<Integer> way = design.ways().get(demand);
        if (way.isEmpty()) {
            Unserved why =
                    unserved.getOrDefault(demand, new Unserved(Unserved.Reason.NO_WAY, Double.POSITIVE_INFINITY));
            return new ConnectionResult(connection, List.of(), words(connection, why), why.leastMoney());
        }
        var steps = new ArrayList<ConnectionStep>();
        int at = network.find(connection.from()).orElseThrow();
        for (int piece : way) {
            SectionOffer section = network.sections().get(piece);
            Design.Use use = Objects.requireNonNull(design.uses().get(piece));
            steps.add(step(section, section.from() == at, demand, use));
            at = section.other(at);
        }
        return new ConnectionResult(connection, steps, "", 0);
    }

    private ConnectionStep step(SectionOffer section, boolean forward, int demand, Design.Use use) {
        int bin = use.binOf().getOrDefault(demand, -1);
        int ducts = section.ducts().size();
        boolean built = bin >= ducts;
        boolean recovered = use.recovered().contains(bin);
        Optional<DuctOffer> duct =
                built ? Optional.empty() : Optional.of(section.ducts().get(bin));
        WayStep.Action action = built ? WayStep.Action.BUILD : recovered ? WayStep.Action.RECOVER : WayStep.Action.FREE;
        var step =
                new WayStep(section, forward, action, duct, built ? Optional.of(section.newDuct()) : Optional.empty());
        var others = new TreeMap<String, Integer>();
        int cables = 0;
        for (var entry : use.binOf().entrySet()) {
            if (entry.getValue() == bin) {
                Connection other = usable.get(entry.getKey());
                cables += other.cables();
                if (entry.getKey() != demand) {
                    others.put(other.name(), other.cables());
                }
            }
        }
        Costs cost = built ? ofNewDuct(section.newDuct(), use.built()) : step.costs();
        double share = cost.money() * usable.get(demand).cables() / cables;
        return new ConnectionStep(step, built ? bin - ducts + 1 : 0, cost, share, List.copyOf(others.keySet()), cables);
    }

    /** The ducts that are built together share their trench or bore equally. */
    private static Costs ofNewDuct(NewDuctOffer offer, int built) {
        return offer.first().plus(offer.further().times(built - 1.0)).times(1.0 / built);
    }

    private static String worth(Connection connection, double money) {
        if (connection.value().isEmpty()) {
            return ", and the table gives it no value";
        }
        double value = connection.value().getAsDouble();
        return money > value ? String.format(Locale.ROOT, ", more than its value of %,.0f", value) : "";
    }

    private static String words(Connection connection, Unserved why) {
        return switch (why.reason()) {
            case NO_WAY -> "no sections that take a cable join its vaults";
            case TOO_MANY_CABLES ->
                "on every way some section has no duct that takes " + connection.cables()
                        + " cables together, recovered or new";
            case NOT_WORTH_IT ->
                String.format(Locale.ROOT, "serving it would cost %,.0f in addition", why.leastMoney())
                        + worth(connection, why.leastMoney());
            case CROWDED_OUT -> "with the other connections no room is left on any way";
        };
    }
}

package org.spanroom.program;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.program.annual.Connections;
import org.spanroom.program.annual.YearPlan;

/** Which tasks and new ducts the served connections of a year plan need. */
final class ServedWorks {
    private final Connections connections;
    private final YearPlan plan;

    ServedWorks(Connections connections, YearPlan plan) {
        this.connections = connections;
        this.plan = plan;
    }

    /** Returns the tasks that a demand's way hangs on: those of bins whose free positions do not suffice for all that is in them by its year. */
    List<Integer> tasks(int demand) {
        Optional<YearPlan.Served> served = plan.served().get(demand);
        if (served.isEmpty()) {
            return List.of();
        }
        var tasks = new ArrayList<Integer>();
        for (int place = 0; place < served.get().way().size(); place++) {
            int piece = served.get().way().get(place);
            int bin = served.get().bins().get(place);
            List<Integer> ofBins = connections.taskOfBin().get(piece);
            if (bin < ofBins.size()
                    && ofBins.get(bin) >= 0
                    && plan.yearOf().get(ofBins.get(bin)) != YearPlan.NEVER
                    && cables(piece, bin, served.get().year())
                            > connections.network().pieces().get(piece).bins().get(bin).now()) {
                tasks.add(ofBins.get(bin));
            }
        }
        return tasks;
    }

    private int cables(int piece, int bin, int year) {
        int cables = 0;
        for (int demand = 0; demand < plan.served().size(); demand++) {
            Optional<YearPlan.Served> other = plan.served().get(demand);
            if (other.isPresent() && other.get().year() <= year) {
                int place = other.get().way().indexOf(piece);
                if (place >= 0 && other.get().bins().get(place) == bin) {
                    cables += connections.network().demands().get(demand).cables();
                }
            }
        }
        return cables;
    }

    /** Returns, for each task that a connection hangs on, the demands that do, in their order. */
    Map<Integer, List<Integer>> demandsByTask() {
        var demands = new HashMap<Integer, List<Integer>>();
        for (int demand = 0; demand < plan.served().size(); demand++) {
            for (int task : tasks(demand)) {
                demands.computeIfAbsent(task, none -> new ArrayList<>()).add(demand);
            }
        }
        return demands;
    }

    /** Returns the plan without some tasks: what hangs on them is not served, and new ducts that none needs any longer are not built. */
    static YearPlan without(Optional<Connections> connections, YearPlan plan, Set<Integer> dropped) {
        var years = new ArrayList<>(plan.yearOf());
        dropped.forEach(task -> years.set(task, YearPlan.NEVER));
        List<Optional<YearPlan.Served>> served = new ArrayList<>(plan.served());
        if (connections.isPresent()) {
            var works = new ServedWorks(connections.get(), plan);
            for (int demand = 0; demand < served.size(); demand++) {
                if (!Collections.disjoint(works.tasks(demand), dropped)) {
                    served.set(demand, Optional.empty());
                }
            }
        }
        return new YearPlan(years, served, stillBuilt(connections, plan, served), plan.value(), plan.uses());
    }

    private static Map<Integer, List<Integer>> stillBuilt(
            Optional<Connections> connections, YearPlan plan, List<Optional<YearPlan.Served>> served) {
        if (connections.isEmpty()) {
            return plan.built();
        }
        Set<Integer> used = new HashSet<>();
        for (Optional<YearPlan.Served> way : served) {
            for (int place = 0; way.isPresent() && place < way.get().way().size(); place++) {
                int piece = way.get().way().get(place);
                if (way.get().bins().get(place)
                        >= connections.get().network().pieces().get(piece).bins().size()) {
                    used.add(piece);
                }
            }
        }
        var built = new HashMap<>(plan.built());
        built.keySet().retainAll(used);
        return built;
    }
}

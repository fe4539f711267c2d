package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * What became of a connection.
 *
 * @param steps its way; none where it is not served
 * @param whyNot why it is not served, in one phrase; empty where it is
 * @param leastMoney what serving it would cost at least, in addition; infinite where no way takes it
 */
public record ConnectionResult(Connection connection, List<ConnectionStep> steps, String whyNot, double leastMoney) {
    public ConnectionResult {
        steps = List.copyOf(steps);
    }

    public boolean isServed() {
        return !steps.isEmpty();
    }

    /** Finds its way. */
    public Optional<Way> findWay() {
        return isServed()
                ? Optional.of(new Way(
                        connection.cables(),
                        steps.stream().map(ConnectionStep::step).toList()))
                : Optional.empty();
    }

    /** Returns its part of all costs. */
    public double shareMoney() {
        return steps.stream().mapToDouble(ConnectionStep::shareMoney).sum();
    }

    /** Returns the names of the connections that pay with it for a duct, sorted. */
    public List<String> sharedWith() {
        var names = new TreeSet<String>();
        steps.stream().filter(step -> step.cost().money() > 0).forEach(step -> names.addAll(step.sharedWith()));
        return List.copyOf(names);
    }

    /** Returns whether its work can begin on the day by which it is needed or before; empty where it is not served or no day is given. */
    public Optional<Boolean> isOnTime(LocalDate onDate) {
        return findWay()
                .flatMap(way ->
                        connection.neededBy().map(day -> !way.earliest(onDate).isAfter(day)));
    }
}

package org.spanroom.program;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.spanroom.model.program.Corridor;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.Way;
import org.spanroom.model.program.WayStep;

/**
 * Finds where spans worth recovering line up.
 *
 * <p>Method: of all sections that take the cables together, free or recovered but not newly built, each end is joined at its vault to at
 * most one other section's end: first sections of one bank, then those that go straight on, the smallest change of direction first. So each
 * section is in exactly one run. Free sections at the ends of a run are cut off, since nothing needs to be done there. Our own rule.
 */
public final class Corridors {
    /** Sharper turns are another street. */
    private static final double MOST_TURN_DEG = 60;

    private static final int NONE = -1;

    private final DuctNetwork network;
    private final int cables;
    private final List<Optional<WayStep>> steps;
    /** The section that goes on at the first and at the second vault of each section. */
    private final int[][] next;

    /** Prepares corridors for so many cables together. */
    public Corridors(DuctNetwork network, int cables) {
        this.network = network;
        this.cables = cables;
        steps = network.sections().stream()
                .map(section ->
                        SectionSteps.find(section, cables).filter(step -> step.action() != WayStep.Action.BUILD))
                .toList();
        next = new int[steps.size()][];
        for (int section = 0; section < next.length; section++) {
            next[section] = new int[] {NONE, NONE};
        }
        join();
    }

    /** Two sections at a vault, which may be joined. */
    private record Joint(int first, int second, int vault, boolean oneBank, double turnDeg) {}

    private void join() {
        List<List<Integer>> at = new ArrayList<>();
        network.vaults().forEach(vault -> at.add(new ArrayList<>()));
        for (int section = 0; section < next.length; section++) {
            if (steps.get(section).isPresent()) {
                at.get(offer(section).from()).add(section);
                at.get(offer(section).to()).add(section);
            }
        }
        for (int vault = 0; vault < at.size(); vault++) {
            joinAt(vault, at.get(vault));
        }
    }

    private void joinAt(int vault, List<Integer> sections) {
        var joints = new ArrayList<Joint>();
        for (int i = 0; i < sections.size(); i++) {
            for (int j = i + 1; j < sections.size(); j++) {
                SectionOffer first = offer(sections.get(i));
                SectionOffer second = offer(sections.get(j));
                double turnDeg = turnDeg(first, second, vault);
                boolean oneBank = first.bankId().equals(second.bankId());
                if (first.other(vault) != second.other(vault) && (oneBank || turnDeg <= MOST_TURN_DEG)) {
                    joints.add(new Joint(sections.get(i), sections.get(j), vault, oneBank, turnDeg));
                }
            }
        }
        joints.sort(Comparator.comparing((Joint joint) -> !joint.oneBank())
                .thenComparingDouble(Joint::turnDeg)
                .thenComparingInt(Joint::first)
                .thenComparingInt(Joint::second));
        for (Joint joint : joints) {
            int firstEnd = end(joint.first(), vault);
            int secondEnd = end(joint.second(), vault);
            if (next[joint.first()][firstEnd] == NONE && next[joint.second()][secondEnd] == NONE) {
                next[joint.first()][firstEnd] = joint.second();
                next[joint.second()][secondEnd] = joint.first();
            }
        }
    }

    private SectionOffer offer(int section) {
        return network.sections().get(section);
    }

    private int end(int section, int vault) {
        return offer(section).from() == vault ? 0 : 1;
    }

    /** Returns the change of direction at a vault between straight lines to the vaults at the other ends; 0 where places are not known. */
    private double turnDeg(SectionOffer first, SectionOffer second, int vault) {
        double[] in = direction(first.other(vault), vault);
        double[] out = direction(vault, second.other(vault));
        double cross = in[0] * out[1] - in[1] * out[0];
        double dot = in[0] * out[0] + in[1] * out[1];
        double turnDeg = Math.toDegrees(Math.abs(Math.atan2(cross, dot)));
        return Double.isNaN(turnDeg) ? 0 : turnDeg;
    }

    private double[] direction(int from, int to) {
        var start = network.vaults().get(from);
        var end = network.vaults().get(to);
        double scale = Math.cos(Math.toRadians(start.latDeg()));
        return new double[] {(end.lonDeg() - start.lonDeg()) * scale, end.latDeg() - start.latDeg()};
    }

    /** Returns the corridors in which something is recovered and gains positions, the one that gains most for its money first. */
    public List<Corridor> ranked() {
        var corridors = new ArrayList<Corridor>();
        boolean[] done = new boolean[next.length];
        for (int section = 0; section < next.length; section++) {
            if (!done[section] && steps.get(section).isPresent()) {
                corridor(run(section, done)).ifPresent(corridors::add);
            }
        }
        corridors.sort(Comparator.comparingDouble(Corridor::metersPerMoney)
                .reversed()
                .thenComparing(
                        corridor -> corridor.way().steps().get(0).section().id()));
        return corridors;
    }

    /** Follows a run from one of its ends to the other; a ring from where it is met. */
    private List<WayStep> run(int section, boolean[] done) {
        int at = section;
        int leave = 0;
        while (next[at][leave] != NONE && next[at][leave] != section) {
            int vault = leave == 0 ? offer(at).from() : offer(at).to();
            int following = next[at][leave];
            leave = 1 - end(following, vault);
            at = following;
        }
        boolean forward = next[at][leave] == NONE ? leave == 0 : leave != 0;
        return collect(at, forward, done);
    }

    private List<WayStep> collect(int start, boolean startForward, boolean[] done) {
        var run = new ArrayList<WayStep>();
        int at = start;
        boolean forward = startForward;
        while (at != NONE && !done[at]) {
            done[at] = true;
            WayStep step = steps.get(at).orElseThrow();
            run.add(new WayStep(step.section(), forward, step.action(), step.duct(), step.newDuct()));
            int leave = forward ? 1 : 0;
            int vault = forward ? offer(at).to() : offer(at).from();
            int following = next[at][leave];
            if (following != NONE) {
                forward = offer(following).from() == vault;
            }
            at = following;
        }
        return run;
    }

    private Optional<Corridor> corridor(List<WayStep> run) {
        int first = 0;
        int end = run.size();
        while (first < end && run.get(first).action() == WayStep.Action.FREE) {
            first++;
        }
        while (end > first && run.get(end - 1).action() == WayStep.Action.FREE) {
            end--;
        }
        if (first == end) {
            return Optional.empty();
        }
        var way = new Way(cables, run.subList(first, end));
        int now = way.steps().stream()
                .mapToInt(step -> step.section().widthNowPositions())
                .min()
                .orElse(0);
        int after = way.steps().stream()
                .mapToInt(step -> step.action() == WayStep.Action.FREE
                        ? step.section().widthNowPositions()
                        : step.duct().orElseThrow().positionsAfter())
                .min()
                .orElse(0);
        double money = way.costs().money();
        int gained = Math.max(0, after - now);
        return Optional.of(new Corridor(way, gained, money > 0 ? gained * way.lengthM() / money : 0));
    }

    /** Returns the step of each section, without new build. */
    public List<Optional<WayStep>> steps() {
        return steps;
    }

    /** Returns the vaults that most sections end at, the most first; of equals the one with the smaller number. */
    public static List<Integer> hubs(DuctNetwork network, int most) {
        int[] degree = new int[network.vaults().size()];
        network.sections().forEach(section -> {
            degree[section.from()]++;
            degree[section.to()]++;
        });
        return IntStream.range(0, degree.length)
                .boxed()
                .sorted(Comparator.comparingInt((Integer vault) -> -degree[vault])
                        .thenComparingInt(vault -> vault))
                .limit(most)
                .toList();
    }
}

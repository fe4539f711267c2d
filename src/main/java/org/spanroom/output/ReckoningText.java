package org.spanroom.output;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.spanroom.model.Bend;
import org.spanroom.model.Duct;
import org.spanroom.model.Friction;
import org.spanroom.model.LimitUse;
import org.spanroom.model.PullAssessment;
import org.spanroom.model.PullForces;
import org.spanroom.model.PullTrace;
import org.spanroom.model.Reckoning;
import org.spanroom.model.Room;
import org.spanroom.model.Score;
import org.spanroom.model.Span;
import org.spanroom.model.SpanEnd;
import org.spanroom.model.Term;

/** The whole reckoning of one span as text for a terminal, at most 100 columns wide. */
public final class ReckoningText {
    /** What must not reach a terminal from somebody's data: control characters other than the line ends written here. */
    private static final Pattern UNPRINTABLE = Pattern.compile("[\\p{Cntrl}&&[^\n]]");

    private static final String CAUTION = """

            Forces are planning figures, uncertain by a factor of two: they rank and they warn, they do not
            authorise a pull. Local codes, the owner's rules and licensed practice decide.
            """;

    private final Reckoning reckoning;
    private final StringBuilder text = new StringBuilder();

    private ReckoningText(Reckoning reckoning) {
        this.reckoning = reckoning;
    }

    /** Returns the reckoning, from the pieces of the span to the parts of its score. */
    public static String write(Reckoning reckoning) {
        return new ReckoningText(reckoning).all();
    }

    private String all() {
        place();
        duct();
        bends();
        room();
        pulling();
        score();
        return text.append(CAUTION).toString();
    }

    private void place() {
        Span span = reckoning.ranked().span();
        line("Span %s", span.id());
        line("  from    vault %s (A), %.2f m beside the line", span.from().id(), span.fromOffsetM());
        line("  to      vault %s (B), %.2f m beside the line", span.to().id(), span.toOffsetM());
        line(
                "  length  %.2f m; drawn %.2f m with %d vertices",
                span.lengthM(), span.drawnLengthM(), span.ground().size());
        line("  pieces  %s", String.join(", ", span.routeIds()));
    }

    private void duct() {
        Duct duct = reckoning.ranked().span().duct();
        line("%nDuct %s%s", duct.id(), duct.bankId().isEmpty() ? "" : " in bank " + duct.bankId());
        line(
                "  bore    %.1f mm %s, type %s, %s",
                duct.insideDiameterMm(), lower(duct.boreShape()), orUnknown(duct.type()), lower(duct.condition()));
        duct.contents()
                .innerducts()
                .forEach(innerduct -> line(
                        "  holds   innerduct %s, %.1f mm outside, wall %.2f mm: %s",
                        innerduct.id(),
                        innerduct.outsideDiameterMm(),
                        innerduct.wallMm(),
                        innerduct.cables().isEmpty()
                                ? "empty"
                                : innerduct.cables().stream()
                                        .map(cable -> String.format(
                                                Locale.ROOT,
                                                "cable %s %.1f mm %.3f kg/m %s",
                                                cable.id(),
                                                cable.outsideDiameterMm(),
                                                cable.massKgPerM(),
                                                lower(cable.service())))
                                        .collect(Collectors.joining("; "))));
        duct.contents()
                .looseCables()
                .forEach(cable -> line(
                        "  holds   loose cable %s, %.1f mm, %.3f kg/m, %s",
                        cable.id(), cable.outsideDiameterMm(), cable.massKgPerM(), lower(cable.service())));
        line("  water   %s", duct.flooded() ? "flooded" : "not recorded as flooded");
        if (!duct.assumed().isEmpty()) {
            line("  assumed %s", duct.assumed().stream().sorted().map(Term::key).collect(Collectors.joining(", ")));
        }
    }

    private void bends() {
        List<Bend> bends = reckoning.ranked().assessment().bends().list();
        line(
                "%nBends: %d, %.1f degrees in all",
                bends.size(), reckoning.ranked().assessment().bends().total().deg());
        for (Bend bend : bends) {
            line(
                    "  at %7.2f m  %6.1f degrees %-5s  radius %6.2f m %-8s  arc %5.2f m",
                    bend.middleM(),
                    bend.deflection().deg(),
                    lower(bend.turn()),
                    bend.radiusM(),
                    bend.radiusAssumed() ? "assumed" : "measured",
                    bend.arcLengthM());
        }
    }

    private void room() {
        Room room = reckoning.ranked().assessment().room();
        line("%nRoom");
        line(
                "  bore    %.0f mm2, filled %.1f %% now and %.1f %% by the cables that stay",
                room.boreAreaMm2(), 100 * room.fillBeforeRatio(), 100 * room.fillAfterRatio());
        line(
                "  gives   %.0f mm2 back; places for a cable: %d now, %d after, in %d sleeves",
                room.recoverableMm2(), room.positionsBefore(), room.newCables(), room.sleeves());
        if (!room.bindingRule().isEmpty()) {
            line("  bound   by %s", room.bindingRule());
        }
        room.exclusion().ifPresent(why -> line("  excluded: %s", why.explanation()));
    }

    private void pulling() {
        PullAssessment pull = reckoning.ranked().assessment().pull();
        line("%nPulling: %s", pull.outcome().summary());
        if (!pull.assumptions().isEmpty()) {
            line("  rests on:");
            pull.assumptions().forEach(assumption -> line("    %-18s %s", assumption.key(), assumption.explanation()));
        }
        reckoning.traces().forEach(this::innerduct);
    }

    private void innerduct(PullTrace trace) {
        var pull = trace.pull();
        line("%n  Pull %d: innerduct %s (%s)", pull.turn(), pull.innerduct().id(), lower(pull.reason()));
        line("    neighbours lying on it %.2f N/m, wedge factor %.2f", pull.neighbourNPerM(), pull.wedgeRatio());
        line("    %-16s %16s %16s", "pull / hold, N", "out at A", "out at B");
        for (Friction friction : Friction.values()) {
            line(
                    "    %-16s %16s %16s",
                    lower(friction),
                    pair(pull.fromA().forces(friction)),
                    pair(pull.fromB().forces(friction)));
        }
        way(trace, trace.fromA());
        way(trace, trace.fromB());
    }

    private void way(PullTrace trace, PullTrace.Way way) {
        SpanEnd anchor = way.pullingEnd().opposite();
        line("    Pulled out at %s, cable held at %s, friction %s", way.pullingEnd(), anchor, lower(trace.friction()));
        line(
                "      %9s  %-8s %8s %9s %12s %12s",
                "m from A", "section", "degrees", "radius m", "innerduct N", "cable N");
        way.sections().forEach(section -> {
            boolean turns = section.turnRad() != 0;
            line(
                    "      %9.2f  %-8s %8s %9s %12.1f %12.1f",
                    section.far().atM(),
                    lower(section.kind()),
                    turns ? String.format(Locale.ROOT, "%.1f", Math.toDegrees(section.turnRad())) : "",
                    turns ? String.format(Locale.ROOT, "%.2f", section.radiusM()) : "",
                    section.far().innerductN(),
                    section.far().cableN());
        });
        line(
                "      as it comes out: %s",
                way.fallOff().stream()
                        .map(step -> String.format(Locale.ROOT, "%.0f m %s", step.outM(), pair(step.forces())))
                        .collect(Collectors.joining(", ")));
        way.limits().forEach(this::limit);
    }

    private void limit(LimitUse use) {
        line("      %s %s", use.fails() ? "FAILS " : "holds ", use.summary());
    }

    private void score() {
        Score score = reckoning.ranked().score();
        String rank = reckoning.ranked().rank().isPresent()
                ? "rank " + reckoning.ranked().rank().getAsInt() + " of " + reckoning.spansInRun()
                : "not ranked";
        line("%nScore %.1f of 100, %s", score.totalPoints(), rank);
        for (Score.Part part : score.parts()) {
            line(
                    "  %-14s %16s  value %.2f x weight %.2f = %5.1f points",
                    part.criterion(), part.quantityText(), part.valueRatio(), part.weightRatio(), part.points());
        }
    }

    private static String pair(PullForces forces) {
        return String.format(Locale.ROOT, "%.0f / %.0f", forces.pullN(), forces.holdN());
    }

    private static String lower(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String orUnknown(String word) {
        return word.isEmpty() ? "unknown" : word;
    }

    private void line(String format, Object... values) {
        String line = String.format(Locale.ROOT, format.replace("%n", "\n"), values);
        text.append(UNPRINTABLE.matcher(line).replaceAll("?")).append('\n');
    }
}

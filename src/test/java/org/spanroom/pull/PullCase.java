package org.spanroom.pull;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Angle;
import org.spanroom.model.Answer;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.NeighborSettings;
import org.spanroom.model.pull.PullSettings;

/** Builders of spans and settings for the tests of pulling, and the units in which its sources publish. */
final class PullCase {
    /** Exact: 0.45359237 kg at standard gravity. */
    static final double LBF_N = 4.4482216152605;

    static final double FT_M = 0.3048;
    static final double IN_MM = 25.4;
    static final double LB_PER_FT_KG_PER_M = 0.45359237 / 0.3048;
    static final double PSI_MPA = 0.006894757293168361;

    /** Innerduct 1-1/4 SDR 13.5 and its cable of the worked example. */
    static final double EXAMPLE_INNERDUCT_LB_PER_FT = 0.263;

    static final double EXAMPLE_CABLE_LB_PER_FT = 0.080;

    private PullCase() {}

    static Innerduct innerduct(String id, double outsideIn, double wallIn, Cable... cables) {
        return new Innerduct(id, outsideIn * IN_MM, wallIn * IN_MM, List.of(cables));
    }

    static Cable cable(String id, double outsideIn, double lbPerFt) {
        return new Cable(id, outsideIn * IN_MM, lbPerFt * LB_PER_FT_KG_PER_M, Service.LIVE);
    }

    static Cable exampleCable(String id) {
        return cable(id, 0.5, EXAMPLE_CABLE_LB_PER_FT);
    }

    static Innerduct exampleInnerduct(String id) {
        return innerduct(id, 1.660, 0.123, exampleCable(id + "-c"));
    }

    static Duct duct(Contents contents) {
        return duct(contents, false);
    }

    static Duct duct(Contents contents, boolean flooded, Term... assumed) {
        return new Duct(
                "duct",
                "",
                BoreShape.ROUND,
                102.26,
                "pvc40",
                "pvc",
                false,
                contents,
                flooded,
                Condition.SOUND,
                "",
                "",
                OptionalInt.empty(),
                Set.of(assumed));
    }

    static Duct ductWith(Innerduct... innerducts) {
        return duct(new Contents(List.of(innerducts), List.of(), true));
    }

    /** Returns a span along the x axis, level or with the given heights at even distances. */
    static Span span(Duct duct, double lengthM, double... heightsM) {
        return span(duct, lengthM, lengthM, heightsM);
    }

    static Span span(Duct duct, double lengthM, double drawnLengthM, double[] heightsM) {
        Line ground = Line.ofXy(0, 0, drawnLengthM, 0);
        if (heightsM.length > 1) {
            double stepM = drawnLengthM / (heightsM.length - 1);
            ground = Line.ofXyz(IntStream.range(0, heightsM.length)
                    .boxed()
                    .flatMapToDouble(i -> DoubleStream.of(i * stepM, 0, heightsM[i]))
                    .toArray());
        }
        double[] lonLat = new double[2 * ground.size()];
        for (int i = 0; i < ground.size(); i++) {
            lonLat[2 * i] = i * 1e-4;
        }
        return new Span(
                "span",
                duct,
                List.of("route"),
                vault("a"),
                vault("b"),
                Line.ofXy(lonLat),
                ground,
                lengthM,
                drawnLengthM,
                0,
                0,
                "");
    }

    /** Returns the same span between other vaults. */
    static Span between(Span span, Vault from, Vault to) {
        return new Span(
                span.id(),
                span.duct(),
                span.routeIds(),
                from,
                to,
                span.lonLat(),
                span.ground(),
                span.lengthM(),
                span.drawnLengthM(),
                span.fromOffsetM(),
                span.toOffsetM(),
                span.positionQuality());
    }

    /** Returns bends, each given as middle, degrees and radius, in meters. */
    static Bends bends(double... middleDegRadius) {
        var list = new ArrayList<Bend>();
        for (int i = 0; i < middleDegRadius.length; i += 3) {
            Angle turn = Angle.ofDeg(middleDegRadius[i + 1]);
            double arcM = turn.rad() * middleDegRadius[i + 2];
            list.add(
                    new Bend(turn, Bend.Turn.LEFT, middleDegRadius[i] - arcM / 2, arcM, middleDegRadius[i + 2], false));
        }
        return new Bends(list);
    }

    /** The example's density: what makes the innerduct weigh what the example says. */
    static double exampleDensity() {
        return EXAMPLE_INNERDUCT_LB_PER_FT
                * LB_PER_FT_KG_PER_M
                / exampleInnerduct("x").massKgPerM(1);
    }

    /** Returns the settings of the worked example: simple capstan, no wander, no breakaway, neighbors' full weight. */
    static PullSettings exampleSettings(double wanderRadPerFt) {
        return new PullSettings(
                ShippedConfig.get().pull().friction(),
                Friction.DRY,
                wanderRadPerFt / FT_M,
                1,
                0,
                true,
                false,
                exampleDensity(),
                0.15,
                7.6,
                10,
                new NeighborSettings(1, 2),
                ShippedConfig.get().pull().limits());
    }

    private static Vault vault(String id) {
        var site = new VaultSite(OptionalDouble.empty(), Answer.UNKNOWN, "", Answer.UNKNOWN, OptionalDouble.of(10));
        return new Vault(0, id, 0, 0, List.of(), OptionalDouble.empty(), "", site);
    }
}

package org.spanroom.learn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.learn.FrictionChange;
import org.spanroom.model.learn.LearnSettings;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.pull.FrictionSets;

/** Friction from measured pulls, against pulls whose force is a closed form of friction. */
class LearnedFrictionTest {
    private static final FrictionSets SHIPPED = ShippedConfig.get().pull().friction();
    private static final LearnSettings SETTINGS = LearnSettings.STANDARD;

    private final ReportedWork work = new ReportedWork();
    private final List<MeasuredPull> pulls = new ArrayList<>();

    /** A straight of weight w L and then a bend: breakaway times f w L e^(f theta), the capstan form. */
    private static PullLaw straightThenBend(double weightN, double turnRad) {
        return scaleRatio -> {
            double friction = scaleRatio * SHIPPED.dry().ductRatio();
            return 1.3 * friction * weightN * Math.exp(friction * turnRad);
        };
    }

    private static Duct duct(String type, int year, Term... assumed) {
        return new Duct(
                "D",
                "",
                BoreShape.ROUND,
                100,
                type,
                "",
                false,
                new Contents(List.of(), List.of(), true),
                false,
                Condition.SOUND,
                "",
                "",
                OptionalInt.of(year),
                Set.of(assumed));
    }

    private void pull(String span, Duct duct, PullLaw law, double forceN) {
        work.number(span, FieldFact.PULL_FORCE, "I" + pulls.size(), FactUnit.LBF, FactUnit.LBF.of(forceN));
        FieldEntry entry = work.book().all().get(pulls.size());
        pulls.add(new MeasuredPull(entry, Optional.of(duct), Optional.of(law)));
    }

    private List<FrictionChange> changes() {
        return LearnedFriction.of(pulls, SHIPPED, SETTINGS).changes();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.0501, 0.3, 0.99, 1, 1.7, 19.9})
    void theFactorBehindAForceIsFoundAgain(double factor) {
        PullLaw law = straightThenBend(1200, 1.1);

        assertEquals(
                factor,
                LearnedFriction.scaleRatio(law, law.largestN(factor), 20).orElseThrow(),
                1e-12 * factor);
    }

    @Test
    void aForceThatNoFrictionGivesIsLeftOutAndListed() {
        PullLaw law = straightThenBend(1200, 0.5);
        pull("S1", duct("clay", 1955), law, law.largestN(21));
        pull("S2", duct("clay", 1955), law, law.largestN(0.04));
        pull("S3", duct("clay", 1955), law, 0);
        pulls.add(new MeasuredPull(
                work.number("S4", FieldFact.PULL_FORCE, "I", FactUnit.N, 5)
                        .book()
                        .all()
                        .get(3),
                Optional.empty(),
                Optional.empty()));
        LearnedFriction learned = LearnedFriction.of(pulls, SHIPPED, SETTINGS);

        assertEquals(
                List.of(1, 2, 3, 4),
                learned.leftOut().stream().map(left -> left.entry()).toList());
        assertEquals(Optional.empty(), learned.changes().get(0).after());
    }

    /** Clay ducts rub half as much again as assumed, plastic ones as assumed. */
    @Test
    void typesAndDecadesAreSeparate() {
        var random = new SplittableRandom(3);
        for (int i = 0; i < 40; i++) {
            boolean clay = i % 2 == 0;
            PullLaw law = straightThenBend(800 + 40 * i, 0.02 * i);
            double factor = (clay ? 1.5 : 1) * Math.exp(0.2 * random.nextGaussian());
            pull("S" + i, clay ? duct("clay", 1950 + i % 10) : duct("pvc", 1990), law, law.largestN(factor));
        }
        Map<String, FrictionChange> byName = changes().stream()
                .collect(java.util.stream.Collectors.toMap(FrictionChange::stratum, change -> change));

        assertEquals(Set.of("", "1950s, clay", "1990s, pvc"), byName.keySet());
        FrictionChange clay = byName.get("1950s, clay");
        assertEquals(1.5, clay.estimate().orElseThrow().medianRatio(), 0.2);
        assertEquals(0.8, clay.estimate().orElseThrow().weightRatio(), 0);
        assertEquals(OptionalInt.of(1950), clay.fromYear());
        FrictionSets after = clay.after().orElseThrow();
        double factor = clay.estimate().orElseThrow().learnedRatio();
        assertEquals(0.35 * factor, after.dry().ductRatio(), 1e-5);
        assertEquals(0.30 * factor, after.dry().jacketRatio(), 1e-5);
        assertTrue(after.lubricated().ductRatio() < after.dry().ductRatio());
        assertTrue(after.dry().ductRatio() < after.bad().ductRatio());
        assertEquals(1, byName.get("1990s, pvc").estimate().orElseThrow().medianRatio(), 0.12);
    }

    /** Forces as calculated keep the dry coefficients bit for bit and narrow the range about them. */
    @Test
    void forcesAsCalculatedOnlyNarrow() {
        for (int i = 0; i < 5; i++) {
            PullLaw law = straightThenBend(800 + 40 * i, 0.1 * i);
            FieldEntry entry = work.number("S" + i, FieldFact.PULL_FORCE, "I", FactUnit.N, law.largestN(1))
                    .book()
                    .all()
                    .get(i);
            pulls.add(new MeasuredPull(entry, Optional.of(duct("pvc", 1990)), Optional.of(law)));
        }
        FrictionSets after = changes().get(0).after().orElseThrow();

        assertEquals(SHIPPED.dry(), after.dry());
        assertTrue(after.lubricated().ductRatio() > SHIPPED.lubricated().ductRatio());
        assertTrue(after.bad().ductRatio() < SHIPPED.bad().ductRatio());
    }

    /** Three innerducts of one span are one witness. */
    @Test
    void aSpanCountsOnceHoweverManyPulls() {
        PullLaw law = straightThenBend(900, 0.3);
        for (int i = 0; i < 6; i++) {
            pull("S" + i / 3, duct("pvc", 1990), law, law.largestN(1.2));
        }
        FrictionChange all = changes().get(0);

        assertEquals(6, all.pulls());
        assertEquals(2, all.spans());
        assertEquals(Optional.empty(), all.after());
    }

    @Test
    void aTypeThatIsAssumedNamesNoStratum() {
        PullLaw law = straightThenBend(900, 0.3);
        pull("S1", duct("pvc", 1990, Term.DUCT_TYPE), law, law.largestN(1));

        FrictionChange stratum = changes().get(1);
        assertEquals("1990s", stratum.stratum());
        assertEquals("", stratum.ductType());
    }
}

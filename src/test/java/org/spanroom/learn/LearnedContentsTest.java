package org.spanroom.learn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.learn.ChanceChange;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.DuctStratum;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.ScenarioSettings;
import org.spanroom.model.network.Service;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.SpanChances;
import org.spanroom.model.rank.UncertaintySettings;

/** What is found in opened ducts beside what was recorded or assumed, and what it says of the others. */
class LearnedContentsTest {
    private static final UncertaintySettings UNCERTAINTY = ShippedConfig.get().uncertainty();
    private static final ScenarioSettings SCENARIOS = ShippedConfig.get().scenarios();
    private static final SpanChances SHIPPED = SpanChances.of(UNCERTAINTY, SCENARIOS);

    private final ReportedWork work = new ReportedWork();
    private final Map<String, Duct> ducts = new TreeMap<>();

    private static Duct duct(int year, Condition condition, Term... assumed) {
        var cables = new ArrayList<Cable>();
        var pipes = new ArrayList<Innerduct>();
        for (int i = 1; i <= 2; i++) {
            cables.add(new Cable("C" + i, 18, 0.2, Service.LIVE));
            pipes.add(new Innerduct("I" + i, 40, 3, List.of(cables.get(i - 1))));
        }
        return new Duct(
                "D",
                "",
                BoreShape.ROUND,
                100,
                "pvc",
                "",
                false,
                new Contents(pipes, List.of(), true),
                false,
                condition,
                "",
                "city",
                OptionalInt.of(year),
                assumed.length == 0 ? Set.of() : EnumSet.copyOf(List.of(assumed)));
    }

    private LearnedContents learn() {
        return LearnedContents.of(work.book(), span -> Optional.ofNullable(ducts.get(span)), UNCERTAINTY, SCENARIOS);
    }

    private void cables(String span, Duct duct, int found) {
        ducts.put(span, duct);
        work.number(span, FieldFact.CABLES_FOUND, "", FactUnit.NONE, found);
    }

    @Test
    void withoutReportsTheChancesAreThoseOfTheSettings() {
        LearnedContents learned = learn();

        assertSame(LearnedChances.NONE, learned.chances());
        assertSame(SHIPPED, learned.chances().of(duct(1990, Condition.SOUND), SHIPPED));
        assertEquals(0, learned.chances().verifiedRatio(duct(1990, Condition.UNKNOWN), Term.CONDITION), 0);
    }

    /** First all ducts, then the stratum from there: (20 p + k) / (20 + n) twice. */
    @Test
    void aStratumStartsFromWhatAllDuctsLeave() {
        for (int i = 0; i < 10; i++) {
            cables("A" + i, duct(1985, Condition.SOUND), i < 4 ? 3 : 2);
        }
        for (int i = 0; i < 30; i++) {
            cables("B" + i, duct(2004, Condition.SOUND), i < 1 ? 3 : 2);
        }
        LearnedChances chances = learn().chances();

        double all = (20 * 0.03 + 5) / 60;
        assertEquals(all, chances.of(duct(1962, Condition.SOUND), SHIPPED).moreCableRatio(), 1e-12);
        assertEquals(
                (20 * all + 4) / 30,
                chances.of(duct(1981, Condition.SOUND), SHIPPED).moreCableRatio(),
                1e-12);
        assertEquals(
                (20 * all + 1) / 50,
                chances.of(duct(2009, Condition.SOUND), SHIPPED).moreCableRatio(),
                1e-12);
        assertEquals(
                SHIPPED.blockedUnknownRatio(),
                chances.of(duct(1981, Condition.SOUND), SHIPPED).blockedUnknownRatio(),
                0);
    }

    /** Few 2 and 1, typical 3 and 2, many 4 and 4 innerducts and cables. */
    @ParameterizedTest(name = "{0} innerducts, {1} cables: {2}")
    @CsvSource({
        "3, 2, contents_typical",
        "2, 1, contents_few",
        "4, 4, contents_many",
        "2, 2, contents_typical",
        "4, 3, contents_many"
    })
    void assumedCountsAreComparedWithTheScenarios(int innerducts, int cables, String scenario) {
        cables("A", duct(1985, Condition.SOUND, Term.CABLE_COUNT, Term.INNERDUCT_COUNT), cables);
        work.number("A", FieldFact.INNERDUCTS_FOUND, "", FactUnit.NONE, innerducts);
        LearnedContents learned = learn();

        for (ChanceChange change : learned.changes()) {
            if (change.chance().startsWith("contents_")) {
                assertEquals(change.chance().equals(scenario) ? 1 : 0, change.events(), change.chance());
            }
        }
        SpanChances after = learned.chances().of(duct(1600, Condition.SOUND), SHIPPED);
        assertEquals(1, after.fewRatio() + after.typicalRatio() + after.manyRatio(), 1e-12);
    }

    @Test
    void cablesAreCountedByNameWhereNoCountIsReported() {
        ducts.put("A", duct(1985, Condition.SOUND));
        work.word("A", FieldFact.CABLE_THERE, "C1", "yes").word("A", FieldFact.CABLE_THERE, "X", "yes");
        ducts.put("B", duct(1985, Condition.SOUND));
        work.word("B", FieldFact.CABLE_THERE, "C1", "no").word("B", FieldFact.CABLE_THERE, "X", "yes");

        ChanceChange more = change(learn(), "more_cable");
        assertEquals(2, more.looked());
        assertEquals(1, more.events());
    }

    @Test
    void sizesAreComparedOnlyWhereTheyWereAssumed() {
        ducts.put("A", duct(1985, Condition.SOUND, Term.INSIDE_DIAMETER));
        ducts.put("B", duct(1985, Condition.SOUND, Term.INSIDE_DIAMETER));
        ducts.put("C", duct(1985, Condition.SOUND));
        work.number("A", FieldFact.BORE_DIAMETER, "", FactUnit.IN, FactUnit.IN.of(102.5))
                .number("B", FieldFact.BORE_DIAMETER, "", FactUnit.MM, 94)
                .number("C", FieldFact.BORE_DIAMETER, "", FactUnit.MM, 80);

        ChanceChange other = change(learn(), "other_size");
        assertEquals(2, other.looked());
        assertEquals(1, other.events());
    }

    @Test
    void aBlockedDuctCountsByWhatIsRecordedOfItsCondition() {
        ducts.put("A", duct(1985, Condition.UNKNOWN));
        ducts.put("B", duct(1985, Condition.UNKNOWN));
        ducts.put("C", duct(1985, Condition.OVAL));
        ducts.put("D", duct(1985, Condition.COLLAPSED));
        work.word("A", FieldFact.DUCT_CONDITION, "", "collapsed")
                .number("B", FieldFact.CABLES_FOUND, "", FactUnit.NONE, 2)
                .done("B")
                .word("C", FieldFact.DUCT_CONDITION, "", "sound")
                .word("D", FieldFact.DUCT_CONDITION, "", "collapsed");
        LearnedContents learned = learn();

        assertEquals(2, change(learned, "blocked_unknown").looked());
        assertEquals(1, change(learned, "blocked_unknown").events());
        assertEquals(1, change(learned, "blocked").looked());
        assertEquals(4, learned.opened());
    }

    /** An assumption that like ducts bear out counts for what it has become more likely, never for less than 0. */
    @Test
    void knowledgeGrowsWithWhatIsBorneOutOnly() {
        for (int i = 0; i < 20; i++) {
            ducts.put("A" + i, duct(1985, Condition.UNKNOWN, Term.INSIDE_DIAMETER));
            work.number("A" + i, FieldFact.BORE_DIAMETER, "", FactUnit.MM, 100)
                    .word("A" + i, FieldFact.DUCT_CONDITION, "", "blocked");
        }
        LearnedChances chances = learn().chances();
        Duct like = duct(1988, Condition.UNKNOWN, Term.INSIDE_DIAMETER);

        double posterior = 20 * (20 * 0.5 / 40) / 40;
        assertEquals(0.5 - posterior, chances.verifiedRatio(like, Term.INSIDE_DIAMETER), 1e-12);
        assertEquals(0, chances.verifiedRatio(like, Term.CONDITION), 0);
        assertEquals(0, chances.verifiedRatio(like, Term.CABLE_MASS), 0);
    }

    @Test
    void strataAreThoseOfTheSurvey() {
        assertEquals("1980s, pvc, city", DuctStratum.name(duct(1989, Condition.SOUND)));
        assertEquals("1980s, city", DuctStratum.name(duct(1989, Condition.SOUND, Term.DUCT_TYPE)));
        assertEquals("1980s, pvc", DuctStratum.typeAndDecade(duct(1989, Condition.SOUND)));
    }

    /** Chances near the least change of a field check, which settings may not have, end no run. */
    @Test
    void aChanceNextToTheLeastChangeIsAllowed() {
        for (int i = 0; i < 11; i++) {
            ducts.put("A" + i, duct(1985, Condition.SOUND));
            work.word("A" + i, FieldFact.DUCT_CONDITION, "", "sound");
        }
        double after =
                learn().chances().of(duct(1600, Condition.SOUND), SHIPPED).blockedRatio();

        assertEquals(20 * 0.02 / 31, after, 1e-12);
        assertTrue(Math.abs(after - UNCERTAINTY.leastChangeRatio()) < 0.001);
    }

    private static ChanceChange change(LearnedContents learned, String chance) {
        return learned.changes().stream()
                .filter(change -> change.stratum().isEmpty() && change.chance().equals(chance))
                .findFirst()
                .orElseThrow();
    }
}

package org.spanroom.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.EndFacts;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.RouteEnds;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.testing.Changed;

/**
 * What is recorded at the ends of routes and ducts reaches the spans that end there, and no others. In words: vault, hole, slack in meters,
 * and for each innerduct y, n or ? for whether it runs uncut through the vault.
 */
class SpanEndFactsTest {
    private static final Answer YES = Answer.YES;
    private static final Answer NO = Answer.NO;
    private static final Answer UNKNOWN = Answer.UNKNOWN;

    private static RouteEnds ends(String holeA, String holeB) {
        return new RouteEnds(facts(holeA, 5), facts(holeB, 6), UNKNOWN, UNKNOWN);
    }

    private static EndFacts facts(String hole, double slackM) {
        return hole.isEmpty() ? EndFacts.UNKNOWN : new EndFacts(hole, OptionalDouble.of(slackM));
    }

    private static void record(Sketch sketch, String route, RouteEnds ends) {
        sketch.routes.replaceAll(one -> one.id().equals(route) ? Changed.of(one, "ends", ends) : one);
    }

    /** Gives all routes of a duct the same innerducts, as the contents table does. */
    private static void list(Sketch sketch, String duct, Innerduct... innerducts) {
        var contents = new Contents(List.of(innerducts), List.of(), true);
        sketch.routes.replaceAll(one -> one.duct().id().equals(duct)
                ? Changed.of(one, "duct", one.duct().withSizes(100, contents))
                : one);
    }

    private static Innerduct innerduct(Answer atA, Answer atB) {
        return new Innerduct("i", 42, 3, List.of(), "", atA, atB);
    }

    private static List<String> facts(Sketch sketch) {
        return sketch.cut().network().spans().stream()
                .map(span -> end(span, SpanEnd.A) + " | " + end(span, SpanEnd.B))
                .toList();
    }

    private static String end(Span span, SpanEnd end) {
        EndFacts facts = span.factsAt(end);
        var text = new StringBuilder(end.vaultOf(span).id());
        if (!facts.hole().isEmpty()) {
            text.append(' ').append(facts.hole());
        }
        facts.slackM().ifPresent(slackM -> text.append(' ').append(slackM));
        for (Innerduct innerduct : span.duct().contents().innerducts()) {
            Answer uncut = innerduct.uncutAt(end);
            text.append(uncut == YES ? " y" : uncut == NO ? " n" : " ?");
        }
        return text.toString();
    }

    @Test
    void aRouteThatIsOneSpanHasBothEnds() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault B 60,0
                route r1 d1 0,0 60,0
                """);
        record(sketch, "r1", ends("7", "2/3"));

        assertEquals(List.of("A 7 5.0 | B 2/3 6.0"), facts(sketch));
    }

    @Test
    void ofACutRouteOnlyTheOuterEndsAreKnown() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault B 60,0
                vault C 120,0
                vault D 180,0
                route r1 d1 0,0 180,0
                """);
        record(sketch, "r1", ends("7", "8"));

        assertEquals(List.of("A 7 5.0 | B", "B | C", "C | D 8 6.0"), facts(sketch));
    }

    /** The line goes on beyond the last vault, so that what is recorded of its end says nothing of that vault. */
    @Test
    void anEndWithoutAVaultLeavesTheNextVaultUnknown() {
        Sketch sketch = Sketch.of("""
                vault B 60,0
                vault C 120,0
                route r1 d1 0,0 120,0
                """);
        record(sketch, "r1", ends("7", "8"));

        assertEquals(List.of("B | C 8 6.0"), facts(sketch));
    }

    /** A line that begins inside a vault's outline begins at that vault. */
    @Test
    void anEndInsideAnOutlineIsAtThatVault() {
        Sketch sketch = Sketch.of("""
                vault A -2,-1 2,-1 2,1 -2,1
                vault B 60,0
                route r1 d1 0,0 60,0
                """);
        record(sketch, "r1", ends("7", "8"));

        assertEquals(List.of("A 7 5.0 | B 8 6.0"), facts(sketch));
    }

    /** The first vault gives way to a nearer one, so that no span ends at it. */
    @Test
    void aStretchThatIsTooShortLeavesNoEndForTheNextVault() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault B 60,0
                vault C 60.2,0
                vault D 120,0
                route r1 d1 0,0 120,0
                """);
        record(sketch, "r1", ends("7", "8"));

        List<String> facts = facts(sketch);
        assertEquals("A 7 5.0", facts.get(0).split(" \\| ", -1)[0]);
        assertEquals("D 8 6.0", facts.get(facts.size() - 1).split(" \\| ", -1)[1]);
        assertEquals(
                2,
                facts.stream().filter(text -> text.matches(".*[78] [56]\\.0.*")).count());
    }

    /** Joined pieces, the second drawn against the first: its last vertex is at the joint, its first at C. */
    @Test
    void joinedAndReversedPiecesKeepTheirOuterEnds() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault B 60,0
                vault C 120,0
                route r1 d1 0,0 30,0
                route r2 d1 120,0 30,0
                """);
        record(sketch, "r1", ends("7", "wrong"));
        record(sketch, "r2", ends("9", "wrong"));

        // The span of r2 alone runs as r2 is drawn.
        assertEquals(List.of("A 7 5.0 | B", "C 9 5.0 | B"), facts(sketch));
    }

    /** Where the later piece leads the chain's beginning, the chain still runs as the first-read one is drawn. */
    @Test
    void aPieceBeforeTheFirstReadOneGivesTheBeginning() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault C 120,0
                route r1 d1 50,0 120,0
                route r2 d1 50,0 0,0
                """);
        record(sketch, "r1", ends("wrong", "8"));
        record(sketch, "r2", ends("wrong", "9"));

        assertEquals(List.of("A 9 6.0 | C 8 6.0"), facts(sketch));
    }

    /** The names say that hole 7 is in vault B, where the line ends. */
    @Test
    void namesInReverseOrderTakeTheirFactsAlong() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault B 60,0
                route r1 d1 0,0 60,0 from=B to=A
                """);
        record(sketch, "r1", new RouteEnds(facts("7", 5), facts("8", 6), YES, NO));
        list(sketch, "d1", innerduct(UNKNOWN, UNKNOWN));

        assertEquals(List.of("A 8 6.0 n | B 7 5.0 y"), facts(sketch));
        assertEquals(
                1,
                sketch.cut().log().all().stream()
                        .filter(finding -> finding.code() == FindingCode.RECORDED_VAULT_DIFFERS)
                        .count());
    }

    @Test
    void aClosedLineWithoutAVaultAtItsEndsHasNoFacts() {
        Sketch sketch = Sketch.of("""
                vault A 60,0
                vault B 60,60
                route r1 d1 0,0 60,0 60,60 0,60 0,0
                """);
        record(sketch, "r1", ends("7", "8"));

        assertEquals(List.of("A | B", "B | A"), facts(sketch));
    }

    @Test
    void whatTheRouteSaysOfAllInnerductsHoldsForEach() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault B 60,0
                vault C 120,0
                route r1 d1 0,0 120,0
                """);
        record(sketch, "r1", new RouteEnds(EndFacts.UNKNOWN, EndFacts.UNKNOWN, YES, NO));
        list(sketch, "d1", innerduct(UNKNOWN, UNKNOWN), innerduct(NO, UNKNOWN));

        assertEquals(List.of("A y n | B ? ?", "B ? ? | C n n"), facts(sketch));
    }

    /** The contents table counts the ends of the duct; a span that runs against it has them the other way round. */
    @Test
    void theTableSpeaksOfTheEndsOfTheDuct() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault B 60,0
                vault C 120,0
                route r1 d1 0,0 30,0
                route r2 d1 120,0 30,0
                """);
        list(sketch, "d1", innerduct(YES, NO), innerduct(UNKNOWN, YES));

        assertEquals(List.of("A y ? | B ? ?", "C n y | B ? ?"), facts(sketch));
    }

    /** Routes from vault to vault: only the outermost ends are those of the duct, in whatever order the routes are read. */
    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"r1 d1 0,0 60,0;r2 d1 60,0 120,0", "r2 d1 60,0 120,0;r1 d1 0,0 60,0"})
    void aDuctOfSeveralRoutesHasItsTwoOutermostEnds(String routes) {
        Sketch sketch = Sketch.of("vault A 0,0\nvault B 60,0\nvault C 120,0\nroute " + routes.replace(";", "\nroute "));
        list(sketch, "d1", innerduct(YES, NO));

        assertEquals(
                List.of("A y | B ?", "B ? | C n"),
                facts(sketch).stream().sorted().toList());
    }

    /** Drawn towards one another, or branching: which end is A cannot be known. */
    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "r1 d1 0,0 60,0;r2 d1 120,0 60,0",
                "r1 d1 0,0 60,0;r2 d1 60,0 120,0;r3 d1 60,0 60,60",
                "r1 d1 0,0 60,0;r2 d1 60,0 90,0"
            })
    void whereTheEndsOfTheDuctAreUnclearTheyAreUnknown(String routes) {
        Sketch sketch = Sketch.of(
                "vault A 0,0\nvault B 60,0\nvault C 120,0\nvault D 60,60\nroute " + routes.replace(";", "\nroute "));
        list(sketch, "d1", innerduct(YES, NO));

        sketch.cut().network().spans().forEach(span -> {
            Innerduct innerduct = span.duct().contents().innerducts().get(0);
            assertEquals(UNKNOWN, innerduct.uncutAtA());
            assertEquals(UNKNOWN, innerduct.uncutAtB());
        });
    }

    /** Nothing recorded: the duct is the very one that was read, so that millions of spans cost nothing more. */
    @Test
    void withoutRecordsTheDuctIsShared() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault B 60,0
                vault C 120,0
                route r1 d1 0,0 120,0
                """);
        list(sketch, "d1", innerduct(UNKNOWN, UNKNOWN));

        sketch.cut().network().spans().forEach(span -> {
            assertSame(sketch.routes.get(0).duct(), span.duct());
            assertSame(EndFacts.UNKNOWN, span.fromFacts());
            assertSame(EndFacts.UNKNOWN, span.toFacts());
        });
    }

    /** The list of spans says of each duct what the span says of it, under its last name too. */
    @Test
    void ductsAndSpansOfTheListAgree() {
        Sketch sketch = Sketch.of("""
                vault A 0,0
                vault B 60,0
                route r1 d1 0,0 60,0
                route r2 d1 0,0 30,5 60,0
                """);
        record(sketch, "r1", new RouteEnds(facts("7", 5), EndFacts.UNKNOWN, YES, UNKNOWN));
        list(sketch, "d1", innerduct(UNKNOWN, UNKNOWN));
        var spans = sketch.cut().network().spans();

        assertEquals(2, spans.size());
        for (int span = 0; span < spans.size(); span++) {
            assertEquals(spans.get(span).duct(), spans.duct(span));
            assertEquals(spans.get(span).id(), spans.id(span));
        }
        assertEquals(List.of("A 7 5.0 y | B ?", "A ? | B ?"), facts(sketch));
        assertEquals(
                Optional.of("7"),
                Optional.of(spans.get(0).withId("other").fromFacts().hole()));
    }
}

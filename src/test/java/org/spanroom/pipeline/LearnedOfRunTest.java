package org.spanroom.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.input.InputData;
import org.spanroom.learn.LearnedContents;
import org.spanroom.learn.ReportedWork;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.DuctStratum;
import org.spanroom.model.network.Network;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.RankConfidence;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.permit.PermitAssessor;

/** A ranking of the demo city that simulates with what opened ducts say of the others. */
class LearnedOfRunTest {
    private static final RunConfig CONFIG = ConfigReader.read(Path.of("sample-gis", "spanroom.yaml"));
    private static final String STRATUM = "2000s, type eb, tidemarrow telephone";

    private static InputData inputs;
    private static Network network;
    private static Map<String, RankedSpan> before;

    @BeforeAll
    static void rankDemo() {
        var run = new RankRun(CONFIG, Progress.SILENT);
        inputs = run.read();
        network = run.cut(inputs);
        before = rank(LearnedChances.NONE);
    }

    private static Map<String, RankedSpan> rank(LearnedChances learned) {
        var permits = new PermitAssessor(inputs.zones(), CONFIG.permit(), ConfiguredParts.access(CONFIG));
        AssessedSpans ranked = new RankRun(CONFIG, Progress.SILENT).rank(network, permits, learned);
        Map<String, RankedSpan> byId = new LinkedHashMap<>();
        for (int place = 0; place < ranked.countRanked(); place++) {
            RankedSpan span = ranked.at(place);
            byId.put(span.span().id(), span);
        }
        return byId;
    }

    /** All ducts of one stratum that are ranked, but for the first, were found blocked. */
    private static FieldBook blocked() {
        var work = new ReportedWork();
        before.values().stream()
                .filter(span -> isOfStratum(span.span().duct()))
                .skip(1)
                .forEach(span -> work.word(span.span().id(), FieldFact.DUCT_CONDITION, "", "blocked"));
        return work.book();
    }

    private static boolean isOfStratum(Duct duct) {
        return DuctStratum.name(duct).equals(STRATUM);
    }

    private static double feasibleRatio(RankedSpan span) {
        return span.sureness().map(RankConfidence::feasibleRatio).orElseThrow();
    }

    @Test
    void blockedDuctsLowerTheChanceOfLikeOnesMost() {
        FieldBook book = blocked();
        LearnedContents learned = LearnedOfRun.contents(CONFIG, inputs, book);
        assertTrue(book.spans().size() > 10, "opened " + book.spans().size());
        assertEquals(book.spans().size(), learned.opened());

        Map<String, RankedSpan> after = rank(learned.chances());
        double likeRatio = 0;
        int like = 0;
        double otherRatio = 0;
        int other = 0;
        for (RankedSpan span : before.values()) {
            double fallRatio =
                    feasibleRatio(span) - feasibleRatio(after.get(span.span().id()));
            if (isOfStratum(span.span().duct())) {
                likeRatio += fallRatio;
                like++;
            } else {
                otherRatio += fallRatio;
                other++;
            }
        }
        assertTrue(likeRatio / like > otherRatio / other, likeRatio / like + " and " + otherRatio / other);
        assertTrue(otherRatio > 0);
    }

    @Test
    void withoutABookTheRankingIsThatOfTheConfig() {
        assertSame(LearnedChances.NONE, LearnedOfRun.chances(CONFIG, inputs));
        assertSame(
                LearnedChances.NONE,
                LearnedOfRun.contents(CONFIG, inputs, FieldBook.EMPTY).chances());
        assertNotEquals(Map.of(), before);
    }

    /** A report on a span that the run does not have says nothing of its ducts. */
    @Test
    void spansOfAnotherRunAreNotOpened() {
        FieldBook book = new ReportedWork()
                .word("elsewhere:V1:V2", FieldFact.DUCT_CONDITION, "", "blocked")
                .book();

        assertEquals(0, LearnedOfRun.contents(CONFIG, inputs, book).opened());
    }
}

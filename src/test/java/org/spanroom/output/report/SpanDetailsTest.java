package org.spanroom.output.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.effort.EffortAssessor;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.effort.EffortLine;
import org.spanroom.model.effort.EffortPart;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.SpanExplanationSample;
import org.spanroom.output.report.SpanDetail.Drawing;
import org.spanroom.output.report.SpanDetail.MoneyLine;

class SpanDetailsTest {
    private final SpanExplanation explained = withLines(SpanExplanationSample.workedExample());

    private static SpanExplanation withLines(SpanExplanation plain) {
        var assessor = new EffortAssessor(
                ShippedConfig.get().rates(),
                ShippedConfig.get().vaultKinds(),
                ShippedConfig.get().room().demandPositions());
        Assessment assessed = plain.assessment();
        List<EffortLine> lines =
                assessor.lines(assessor.quantities(assessed.span(), assessed.room(), assessed.pull(), Permits.NONE));
        return new SpanExplanation(
                plain.ranked(), plain.recorded(), plain.pulling(), plain.traces(), lines, "crowns", List.of());
    }

    @Test
    void drawingsBeginWithNowAndTheProposalAndAreOfAllowedChoicesOnly() {
        Room room = explained.assessment().room();
        List<Drawing> drawings = SpanDetails.of(explained, UnitSystem.METRIC).drawings();

        assertEquals("now", drawings.get(0).label());
        PullChoice proposed = room.proposal().orElseThrow();
        assertTrue(
                drawings.get(1).label().startsWith(proposed.words()),
                drawings.get(1).label());
        assertTrue(
                drawings.get(1).label().endsWith("(proposed)"), drawings.get(1).label());
        long changing = room.choices().stream()
                .filter(choice -> choice.allowed() && (choice.isRecovery() || choice.newCables() > 0))
                .count();
        assertEquals(1 + changing, drawings.size());
        assertEquals(
                drawings.size(),
                drawings.stream().map(Drawing::label).distinct().count());
    }

    @Test
    void unknownContentsHaveNoDrawing() {
        assertEquals(List.of(), SectionDrawings.of(Room.unknown(8000)));
    }

    /** Quantity and rate in words, multiplied again, give the amount of each line. */
    @ParameterizedTest
    @EnumSource(UnitSystem.class)
    void quantityTimesRateIsTheAmount(UnitSystem units) {
        List<MoneyLine> lines = SpanDetails.of(explained, units).money();
        List<EffortLine> account = explained.effortLines().stream()
                .filter(line -> Stream.of(EffortPart.Kind.COST, EffortPart.Kind.NEW_BUILD)
                        .anyMatch(kind -> kind == line.part().kind()))
                .toList();

        assertEquals(account.size(), lines.size());
        assertTrue(lines.size() > 10, lines.size() + " lines");
        for (int i = 0; i < lines.size(); i++) {
            MoneyLine line = lines.get(i);
            assertEquals(account.get(i).amountInUnit(), line.amountMoney());
            double product = number(line.quantity()) * rate(line.rate());
            assertEquals(line.amountMoney(), product, 0.02 * Math.abs(line.amountMoney()) + 1, line.toString());
        }
    }

    private static double rate(String words) {
        double factor = words.contains(" x ") ? number(words.substring(words.indexOf(" x ") + 3)) : 1;
        return factor * number(words) / (words.contains("%") ? 100 : 1);
    }

    private static double number(String words) {
        return Double.parseDouble(words.split(" ", -1)[0].replace(",", ""));
    }

    @Test
    void moneyLinesSayTheirUnitsAndSources() {
        List<MoneyLine> metric = SpanDetails.of(explained, UnitSystem.METRIC).money();
        List<MoneyLine> us = SpanDetails.of(explained, UnitSystem.US).money();

        assertTrue(line(metric, "sleeves").quantity().endsWith(" m"));
        assertTrue(line(us, "sleeves").quantity().endsWith(" ft"));
        assertTrue(line(us, "sleeves").rate().endsWith(" crowns/ft"));
        assertTrue(line(us, "labor").rate().endsWith("/h"));
        assertTrue(line(us, "seals").rate().endsWith(" each"));
        assertTrue(line(us, "overhead").rate().endsWith(" %"));
        assertTrue(metric.stream().anyMatch(line -> line.part().startsWith("new build: ")));
        assertTrue(line(metric, "labor").source().startsWith("illustrative ("));
    }

    private static MoneyLine line(List<MoneyLine> lines, String part) {
        return lines.stream()
                .filter(line -> line.part().equals(part))
                .findFirst()
                .orElseThrow();
    }
}

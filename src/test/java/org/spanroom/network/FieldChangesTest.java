package org.spanroom.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Answer;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.EndFacts;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Sleeve;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.UsualItems;
import org.spanroom.testing.Ducts;

/** What entries of the field book change of a duct. */
class FieldChangesTest {
    private static final LocalDate MONDAY = LocalDate.of(2027, 3, 1);
    private static final Cable USUAL_CABLE = new Cable("cable", 17.8, 0.25, Service.LIVE);
    private static final UsualItems USUAL =
            new UsualItems(Optional.of(new Innerduct("innerduct", 42.2, 3.1, List.of())), Optional.of(USUAL_CABLE));

    private final List<FieldEntry> entries = new ArrayList<>();

    private FieldChangesTest say(FieldFact fact, String item, String value) {
        FactUnit unit = fact.kind().units().get(0);
        FactValue found = fact.kind().isNumber()
                ? FactValue.ofNumber(value, unit, Double.parseDouble(value))
                : FactValue.ofText(value);
        int number = entries.size() + 1;
        entries.add(new FieldEntry(
                number,
                fact,
                "D1:V1:V2",
                item,
                found,
                Optional.empty(),
                "crew 1",
                MONDAY.plusDays(number),
                OptionalInt.empty(),
                "00c0ffee",
                ""));
        return this;
    }

    private static Cable cable(int number) {
        return new Cable("cable-" + number, 12, 0.2, Service.LIVE);
    }

    /** Innerducts and cables of one size, one in each, as attributes of a duct give them. */
    private static Contents simple(int innerducts, int cables) {
        var pipes = new ArrayList<Innerduct>();
        for (int i = 1; i <= innerducts; i++) {
            pipes.add(new Innerduct("innerduct-" + i, 33, 3, i <= cables ? List.of(cable(i)) : List.of()));
        }
        var loose = new ArrayList<Cable>();
        for (int i = innerducts + 1; i <= cables; i++) {
            loose.add(cable(i));
        }
        return new Contents(pipes, loose, true);
    }

    private static Duct duct(Contents contents, Term... assumed) {
        return Ducts.round("D1", "B1", 101.6, contents, Set.of(assumed));
    }

    private static Span span(Duct duct) {
        return Ducts.span(duct, "V1", "V2", Line.ofXy(0, 0, 100, 0));
    }

    private FieldChanges.Applied applied(Duct duct) {
        return new FieldChanges(USUAL).apply(span(duct), entries);
    }

    private Duct clean(Duct duct) {
        FieldChanges.Applied applied = applied(duct);
        assertEquals(List.of(), applied.problems());
        return applied.duct();
    }

    private void assertProblem(Duct duct, FindingCode code, String words) {
        List<FieldProblem> problems = applied(duct).problems();
        assertTrue(
                problems.stream()
                        .anyMatch(
                                found -> found.code() == code && found.detail().contains(words)),
                problems.toString());
    }

    @Test
    void whatIsKeptForPeopleChangesNothing() {
        say(FieldFact.OXYGEN, "", "20.9")
                .say(FieldFact.STEP_HOURS, "pulling", "1")
                .say(FieldFact.SIGNED_BY, "", "me");
        Duct recorded = duct(simple(3, 3));

        assertSame(recorded, clean(recorded));
    }

    @Test
    void factsThatEqualTheRecordsChangeNothingButWhereTheyAreFrom() {
        Duct recorded = duct(simple(3, 2), Term.INSIDE_DIAMETER, Term.INNERDUCT_COUNT, Term.CABLE_COUNT, Term.FLOODED);
        say(FieldFact.BORE_DIAMETER, "", "101.6")
                .say(FieldFact.DUCT_FLOODED, "", "no")
                .say(FieldFact.INNERDUCTS_FOUND, "", "3")
                .say(FieldFact.CABLES_FOUND, "", "2")
                .say(FieldFact.INNERDUCT_THERE, "innerduct-2", "yes")
                .say(FieldFact.INNERDUCT_DIAMETER, "innerduct-2", "33")
                .say(FieldFact.CABLE_SERVICE, "cable-1", "live")
                .say(FieldFact.CABLE_IN, "cable-1", "innerduct-1");

        Duct found = clean(recorded);

        assertEquals(recorded.contents(), found.contents());
        assertEquals(recorded.insideDiameterMm(), found.insideDiameterMm());
        assertEquals(Set.of(), found.assumed());
        assertEquals(ContentsSource.RECORDED, found.contentsSource());
        assertEquals(List.of(1, 2, 3, 4, 5, 6, 7, 8), found.fieldRecord().entries());
    }

    /** The rule of attributes: one cable in each innerduct, the others loose. */
    @ParameterizedTest(name = "recorded {0} and {1}, found {2} and {3}")
    @CsvSource({
        "3,3,4,4", "3,3,2,3", "3,3,3,1", "3,1,3,3", "2,3,3,3", "3,3,0,2", "0,2,2,2", "3,3,1,0", "4,2,2,4", "1,1,6,2"
    })
    void countsThatWereFoundGiveTheContentsThatTheyWouldGiveAsRecords(int hadIn, int hadCables, int in, int cables) {
        say(FieldFact.INNERDUCTS_FOUND, "", "" + in).say(FieldFact.CABLES_FOUND, "", "" + cables);

        Duct found = clean(duct(simple(hadIn, hadCables), Term.INNERDUCT_COUNT, Term.CABLE_COUNT));

        Contents expected = simple(in, cables);
        assertEquals(expected.innerducts().size(), found.contents().innerducts().size());
        assertEquals(
                expected.innerducts().stream().map(pipe -> pipe.cables().size()).toList(),
                found.contents().innerducts().stream()
                        .map(pipe -> pipe.cables().size())
                        .toList());
        assertEquals(
                expected.looseCables().size(), found.contents().looseCables().size());
        assertFalse(found.assumed().contains(Term.INNERDUCT_COUNT));
        assertFalse(found.assumed().contains(Term.CABLE_COUNT));
    }

    @Test
    void unknownContentsBecomeKnownByBothCountsWithAssumedSizes() {
        say(FieldFact.INNERDUCTS_FOUND, "", "2").say(FieldFact.CABLES_FOUND, "", "1");

        Duct found = clean(duct(Contents.UNKNOWN, Term.INNERDUCT_COUNT, Term.CABLE_COUNT));

        assertTrue(found.contents().known());
        assertEquals(42.2, found.contents().innerducts().get(1).outsideDiameterMm());
        assertEquals(1, found.contents().innerducts().get(0).cables().size());
        assertEquals(ContentsSource.RECORDED, found.contentsSource());
        assertEquals(
                Set.of(
                        Term.INNERDUCT_OUTSIDE_DIAMETER,
                        Term.INNERDUCT_SDR,
                        Term.CABLE_OUTSIDE_DIAMETER,
                        Term.CABLE_MASS,
                        Term.IN_SERVICE),
                found.assumed());
    }

    @Test
    void oneCountAloneLeavesUnknownContentsUnknown() {
        say(FieldFact.INNERDUCTS_FOUND, "", "2");

        assertFalse(applied(duct(Contents.UNKNOWN)).duct().contents().known());
        assertProblem(
                duct(Contents.UNKNOWN), FindingCode.FIELD_ENTRY_INCOMPLETE, "until innerducts_found and cables_found");
    }

    @Test
    void measuredSizesReplaceRecordedOnes() {
        say(FieldFact.INNERDUCT_DIAMETER, "innerduct-1", "42.2")
                .say(FieldFact.INNERDUCT_WALL, "innerduct-1", "3.2")
                .say(FieldFact.INNERDUCT_DIAMETER, "innerduct-2", "66")
                .say(FieldFact.CABLE_DIAMETER, "cable-1", "15")
                .say(FieldFact.CABLE_SERVICE, "cable-1", "dead");

        Duct found = clean(duct(
                simple(2, 1),
                Term.INNERDUCT_OUTSIDE_DIAMETER,
                Term.INNERDUCT_SDR,
                Term.CABLE_OUTSIDE_DIAMETER,
                Term.IN_SERVICE));

        List<Innerduct> pipes = found.contents().innerducts();
        assertEquals(new Innerduct("innerduct-1", 42.2, 3.2, pipes.get(0).cables()), pipes.get(0));
        // A wall that was not measured keeps its share: 3 of 33 mm, 6 of 66 mm.
        assertEquals(6, pipes.get(1).wallMm(), 1e-12);
        assertEquals(
                new Cable("cable-1", 15, 0.2, Service.DEAD),
                pipes.get(0).cables().get(0));
        // One of two walls is measured, so the SDR stays assumed.
        assertEquals(Set.of(Term.INNERDUCT_SDR), found.assumed());
    }

    @Test
    void anInnerductThatIsNotThereLeavesItsCableLoose() {
        say(FieldFact.INNERDUCT_THERE, "innerduct-2", "no").say(FieldFact.CABLE_THERE, "cable-9", "yes");

        Contents found = clean(duct(simple(2, 2))).contents();

        assertEquals(
                List.of("innerduct-1"),
                found.innerducts().stream().map(Innerduct::id).toList());
        assertEquals(
                List.of("cable-2", "cable-9"),
                found.looseCables().stream().map(Cable::id).toList());
    }

    @Test
    void anAdditionalInnerductIsLikeTheOthersAndTakesTheNameThatIsReported() {
        say(FieldFact.INNERDUCTS_FOUND, "", "3").say(FieldFact.INNERDUCT_DIAMETER, "blue", "26.7");

        List<Innerduct> found = clean(duct(simple(2, 2))).contents().innerducts();

        assertEquals(
                List.of("innerduct-1", "innerduct-2", "blue"),
                found.stream().map(Innerduct::id).toList());
        assertEquals(26.7, found.get(2).outsideDiameterMm());
    }

    @Test
    void whatWasDoneComesAfterWhatWasFoundWhateverTheOrderOfTheDays() {
        say(FieldFact.INNERDUCT_OUT, "innerduct-1", "yes")
                .say(FieldFact.INNERDUCT_OUT, "innerduct-2", "yes")
                .say(FieldFact.SLEEVE_CELLS, "s1", "3")
                .say(FieldFact.CABLE_IN, "cable-1", "s1")
                .say(FieldFact.CABLE_OUT, "cable-3", "yes")
                .say(FieldFact.INNERDUCTS_FOUND, "", "2")
                .say(FieldFact.CABLES_FOUND, "", "3")
                .say(FieldFact.STATUS, "", "done");

        Duct found = clean(duct(simple(3, 3)));

        assertEquals(List.of(), found.contents().innerducts());
        assertEquals(
                List.of(new Sleeve("s1", 3, 0, List.of(cable(1)))),
                found.contents().sleeves());
        assertEquals(List.of(cable(2)), found.contents().looseCables());
        assertTrue(found.fieldRecord().is(WorkStatus.DONE));
        assertEquals(Optional.of(MONDAY.plusDays(8)), found.fieldRecord().statusDay());
    }

    @Test
    void aSleeveKeepsWhatIsPromised() {
        var before = new Contents(List.of(), List.of(new Sleeve("s1", 3, 2, List.of(cable(1)))), List.of(), true);
        say(FieldFact.SLEEVE_CELLS, "s1", "4");

        assertEquals(
                List.of(new Sleeve("s1", 4, 2, List.of(cable(1)))),
                clean(duct(before)).contents().sleeves());
    }

    @Test
    void anObstructionBlocksTheDuctUntilItIsReportedSound() {
        say(FieldFact.DUCT_CONDITION, "", "sound").say(FieldFact.BLOCKED_AT, "b", "41.2");
        Duct blocked = clean(duct(simple(1, 1), Term.CONDITION));
        assertEquals(Condition.BLOCKED, blocked.condition());
        assertEquals(OptionalDouble.of(41.2), blocked.fieldRecord().blockedAtM());
        assertEquals("V2", blocked.fieldRecord().blockedFrom());
        assertEquals(Set.of(), blocked.assumed());

        say(FieldFact.DUCT_CONDITION, "", "sound");
        Duct sound = clean(duct(simple(1, 1)));
        assertEquals(Condition.SOUND, sound.condition());
        assertEquals(OptionalDouble.empty(), sound.fieldRecord().blockedAtM());
    }

    @Test
    void contradictionsNameTheEntryAndTheRestIsUsed() {
        say(FieldFact.INNERDUCT_THERE, "innerduct-1", "yes")
                .say(FieldFact.INNERDUCT_THERE, "innerduct-2", "yes")
                .say(FieldFact.INNERDUCTS_FOUND, "", "1")
                .say(FieldFact.INNERDUCT_DIAMETER, "innerduct-7", "42")
                .say(FieldFact.INNERDUCT_WALL, "innerduct-1", "30")
                .say(FieldFact.CABLE_IN, "cable-1", "s9")
                .say(FieldFact.CABLE_OUT, "cable-8", "yes")
                .say(FieldFact.SLEEVE_CELLS, "innerduct-2", "3")
                .say(FieldFact.BLOCKED_AT, "a", "400");

        // The diameter of an innerduct that is not there counts as naming it, so the count contradicts three.
        FieldChanges.Applied applied = applied(duct(simple(2, 1)));
        assertEquals(
                List.of(9, 3, 4, 5, 8, 6, 7),
                applied.problems().stream().map(FieldProblem::entry).toList());
        assertTrue(applied.problems().stream()
                .allMatch(problem -> problem.code() == FindingCode.FIELD_ENTRY_CONTRADICTS
                        && problem.detail().startsWith("entry " + problem.entry() + ", ")));
        assertEquals(simple(2, 1), applied.duct().contents());
        assertEquals(Condition.BLOCKED, applied.duct().condition());
        assertEquals(OptionalDouble.empty(), applied.duct().fieldRecord().blockedAtM());
    }

    @Test
    void contentsThatExceedTheBoreAreReported() {
        say(FieldFact.INNERDUCTS_FOUND, "", "20");

        assertProblem(duct(simple(2, 1)), FindingCode.FIELD_ENTRY_CONTRADICTS, "in a bore of 8107 mm2");
    }

    @Test
    void aSleeveTakesNoMoreCablesThanItHasCells() {
        say(FieldFact.SLEEVE_CELLS, "s1", "1")
                .say(FieldFact.CABLE_IN, "cable-1", "s1")
                .say(FieldFact.CABLE_IN, "cable-2", "s1");

        assertProblem(duct(simple(2, 2)), FindingCode.FIELD_ENTRY_CONTRADICTS, "2 cables are in its 1 cell");
    }

    @Test
    void workThatIsDoneAsksWhatCameOut() {
        say(FieldFact.STATUS, "", "done");

        assertProblem(duct(simple(2, 2)), FindingCode.FIELD_ENTRY_INCOMPLETE, "report innerduct_out and sleeve_cells");
    }

    @Test
    void theLastReportOfAFactCounts() {
        say(FieldFact.STATUS, "", "in_work")
                .say(FieldFact.STATUS, "", "stopped")
                .say(FieldFact.STATUS_REASON, "", "froze");

        Duct found = clean(duct(simple(1, 1)));

        assertTrue(found.fieldRecord().is(WorkStatus.STOPPED));
        assertEquals("froze", found.fieldRecord().statusReason());
    }

    @Test
    void colorsTagsAndUncutInnerductsAreThoseThatWereFoundAndStayWhenSizesChange() {
        say(FieldFact.INNERDUCT_COLOR, "innerduct-1", "orange")
                .say(FieldFact.INNERDUCT_UNCUT, "innerduct-1 b", "yes")
                .say(FieldFact.INNERDUCT_DIAMETER, "innerduct-1", "42.2")
                .say(FieldFact.CABLE_TAG, "cable-1", "F-12")
                .say(FieldFact.CABLE_SERVICE, "cable-1", "live");

        Innerduct found = clean(duct(simple(1, 1))).contents().innerducts().get(0);

        assertEquals("orange", found.color());
        assertEquals(Answer.UNKNOWN, found.uncutAtA());
        assertEquals(Answer.YES, found.uncutAtB());
        assertEquals("F-12", found.cables().get(0).tag());
    }

    @Test
    void holeAndSlackAtAnEndReplaceWhatIsRecordedThere() {
        say(FieldFact.DUCT_HOLE, "b", "2/3").say(FieldFact.CABLE_SLACK_FOUND, "a", "4.5");

        FieldChanges.Applied applied = applied(duct(simple(1, 1)));

        assertEquals(new EndFacts("", OptionalDouble.of(4.5)), applied.fromFacts());
        assertEquals(new EndFacts("2/3", OptionalDouble.empty()), applied.toFacts());
    }
}

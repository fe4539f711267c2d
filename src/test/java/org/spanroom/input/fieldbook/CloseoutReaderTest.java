package org.spanroom.input.fieldbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.InputException;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.RowProblem;
import org.spanroom.model.fieldwork.SheetCode;

class CloseoutReaderTest {
    private static final String HEADER = "code,span,vault,fact,item,planned,value,unit,by,date,supersedes,note\n";
    private static final String RUN = "00c0ffee";
    private static final String SPAN = "D1:V1:V2";
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 31);

    @TempDir
    Path folder;

    private static FieldEntry status(int number, String value, OptionalInt supersedes) {
        return new FieldEntry(
                number,
                FieldFact.STATUS,
                SPAN,
                "",
                FactValue.ofText(value),
                Optional.empty(),
                "crew 1",
                LocalDate.of(2027, 3, 1),
                supersedes,
                RUN,
                "");
    }

    private CloseoutReader.Result read(String text, FieldEntry... entered) throws IOException {
        return read(text.getBytes(StandardCharsets.UTF_8), entered);
    }

    private CloseoutReader.Result read(byte[] bytes, FieldEntry... entered) throws IOException {
        Path file = Files.write(folder.resolve("closeout.csv"), bytes);
        var scope = new CloseoutScope(
                RUN,
                Map.of(
                        SPAN,
                        new CloseoutScope.Ends("V1", "V2", 100),
                        "D1:V2:V3",
                        new CloseoutScope.Ends("V2", "V3", 80),
                        "D2:V1:V2",
                        new CloseoutScope.Ends("V1", "V2", 100)),
                Set.of("V1", "V2", "V3"),
                new FieldBook(List.of(entered)),
                entered.length + 1,
                TODAY,
                ShippedConfig.get().plausible());
        return new CloseoutReader(scope).read(file);
    }

    /** One row that is good but for one cell. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '#',
            value = {
                "an unknown fact # ,D1:V1:V2,,statsu,,,done,,C,2027-03-01,, # fact # 'statsu' is not a fact # Did you mean status?",
                "no fact # ,D1:V1:V2,,,,,done,,C,2027-03-01,, # fact # no fact is named # Name one",
                "an unknown word # ,D1:V1:V2,,status,,,finished,,C,2027-03-01,, # value # 'finished' is not a value of status # done",
                "an answer that is none # ,D1:V1:V2,,duct_flooded,,,perhaps,,C,2027-03-01,, # value # neither yes nor no # Write yes or no",
                "a unit of another kind # ,D1:V1:V2,,bore_diameter,,,4,ft,C,2027-03-01,, # unit # not a unit of bore_diameter # Write mm or in",
                "a unit in the value of another kind # ,D1:V1:V2,,bore_diameter,,,4 ft,,C,2027-03-01,, # value # ft is not a unit of bore_diameter # Write mm or in",
                "two units # ,D1:V1:V2,,bore_diameter,,,4 in,mm,C,2027-03-01,, # value # the column unit says mm # only one",
                "no unit # ,D1:V1:V2,,bore_diameter,,,100,,C,2027-03-01,, # unit # the unit is missing # Write mm or in",
                "a unit of a word # ,D1:V1:V2,,status,,,done,ft,C,2027-03-01,, # unit # status has no unit # Leave it empty",
                "implausible # ,D1:V1:V2,,bore_diameter,,,4,mm,C,2027-03-01,, # value # outside the plausible range # 4 in would be plausible",
                "no number # ,D1:V1:V2,,bore_diameter,,,wide,mm,C,2027-03-01,, # value # 'wide' is not a number # such as 41.5",
                "a count that is not whole # ,D1:V1:V2,,cables_found,,,2.5,,C,2027-03-01,, # value # not a whole number # such as 3",
                "a negative count # ,D1:V1:V2,,cables_found,,,-1,,C,2027-03-01,, # value # outside the plausible range # Check",
                "an unknown step # ,D1:V1:V2,,step_hours,puling,,1,h,C,2027-03-01,, # item # 'puling' is not a step # Did you mean pulling?",
                "no step # ,D1:V1:V2,,step_hours,,,1,h,C,2027-03-01,, # item # no step is named # pulling",
                "no item # ,D1:V1:V2,,innerduct_out,,,yes,,C,2027-03-01,, # item # the innerduct is not named # as the sheet does",
                "an item too many # ,D1:V1:V2,,status,x,,done,,C,2027-03-01,, # item # status has no item # Leave it empty",
                "no end # ,D1:V1:V2,,blocked_at,west,,40,m,C,2027-03-01,, # item # 'west' is not an end # Write a",
                "no end behind the name # ,D1:V1:V2,,innerduct_uncut,i1,,yes,,C,2027-03-01,, # item # 'i1' is not the name # innerduct-2 a",
                "beyond the end # ,D1:V1:V2,,blocked_at,a,,400,m,C,2027-03-01,, # value # beyond the end of the span # unit",
                "a bad day # ,D1:V1:V2,,status,,,done,,C,03/01/2027,, # date # '03/01/2027' is not a day # 2027-03-31",
                "a day that there is not # ,D1:V1:V2,,status,,,done,,C,2027-02-30,, # date # '2027-02-30' is not a day # 2027-03-31",
                "a day long ago # ,D1:V1:V2,,status,,,done,,C,0027-02-03,, # date # '0027-02-03' is not a day # 2027-03-31",
                "a day to come # ,D1:V1:V2,,status,,,done,,C,2027-04-01,, # date # 2027-04-01 is in the future # was found",
                "no day # ,D1:V1:V2,,status,,,done,,C,,, # date # the day is missing # 2027-03-31",
                "no name # ,D1:V1:V2,,status,,,done,,,2027-03-01,, # by # no name is given # who found it",
                "a code of another run # SR1|deadbeef|s|D1:V1:V2|1,,,status,,,done,,C,2027-03-01,, # code # the run deadbeef # --run",
                "no code # D1,D1:V1:V2,,status,,,done,,C,2027-03-01,, # code # 'D1' is not the code # Leave it empty",
                "span and code # SR1|00c0ffee|s|D2:V1:V2|1,D1:V1:V2,,status,,,done,,C,2027-03-01,, # span # its code the span 'D2:V1:V2' # Correct the one",
                "no span # ,,,status,,,done,,C,2027-03-01,, # span # no span is named # Name it",
                "an unknown span # ,D1:V1:V3,,status,,,done,,C,2027-03-01,, # span # no span 'D1:V1:V3' # The nearest are D1:V1:V2, D1:V2:V3.",
                "an unknown vault # ,,V9,vault_water,,,yes,,C,2027-03-01,, # vault # a vault 'V9' # The nearest are V1, V2, V3.",
                "no vault # ,D1:V1:V2,,vault_water,,,yes,,C,2027-03-01,, # vault # none is named # Name it",
                "a vault elsewhere # ,D1:V1:V2,V3,status,,,done,,C,2027-03-01,, # vault # between V1 and V2 # Leave it empty",
                "a correction of nothing # ,D1:V1:V2,,status,,,done,,C,2027-03-01,9, # supersedes # no entry 9 # Name the entry",
                "a correction of another fact # ,D1:V1:V2,,cables_found,,,2,,C,2027-03-01,1, # supersedes # entry 1 is about status, not cables_found # same fact",
                "a correction of another span # ,D2:V1:V2,,status,,,done,,C,2027-03-01,1, # supersedes # about D1:V1:V2, not D2:V1:V2 # same span",
                "a correction of what is corrected # ,D1:V1:V2,,status,,,done,,C,2027-03-02,2, # supersedes # corrected by entry 3 # Name that one",
                "a correction by nothing # ,D1:V1:V2,,status,,,,,C,2027-03-01,1, # value # has no value # Write what is right",
                "entered already # ,D1:V1:V2,,status,,,planned,,C,2027-03-01,, #  # already entered as entry 1 # --partial",
                "too many cells # ,D1:V1:V2,,status_reason,,,a, b,,C,2027-03-01,,x #  # it has 13 cells, and the header 12 # quotes"
            })
    void whatIsWrongIsSaidWithLineColumnAndRemedy(String what, String row, String column, String problem, String remedy)
            throws IOException {
        CloseoutReader.Result result = read(
                HEADER + "\n" + row + "\n",
                status(1, "planned", OptionalInt.empty()),
                status(2, "in_work", OptionalInt.empty()),
                status(3, "stopped", OptionalInt.of(2)));

        assertEquals(List.of(), result.entries(), what);
        RowProblem found = result.problems().get(0);
        assertEquals(1, result.problems().size(), result.problems().toString());
        assertEquals(3, found.line());
        assertEquals(column == null ? "" : column, found.column());
        assertTrue(found.problem().contains(problem), found.words());
        assertTrue(found.remedy().contains(remedy), found.words());
    }

    @Test
    void aNumberOfTwoMeaningsIsNotGuessed() throws IOException {
        CloseoutReader.Result result = read(HEADER + ",D1:V1:V2,,cost,,,\"1,250\",,C,2027-03-01,,\n");

        assertTrue(result.problems().get(0).words().contains("can mean only one thing"));
    }

    @Test
    void aRowMayBeWrongInSeveralPlaces() throws IOException {
        CloseoutReader.Result result = read(HEADER + ",D9:V1:V2,,statsu,,,done,,,someday,,\n");

        assertEquals(
                Set.of("fact", "date", "by"),
                Set.copyOf(result.problems().stream().map(RowProblem::column).toList()));
    }

    @Test
    void whatIsUnderstoodKeepsWhatWasReported() throws IOException {
        var code = new SheetCode(RUN, "B1: V1 V2", SPAN, 2);
        CloseoutReader.Result result = read(HEADER
                + code.text() + ",,,pull_force,innerduct-1,\"309\",95 lbf,,Crew 2,2027-03-01,,\"wet, \"\"slow\"\"\"\n"
                + ",,V2,vault_depth,,,\"7,5\",ft,Crew 2,2027-03-01,,\n");

        assertEquals(List.of(), result.problems());
        FieldEntry force = result.entries().get(0);
        assertEquals(1, force.number());
        assertEquals(SPAN, force.subject());
        assertEquals(new FactValue("95", FactUnit.LBF, OptionalDouble.of(95 * 4.4482216152605)), force.value());
        assertEquals("wet, \"slow\"", force.note());
        FieldEntry depth = result.entries().get(1);
        assertEquals(2, depth.number());
        assertEquals("V2", depth.subject());
        assertEquals(2.286, depth.value().keptInUnit().orElseThrow(), 1e-12);
    }

    @Test
    void rowsWithoutAValueReportNothing() throws IOException {
        CloseoutReader.Result result = read(HEADER + ",D1:V1:V2,,cables_found,,2,,,,,,\n,,,,,,,,,,,\n");

        assertEquals(1, result.rows());
        assertEquals(1, result.empty());
        assertEquals(List.of(), result.problems());
    }

    @Test
    void aRowThatIsThereTwiceIsEnteredOnce() throws IOException {
        String row = ",D1:V1:V2,,bore_diameter,,,";
        String rest = ",C,2027-03-01,,\n";
        CloseoutReader.Result result = read(HEADER + row + "4,in" + rest + row + "101.6,mm" + rest);

        assertEquals(1, result.entries().size());
        assertEquals(
                "line 3: it says the same as line 2. Remove one of them.",
                result.problems().get(0).words());
        assertEquals(1, result.repeated());
    }

    @Test
    void aCorrectionMayReportWhatWasCorrectedBefore() throws IOException {
        CloseoutReader.Result result = read(
                HEADER + ",D1:V1:V2,,status,,,planned,,C,2027-03-01,2,\n",
                status(1, "planned", OptionalInt.empty()),
                status(2, "in_work", OptionalInt.of(1)));

        assertEquals(List.of(), result.problems());
        assertEquals(OptionalInt.of(2), result.entries().get(0).supersedes());
    }

    @Test
    void entriesOfARenamedSpanMoveToItsNewName() throws IOException {
        FieldEntry old = new FieldEntry(
                1,
                FieldFact.STATUS,
                "OLD:V1:V2",
                "",
                FactValue.ofText("done"),
                Optional.empty(),
                "crew 1",
                LocalDate.of(2027, 3, 1),
                OptionalInt.empty(),
                RUN,
                "");

        CloseoutReader.Result result = read(HEADER + ",D1:V1:V2,,status,,,done,,C,2027-03-01,1,\n", old);

        assertEquals(List.of(), result.problems());
    }

    @ParameterizedTest(name = "a quote that opens in the column {0}")
    @ValueSource(strings = {"status_reason,,,\"froze", "status_reason,,,froze,,C,2027-03-01,,\"note"})
    void aQuoteThatIsNotClosedSwallowsNoRowSilently(String cells) throws IOException {
        String good = ",D1:V1:V2,,status,,,done,,C,2027-03-01,,\n";
        CloseoutReader.Result result = read(HEADER + good + ",D1:V1:V2,," + cells + "\n" + good + good);

        assertEquals(1, result.entries().size());
        RowProblem found = result.problems().get(0);
        assertEquals(3, found.line());
        assertTrue(found.words().contains("it and the 2 lines after it are one row"), found.words());
    }

    @Test
    void aQuoteThatIsNotClosedInTheLastRowIsNamedWithoutLinesThatItSwallowed() throws IOException {
        CloseoutReader.Result result = read(HEADER + ",D1:V1:V2,,status_reason,,,\"froze,,C,2027-03-01,,\n");

        assertEquals("a quote (\") is not closed", result.problems().get(0).problem());
    }

    /** Alt and Enter in a cell of a spreadsheet: the quote is closed, and another row follows. */
    @ParameterizedTest
    @CsvSource({
        "'status_reason,,,\"froze\nagain\"', value",
        "'site_hours,,,\"1.06\n\"', value",
        "'status,,,done,,\"C\n\"', by"
    })
    void aLineBreakInACellIsNotCalledAnOpenQuote(String cells, String column) throws IOException {
        String good = ",D1:V1:V2,,status,,,done,,C,2027-03-01,,\n";
        String rest = column.equals("by") ? ",2027-03-01,,\n" : ",,C,2027-03-01,,\n";
        CloseoutReader.Result result = read(HEADER + ",D1:V1:V2,," + cells + rest + good);

        assertEquals(1, result.entries().size());
        assertEquals(1, result.problems().size());
        RowProblem found = result.problems().get(0);
        assertEquals(2, found.line());
        assertEquals(column, found.column());
        assertTrue(found.problem().startsWith("the cell has a line break"), found.words());
    }

    @Test
    void aNoteMayHaveSeveralLines() throws IOException {
        CloseoutReader.Result result =
                read(HEADER + ",D1:V1:V2,,status,,,done,,C,2027-03-01,,\"first\nsecond, and third\"\n");

        assertEquals("first second, and third", result.entries().get(0).note());
    }

    @ParameterizedTest
    @CsvSource({"UTF-8, ','", "UTF-16LE, ';'", "windows-1252, ;", "UTF-8, '\t'", "UTF-8, |"})
    void anyEncodingAndSeparatorOfTablesWillDo(String charset, char separator) throws IOException {
        String text = (HEADER + ",D1:V1:V2,,status_reason,,,câble gelé,,Zoë,2027-03-01,,\n").replace(',', separator);
        String mark = charset.startsWith("UTF-16") ? "\uFEFF" : "";
        CloseoutReader.Result result = read((mark + text).getBytes(Charset.forName(charset)));

        assertEquals(List.of(), result.problems());
        assertEquals("câble gelé", result.entries().get(0).value().text());
        assertEquals("Zoë", result.entries().get(0).by());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "code,span,vault,item,value,by,date; the column 'fact' is missing",
                "span,fact,valu,by,date; the column 'value' is missing; is it 'valu'?",
                "span,fact,value,by,date,fact; two columns are called fact",
                "''; the close-out file is empty"
            })
    void aFileThatIsNoneIsRefused(String header, String problem) {
        var refused = assertThrows(InputException.class, () -> read(header + "\n"));

        assertTrue(refused.getMessage().contains(problem.split(";", -1)[0]), refused.getMessage());
    }

    @Test
    void columnsOfOthersAreNamed() throws IOException {
        CloseoutReader.Result result =
                read("span,fact,value,by,date,weather\nD1:V1:V2,status,done,C,2027-03-01,sunny\n");

        assertEquals(List.of("weather"), result.others());
        assertEquals(1, result.entries().size());
    }
}

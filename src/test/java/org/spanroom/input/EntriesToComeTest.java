package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.input.layer.CappedLog;

/** Entries of a field book that are dated after the run date: each is named, unless as_of or a correction leaves it out. */
class EntriesToComeTest {
    private static final LocalDate RUN_DATE = LocalDate.of(2027, 3, 31);

    private static final String BOOK = """
            format,entry,run,span,vault,fact,item,planned,value,unit,by,date,supersedes,note,entered
            1,1,00c0ffee,,V1,vault_water,,,yes,,Crew 1,2027-03-31,,,2027-04-01
            1,2,00c0ffee,B1:V1:V2,,status,,,done,,Crew 1,2027-04-01,,,2027-04-01
            1,3,00c0ffee,,V2,vault_water,,,no,,Crew 1,2072-03-01,,,2027-04-01
            1,4,00c0ffee,,V2,vault_water,,,no,,Crew 1,2027-03-01,3,,2027-04-02
            """;

    @TempDir
    Path folder;

    private List<Finding> found(Optional<LocalDate> runDate, Optional<LocalDate> asOf) throws IOException {
        Path file = Files.writeString(folder.resolve("book.csv"), BOOK);
        var read = new FieldBookReader(ShippedConfig.get().plausible()).read(file);
        assertThat(read.problems()).isEmpty();
        var findings = new FindingLog();
        var log = new CappedLog(findings, "book.csv");
        new EntriesToCome(runDate, asOf).report(read, "book.csv", log);
        log.close(read.rows());
        return findings.all();
    }

    /** Entry 1 is of the run date itself; entry 3 has a mistyped year, which entry 4 corrects. */
    @Test
    void anEntryDatedLaterIsNamedWithItsLineAndDay() throws IOException {
        assertThat(found(Optional.of(RUN_DATE), Optional.empty()))
                .singleElement()
                .satisfies(finding -> {
                    assertThat(finding.code()).isEqualTo(FindingCode.FIELD_ENTRY_LATER);
                    assertThat(finding.source()).isEqualTo("book.csv");
                    assertThat(finding.featureId()).isEqualTo("entry 2");
                    assertThat(finding.field()).isEqualTo("date");
                    assertThat(finding.detail())
                            .startsWith(
                                    "line 3: status of B1:V1:V2 is dated 2027-04-01, after the run date 2027-03-31, and counts")
                            .contains("names entry 2 in supersedes", "on_date", "as_of");
                });
    }

    @Test
    void whatAsOfLeavesOutIsNotNamed() throws IOException {
        assertThat(found(Optional.of(RUN_DATE), Optional.of(RUN_DATE))).isEmpty();
        assertThat(found(Optional.empty(), Optional.empty())).isEmpty();
    }
}

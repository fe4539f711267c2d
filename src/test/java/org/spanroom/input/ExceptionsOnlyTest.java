package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Circumstances;

/** Fields that owners fill in for exceptions only: left empty they say that there is none, which is no finding. */
class ExceptionsOnlyTest {
    @TempDir
    Path folder;

    private final FindingLog findings = new FindingLog();

    private Circumstances circumstances(@Nullable Object reserved, @Nullable Object beside, @Nullable Object consent)
            throws IOException {
        Path routes = Files.writeString(folder.resolve("routes.geojson"), "{}");
        Path yaml = Files.writeString(
                folder.resolve("c.yaml"),
                "inputs:\n  routes:\n    file: " + routes
                        + "\n    fields: {duct: D, positions_reserved: R, beside_allowed: B, owner_consent: C}\n");
        var layer = new FakeLayer("OGC:CRS84", "D", "R", "B", "C")
                .line(new double[] {-140, 20, -140, 20.1}, "D1", reserved, beside, consent);
        return new InputReader(ConfigReader.read(yaml), findings, (path, name, log) -> layer)
                .read()
                .routes()
                .get(0)
                .duct()
                .circumstances();
    }

    @Test
    void emptyFieldsOfExceptionsAreNoFindingsAndOthersAre() throws IOException {
        Circumstances none = circumstances(null, "", "");

        assertThat(none.positionsReserved()).isZero();
        assertThat(none.besideAllowed()).isEqualTo(Answer.UNKNOWN);
        assertThat(fields(FindingCode.MISSING_VALUE)).containsExactly("C");
    }

    @Test
    void aWordOrNumberThatCannotBeReadIsAFindingAllTheSame() throws IOException {
        Circumstances odd = circumstances("many", "see file", "yes");

        assertThat(odd.positionsReserved()).isZero();
        assertThat(odd.besideAllowed()).isEqualTo(Answer.UNKNOWN);
        assertThat(fields(FindingCode.UNUSABLE_VALUE)).containsExactlyInAnyOrder("R", "B");
    }

    private List<String> fields(FindingCode code) {
        return findings.all().stream()
                .filter(finding -> finding.code() == code)
                .map(Finding::field)
                .toList();
    }
}

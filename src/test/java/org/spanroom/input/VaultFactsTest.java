package org.spanroom.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ConfigReader;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultFacts;
import org.spanroom.model.network.VolumeBasis;

/** What is read of a vault for the crew: in any unit, never assumed, and unusable values are findings. */
class VaultFactsTest {
    private static final String[] FIELDS = {"V", "VOL", "D", "L", "W", "H", "LID", "GAS", "POWER", "SEEN"};
    private static final double FT_M = 0.3048;

    @TempDir
    Path folder;

    private final FindingLog findings = new FindingLog();

    private List<Vault> read(String assumed, FakeLayer layer) throws IOException {
        Path file = Files.writeString(folder.resolve("vaults.geojson"), "{}");
        Path lines = Files.writeString(folder.resolve("routes.geojson"), "{}");
        Path yaml = Files.writeString(folder.resolve("c.yaml"), """
                inputs:
                  routes: {file: '%3$s', fields: {duct: D}}
                  vaults:
                    file: '%1$s'
                    fields:
                      vault: V
                      vault_volume: VOL
                      vault_depth: {field: D, unit: ft}
                      vault_length: {field: L, unit: ft}
                      vault_width: {field: W, unit: ft}
                      vault_height: {field: H, unit: ft}
                      cover_size: {field: LID, unit: in}
                      gas_found: GAS
                      joint_power: POWER
                      vault_inspected: SEEN
                %2$s
                """.formatted(
                file.toString().replace('\\', '/'), assumed, lines.toString().replace('\\', '/')));
        var routes = new FakeLayer("OGC:CRS84", "D").line(new double[] {-140, 20, -140, 20.1}, "D1");
        return new InputReader(
                        ConfigReader.read(yaml),
                        findings,
                        (path, name, log) -> path.endsWith("routes.geojson") ? routes : layer)
                .read()
                .vaults();
    }

    private Vault one(@Nullable Object... values) throws IOException {
        return read("", new FakeLayer("OGC:CRS84", FIELDS).point(-140, 20, values))
                .get(0);
    }

    private List<String> fields(FindingCode code) {
        return findings.all().stream()
                .filter(finding -> finding.code() == code)
                .map(Finding::field)
                .toList();
    }

    private static void assertM(double expectedM, OptionalDouble foundM) {
        assertEquals(expectedM, foundM.orElseThrow(), 1e-9);
    }

    @Test
    void everyFactIsReadInItsUnit() throws IOException {
        Vault vault = one("V1", "13.5 m3", 8, 10, 8, "6 ft", 30, "Y", "no", "2025-11-03T07:30:00");

        VaultFacts facts = vault.facts();
        assertM(8 * FT_M, facts.depthM());
        assertM(10 * FT_M, facts.inside().lengthM());
        assertM(8 * FT_M, facts.inside().widthM());
        assertM(6 * FT_M, facts.inside().heightM());
        assertM(762, facts.coverSizeMm());
        assertEquals(Answer.YES, facts.gasFound());
        assertEquals(Answer.NO, facts.jointPower());
        assertEquals(Optional.of(LocalDate.of(2025, 11, 3)), facts.inspectedOn());
        assertEquals(VolumeBasis.RECORDED, facts.volumeBasis());
        assertM(13.5, vault.site().volumeM3());
    }

    @ParameterizedTest
    @CsvSource({
        "9999-12-31, is not in the years 1900 to 2200",
        "0001-01-01, is not in the years 1900 to 2200",
        "2031-01-01, 'is after the run date, 2026-11-29'",
        "2026-13-01, is not a date in the form"
    })
    void anInspectionThatCannotHaveBeenIsAFinding(String day, String problem) throws IOException {
        Vault vault = read(
                        "permit: {on_date: 2026-11-29}",
                        new FakeLayer("OGC:CRS84", FIELDS)
                                .point(-140, 20, "V1", null, null, null, null, null, null, "", null, day))
                .get(0);

        assertEquals(Optional.empty(), vault.facts().inspectedOn());
        List<String> details = findings.all().stream()
                .filter(finding -> finding.code() == FindingCode.UNUSABLE_VALUE)
                .map(Finding::detail)
                .toList();
        assertEquals(1, details.size(), details.toString());
        assertTrue(details.get(0).startsWith("'" + day + "' " + problem), details.toString());
    }

    /** The worked example of a trade page: 10 x 8 x 6 ft = 480 ft3. */
    @Test
    void withoutARecordedVolumeTheInsideGivesIt() throws IOException {
        Vault vault = one("V1", null, null, 10, 8, 6, null, "", null, "");

        assertM(480 * Math.pow(FT_M, 3), vault.site().volumeM3());
        assertEquals(VolumeBasis.INSIDE_SIZE, vault.facts().volumeBasis());
        assertEquals(List.of(), fields(FindingCode.MISSING_VALUE));
    }

    @Test
    void anInsideWithoutOneSideOrOfAnImplausibleVolumeGivesNone() throws IOException {
        Vault vault = one("V1", null, null, 10, 8, null, null, null, null, null);
        Vault hall = one("V2", null, null, 90, 90, 40, null, null, null, null);

        assertEquals(OptionalDouble.empty(), vault.site().volumeM3());
        assertEquals(VolumeBasis.UNKNOWN, vault.facts().volumeBasis());
        assertEquals(OptionalDouble.empty(), hall.site().volumeM3());
    }

    @Test
    void anAssumedVolumeIsMarked() throws IOException {
        Vault vault = read(
                        "assumed: {vault_volume: 12 m3}",
                        new FakeLayer("OGC:CRS84", FIELDS)
                                .point(-140, 20, "V1", null, null, null, null, null, null, null, null, null))
                .get(0);

        assertM(12, vault.site().volumeM3());
        assertEquals(VolumeBasis.ASSUMED, vault.facts().volumeBasis());
    }

    @Test
    void unusableValuesAreFindingsAndUnknown() throws IOException {
        Vault vault = one("V1", 13.5, 300, "wide", 8, 6, 2, "smelly", "maybe", "last spring");

        VaultFacts facts = vault.facts();
        assertEquals(OptionalDouble.empty(), facts.depthM());
        assertEquals(OptionalDouble.empty(), facts.inside().lengthM());
        assertEquals(OptionalDouble.empty(), facts.coverSizeMm());
        assertEquals(Answer.UNKNOWN, facts.gasFound());
        assertEquals(Answer.UNKNOWN, facts.jointPower());
        assertEquals(Optional.empty(), facts.inspectedOn());
        assertEquals(
                List.of("D", "LID"),
                fields(FindingCode.IMPLAUSIBLE_VALUE).stream().sorted().toList());
        assertEquals(
                List.of("GAS", "L", "POWER", "SEEN"),
                fields(FindingCode.UNUSABLE_VALUE).stream().sorted().toList());
        assertTrue(vault.findRejected(Term.GAS_FOUND).isPresent());
    }

    /** Empty facts are unknown and no findings; only the volume, which hours rest on, is missed. */
    @Test
    void emptyFactsAreUnknownAndVaultsWithoutAnyShareThem() throws IOException {
        List<Vault> vaults = read(
                "",
                new FakeLayer("OGC:CRS84", FIELDS)
                        .point(-140, 20, "V1", null, null, null, null, null, null, "", "n/a", "")
                        .point(-140, 20.1, "V2", null, null, null, null, null, null, null, null, null));

        assertEquals(VaultFacts.UNKNOWN, vaults.get(0).facts());
        assertSame(vaults.get(0).facts(), vaults.get(1).facts());
        assertEquals(
                List.of("VOL"),
                fields(FindingCode.MISSING_VALUE).stream().distinct().toList());
    }
}

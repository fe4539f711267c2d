package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The least span is measured along the line, and what is shorter between two vaults is reported as a short stretch. */
class LeastSpanTest {
    /** The vaults lie 0.6 m apart, as the crow flies; the duct goes out to the side and comes back. */
    @ParameterizedTest(name = "{0} m to the side")
    @ValueSource(doubles = {1.2, 2, 5, 20})
    void aLineThatGoesRoundBetweenTwoVaultsThatLieCloseIsASpan(double sideM) {
        var result = Sketch.of(String.format(
                        Locale.ROOT, "vault A 0,0%nvault B 0.6,0%nroute r d 0,0 0,%.3f 0.6,%.3f 0.6,0", sideM, sideM))
                .cut();

        assertThat(result.spans()).containsExactly(String.format(Locale.ROOT, "d:A:B %.2f r", 2 * sideM + 0.6));
        assertThat(result.network().remainderLengthM()).isZero();
    }

    /** The line begins up to 0.9 m before A: that little belongs to the span, which is then as long as the least or longer. */
    @ParameterizedTest(name = "{0} m before A, B {1} m after")
    @CsvSource({"0.3, 0.75", "0.5, 0.6", "0.9, 0.9", "0.9, 0.5"})
    void whatIsDrawnPastAVaultCountsForTheLengthOfItsSpan(double beforeM, double afterM) {
        var result = Sketch.of(String.format(
                        Locale.ROOT,
                        "vault A 0,0%nvault B %.2f,0%nvault C 90,0%nroute r d -%.2f,0 90,0",
                        afterM,
                        beforeM))
                .cut();

        assertThat(result.spans())
                .containsExactly(
                        String.format(Locale.ROOT, "d:A:B %.2f r", beforeM + afterM),
                        String.format(Locale.ROOT, "d:B:C %.2f r", 90 - afterM));
    }

    @ParameterizedTest(name = "{0} m")
    @ValueSource(doubles = {0.35, 0.5, 0.7, 0.9, 0.99})
    void aPipeShorterThanTheLeastSpanIsAShortStretchBetweenItsVaults(double lengthM) {
        for (double offM : new double[] {0, 0.1}) {
            var result = Sketch.of(String.format(
                            Locale.ROOT,
                            "vault A 0,%.2f%nvault B %.3f,0%nroute r d 0,0 %.3f,0",
                            offM,
                            lengthM,
                            lengthM))
                    .cut();

            assertThat(result.spans()).isEmpty();
            assertThat(result.findings()).containsExactly(String.format(Locale.ROOT, "SHORT_STRETCH r %.2f", lengthM));
            assertThat(result.details()).contains("between vaults A and B is less than the minimum span of 1.00 m");
            assertThat(result.network().remainderLengthM()).isCloseTo(lengthM, within(1e-3));
        }
    }

    @ParameterizedTest(name = "{0} m")
    @ValueSource(doubles = {0.1, 0.4, 0.8, 0.95})
    void aShortStretchBetweenTwoOutlinesIsToldApartFromWhatLiesInThem(double gapM) {
        var result = Sketch.of(String.format(
                        Locale.ROOT,
                        "vault S 0,0%nvault A 50,-1 52,-1 52,1 50,1%nvault B %1$.2f,-1 %2$.2f,-1 %2$.2f,1 %1$.2f,1%n"
                                + "vault T 100,0%nroute r d 0,0 100,0",
                        52 + gapM,
                        54 + gapM))
                .cut();

        assertThat(result.findings())
                .contains("LENGTH_INSIDE_VAULT r 2.00", String.format(Locale.ROOT, "SHORT_STRETCH r %.2f", gapM));
        assertThat(result.network().remainderLengthM()).isCloseTo(4 + gapM, within(1e-3));
        assertThat(result.network().spanLengthM()).isCloseTo(96 - gapM, within(1e-3));
        assertThat(result.details()).contains("between vaults A and B");
    }
}

package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.spanroom.program.NetworkBuilder.duct;
import static org.spanroom.program.NetworkBuilder.free;
import static org.spanroom.program.NetworkBuilder.newDuct;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.NewDuctOffer;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.WayStep;

/** What is used first in a section: what is free, then what is recovered, then what is built; never two ducts for one group of cables. */
class SectionStepsTest {
    private static SectionOffer section(NewDuctOffer newDuct, DuctOffer... ducts) {
        return new NetworkBuilder(2)
                .section(0, 1, 100, newDuct, ducts)
                .build()
                .sections()
                .get(0);
    }

    private static Optional<WayStep> find(int cables, NewDuctOffer newDuct, DuctOffer... ducts) {
        return SectionSteps.find(section(newDuct, ducts), cables);
    }

    private static String taken(Optional<WayStep> step) {
        return step.map(found -> found.action().key()
                        + found.duct().map(duct -> " " + duct.spanId()).orElse(""))
                .orElse("none");
    }

    /** Ducts: empty one of 6, partly used one of 2 now and 9 after recovery, full one of 0 and 4; a new one would take 12. */
    @ParameterizedTest
    @CsvSource({
        "1, free used",
        "2, free used",
        "3, free empty",
        "6, free empty",
        "7, recover used",
        "9, recover used",
        "10, build",
        "12, build",
        "13, none"
    })
    void whatIsFreeIsUsedFirstAndTheTightestOfIt(int cables, String expected) {
        assertThat(taken(find(
                        cables,
                        newDuct(12, 1, 1, 0),
                        free("empty", 6),
                        duct("used", 2, 9, 5_000),
                        duct("full", 0, 4, 1_000))))
                .isEqualTo(expected);
    }

    /** 4 + 4 positions do not take 6 cables that go together. */
    @Test
    void cablesAreNotSplitOverDucts() {
        assertThat(taken(find(6, NetworkBuilder.NO_BUILD, free("a", 4), free("b", 4))))
                .isEqualTo("none");
        assertThat(taken(find(6, newDuct(6, 900, 100, 0), free("a", 4), duct("b", 4, 5, 1))))
                .isEqualTo("build");
    }

    /** A new duct may be cheaper and sooner than recovery; it is built only where nothing else goes. */
    @Test
    void nothingIsBuiltWhereADuctCanBeRecovered() {
        assertThat(taken(find(3, newDuct(9, 1, 1, 0), duct("a", 0, 3, 70_000, 300, 1))))
                .isEqualTo("recover a");
    }

    @Test
    void ofRecoveriesTheCheapestComesFirstAndThoseThatAreBetterInNothingAreLeftOut() {
        List<WayStep> options = SectionSteps.options(
                section(
                        NetworkBuilder.NO_BUILD,
                        duct("dear", 0, 9, 900, 30, 0b0011),
                        duct("cheap", 0, 9, 500, 30, 0b0011),
                        duct("soon", 0, 9, 800, 10, 0b0011),
                        duct("safe", 0, 9, 950, 30, 0b0111),
                        duct("late", 0, 9, 700, 0, Optional.of(LocalDate.of(2027, 9, 1)), OptionalLong.of(0b0011)),
                        duct("unsimulated", 0, 9, 960, 30, Optional.empty(), OptionalLong.empty()),
                        duct("narrow", 0, 2, 10, 0, 0b1111)),
                3);

        assertThat(options)
                .extracting(step -> step.duct().orElseThrow().spanId())
                .containsExactly("cheap", "late", "soon", "safe");
    }
}

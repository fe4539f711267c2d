package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ProgramConfigReader;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.NewDuctOffer;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.VaultPlace;
import org.spanroom.program.ProgramInputs;
import org.spanroom.program.YearModel;
import org.spanroom.program.annual.Shortage;

/** Each shortage in one line with its amounts; those of single spans are tested with the command. */
class YearWordsTest {
    /** Two vaults that free positions join, and a connection between them that is a must. */
    private static YearWords words(Optional<LocalDate> neededBy) {
        var duct = new DuctOffer("a", "a", 3, 3, OptionalInt.empty(), "", Optional.empty());
        var section = new SectionOffer(
                "S", "S", 0, 1, 50, List.of(duct), new NewDuctOffer(0, Costs.NONE, Costs.NONE, 0), Optional.empty());
        var network = new DuctNetwork(
                List.of(new VaultPlace("V0", -30, 40), new VaultPlace("V1", -30, 40.001)),
                List.of(section),
                0,
                LocalDate.of(2027, 1, 15));
        var row = new Connection(2, "pumps", "V0", "V1", 1, OptionalDouble.of(9), neededBy, true, Optional.empty());
        ProgramInputs inputs = new ProgramSetting(ProgramConfigReader.shipped(), Map.of(), network, Set.of(), Set.of())
                .inputs(List.of(row), Map.of());
        return new YearWords(inputs, new YearModel(inputs).problem(), "USD");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0 | 0 | 0 | 12345.6 | 10000 | the musts take at least 12,346 USD in year 1, 2,346 USD more than the 10,000 USD there",
                "1 | 2 | 1 | 12.34 | 10 | the musts take at least 12.3 crew-hours in years 2 to 3, 2.3 crew-hours more than the 10.0 crew-hours there"
            })
    void mustsThatExceedTheirYearsSayByHowMuch(
            int first, int last, int resource, double least, double limit, String line) {
        assertThat(words(Optional.empty()).of(new Shortage.MustsExceed(first, last, resource, least, limit)))
                .isEqualTo(line);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "true | no plan keeps the musts within the limits; the nearest plan takes 900 USD in year 2, 100 USD more than the 800 USD there",
                "false | no plan was found that keeps the musts within the limits; the nearest plan takes 900 USD in year 2, 100 USD more than the 800 USD there"
            })
    void aPlanThatIsNotFoundIsNotSaidToBeImpossible(boolean isProven, String line) {
        assertThat(words(Optional.empty()).of(new Shortage.NotFound(1, 0, 900, 800, isProven)))
                .isEqualTo(line);
    }

    @Test
    void connectionsSayWhatIsShort() {
        YearWords words = words(Optional.of(LocalDate.of(2027, 6, 30)));

        assertThat(words.of(new Shortage.NoWay(0)))
                .isEqualTo("connection pumps, a must, cannot be served by 2027-06-30, whatever is done");
        assertThat(words.of(new Shortage.NotServed(0, List.of(1_500.0, 2.5))))
                .isEqualTo(
                        "connection pumps, a must, is not served: on its way of least price 1,500 USD and 2.5 crew-hours are short");
        assertThat(words.of(new Shortage.NotServed(0, List.of(0.0, 0.0))))
                .endsWith("on its way of least price other work is in its place");
        assertThat(words(Optional.empty()).of(new Shortage.NoWay(0)))
                .isEqualTo("connection pumps, a must, cannot be served, whatever is done");
    }
}

package org.spanroom.input.fieldbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.model.fieldwork.FactUnit;

class FactNumberTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "41.5 | 41.5 | ",
                "41,5 | 41.5 | ",
                "41,5 ft | 41.5 | FT",
                "1-1/4 in | 1.25 | IN",
                "1 1/4\" | 1.25 | IN",
                "3 1/2 | 3.5 | ",
                "12' | 12 | FT",
                "180 lbf | 180 | LBF",
                "180 LBF | 180 | LBF",
                "12 lb | 12 | LB",
                "12 m3 | 12 | M3",
                "12m\u00b3 | 12 | M3",
                "4 ft3 | 4 | FT3",
                "-23.4 dBm | -23.4 | DBM",
                "20.9% | 20.9 | PERCENT",
                "0.85 h | 0.85 | H",
                "15 min | 15 | MIN",
                "5 m | 5 | M",
                "5 mm | 5 | MM",
                "2 in. | 2 | IN",
                "1e3 N | 1000 | N"
            })
    void aNumberMayHaveItsUnitBehindIt(String text, double number, FactUnit unit) {
        assertEquals(Optional.of(new FactNumber(number, Optional.ofNullable(unit))), FactNumber.parse(text));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "x",
                "1,250",
                "12,345 mm",
                "4 furlongs",
                "ft",
                "1/0",
                "--3",
                "3 4",
                "NaN",
                "Infinity",
                "1e999"
            })
    void whatIsNoNumberOrCouldBeTwoIsNone(String text) {
        assertEquals(Optional.empty(), FactNumber.parse(text));
    }

    @ParameterizedTest
    @EnumSource
    void everyUnitIsReadByItsSymbol(FactUnit unit) {
        Optional<FactNumber> read = FactNumber.parse("7.25 " + unit.symbol());

        assertEquals(7.25, read.orElseThrow().inUnit());
        assertEquals(
                unit == FactUnit.NONE ? Optional.empty() : Optional.of(unit),
                read.get().unit());
    }

    @Test
    void aUnitAloneIsFoundInAnyCase() {
        assertEquals(Optional.of(FactUnit.FT), FactNumber.findUnit(" Feet "));
        assertTrue(FactNumber.findUnit("cubit").isEmpty());
    }
}

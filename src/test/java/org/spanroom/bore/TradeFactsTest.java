package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bore.Catalog;
import org.spanroom.model.bore.Catalog.InnerductSize;
import org.spanroom.model.bore.Catalog.OuterDuct;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.Room;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.testing.Ducts;

/** What the trade says of ducts, checked against every duct of that size in the shipped catalog. */
class TradeFactsTest {
    private static final double IN = 25.4;

    /** Common practice, no source: up to about 90 % of a 4-in duct's space, 90.9 % with three cables of 0.7 in. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("fourInch")
    void threeCablesLeaveAboutNineTenthsOfAFourInchDuct(String name, OuterDuct size) {
        Room room = room(size, "sdr11 1-1/4 in", 3, 0.7);

        assertThat(100 * (1 - room.fillAfterRemovalRatio().orElseThrow())).isBetween(89.0, 92.1);
        assertThat(room.crossSection().orElseThrow().before().outcome()).isEqualTo(PackingOutcome.FITS);
    }

    /** The same; 1 - 3 x 0.7^2 / 4.030^2 in telephone duct type D. */
    @Test
    void inTelephoneDuctItIsTheTradesOwnFigure() {
        OuterDuct typeD = ducts("4 in")
                .filter(size -> size.name().equals("telephone type D 4 in"))
                .findFirst()
                .orElseThrow();

        assertThat(100
                        * (1
                                - room(typeD, "sdr11 1-1/4 in", 3, 0.7)
                                        .fillAfterRemovalRatio()
                                        .orElseThrow()))
                .isCloseTo(90.9, within(0.06));
    }

    /** Common practice, no source: 3, 6, 9 new cables in 2-, 3-, 4-in ducts; 1, 2, 3 innerducts of 1 in, each with a cable. */
    @ParameterizedTest(name = "{0}: {3} new cables")
    @MethodSource("usualContents")
    void usualContentsGiveThreeSixNine(String name, OuterDuct size, int innerducts, int newCables) {
        Room room = room(size, "sdr11 1 in", innerducts, 0.5);

        assertThat(room.newCables()).isEqualTo(newCables);
        assertThat(room.bindingRule()).isEqualTo(Room.SLEEVES_PER_DUCT);
        assertThat(room.crossSection().orElseThrow().before().outcome()).isEqualTo(PackingOutcome.FITS);
        assertThat(room.proposal().orElseThrow().after().outcome()).isEqualTo(PackingOutcome.FITS);
    }

    static Stream<Arguments> fourInch() {
        return ducts("4 in").map(size -> Arguments.of(size.name(), size));
    }

    static Stream<Arguments> usualContents() {
        return Stream.of(1, 2, 3)
                .flatMap(count ->
                        ducts(count + 1 + " in").map(size -> Arguments.of(size.name(), size, count, 3 * count)));
    }

    private static Stream<OuterDuct> ducts(String tradeSize) {
        return shipped().outerDucts().stream().filter(size -> size.tradeSize().equals(tradeSize));
    }

    private static Room room(OuterDuct size, String innerductName, int count, double cableIn) {
        InnerductSize pipe = shipped().innerducts().stream()
                .filter(one -> one.name().equals(innerductName))
                .findFirst()
                .orElseThrow();
        var cable = new Cable("c", cableIn * IN, 0.1, Service.LIVE);
        var innerduct = new Innerduct("i", pipe.outsideDiameterMm(), pipe.minimumWallMm(), List.of(cable));
        var contents = new Contents(Collections.nCopies(count, innerduct), List.of(), true);
        return new RoomAssessor(ShippedConfig.get().room()).assess(duct(size, contents));
    }

    private static Duct duct(OuterDuct size, Contents contents) {
        return Ducts.sound(size.boreShape(), size.insideDiameterMm(), contents);
    }

    private static Catalog shipped() {
        return ShippedConfig.get().catalog();
    }
}

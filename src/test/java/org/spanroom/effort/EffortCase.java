package org.spanroom.effort;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.Line;
import org.spanroom.model.bore.Room;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateSettings;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.testing.Rooms;

/** A span to be calculated, changed by its test where it matters; one of 600 ft, three innerducts and three cables at first. */
final class EffortCase {
    static final double FT_M = 0.3048;

    double lengthM = 600 * FT_M;
    int innerducts = 3;
    int innerductsOut = 3;
    int sleeves = 3;
    int newCables = 9;
    int positionsNow;
    int demandPositions;
    Service service = Service.LIVE;
    boolean flooded;
    /** The first so many innerducts run uncut through the vault at A, and at B; of the others the records say that they do not. */
    int uncutAtA;

    int uncutAtB;
    String surface = "asphalt";
    String fromId = "V-1";
    String toId = "V-2";
    String vaultKind = "";
    VaultSite fromSite = VaultSite.UNKNOWN;
    Permits permits = Permits.NONE;
    RateSettings rates = ShippedConfig.get().rates();

    static EffortCase span() {
        return new EffortCase();
    }

    EffortCase lengthM(double value) {
        lengthM = value;
        return this;
    }

    EffortCase out(int value) {
        innerductsOut = value;
        return this;
    }

    EffortCase sleeves(int value) {
        sleeves = value;
        newCables = 3 * value;
        return this;
    }

    EffortCase surface(String value) {
        surface = value;
        return this;
    }

    EffortCase demand(int positions) {
        demandPositions = positions;
        return this;
    }

    /** Makes the first cable a dead one. */
    EffortCase oneDeadCable() {
        service = Service.DEAD;
        return this;
    }

    EffortCase vaultKind(String value) {
        vaultKind = value;
        return this;
    }

    EffortCase vaults(String from, String to) {
        fromId = from;
        toId = to;
        return this;
    }

    EffortCase permits(Permits value) {
        permits = value;
        return this;
    }

    EffortCase wetVault(double volumeM3) {
        fromSite = new VaultSite(OptionalDouble.of(volumeM3), Answer.YES, "", Answer.UNKNOWN);
        return this;
    }

    EffortCase uncut(int atA, int atB) {
        uncutAtA = atA;
        uncutAtB = atB;
        return this;
    }

    EffortCase flooded() {
        flooded = true;
        return this;
    }

    /** Sets one rate to a value without a range. */
    EffortCase rate(RateKey key, double value) {
        return rate(key, new Rate(value, value, value, "test", "2026"));
    }

    EffortCase rate(RateKey key, Rate rate) {
        Map<RateKey, Rate> standard = new EnumMap<>(rates.standard());
        standard.put(key, rate);
        rates = new RateSettings(
                rates.currency(),
                rates.surfaces(),
                rates.surfaceWhenUnknown(),
                standard,
                rates.byVaultKind(),
                rates.byZoneKind());
        return this;
    }

    EffortAssessor assessor() {
        return new EffortAssessor(rates, ShippedConfig.get().vaultKinds(), demandPositions);
    }

    EffortQuantities quantities() {
        return assessor().quantities(record(), room(), pull(), permits);
    }

    Effort effort() {
        return assessor().assess(record(), room(), pull(), permits).orElseThrow();
    }

    double siteHours() {
        return effort().time().siteHours();
    }

    Room room() {
        return Rooms.recovering(innerductsOut, positionsNow, sleeves, newCables, "");
    }

    private static PullAssessment pull() {
        return PullAssessment.nothing(Unrecoverable.NO_INNERDUCT);
    }

    Span record() {
        Line ground = Line.ofXy(0, 0, lengthM, 0);
        return new Span(
                "S",
                duct(),
                List.of("R"),
                new Vault(0, fromId, -30, 40, List.of(), OptionalDouble.empty(), vaultKind, fromSite),
                new Vault(1, toId, -30, 40, List.of(), OptionalDouble.empty(), vaultKind),
                Line.ofXy(-30, 40, -29.99, 40),
                ground,
                lengthM,
                lengthM,
                0,
                0,
                "");
    }

    private static Answer answer(boolean uncut) {
        return uncut ? Answer.YES : Answer.NO;
    }

    private Duct duct() {
        var list = new ArrayList<Innerduct>();
        for (int i = 0; i < innerducts; i++) {
            var cable = new Cable("c" + i, 17.78, 0.25, i == 0 ? service : Service.LIVE);
            var innerduct = new Innerduct("i" + i, 1.660 * 25.4, 0.123 * 25.4, List.of(cable));
            list.add(innerduct.withUncut(answer(i < uncutAtA), answer(i < uncutAtB)));
        }
        return new Duct(
                "D",
                "",
                BoreShape.ROUND,
                102.26,
                "",
                "",
                false,
                new Contents(list, List.of(), true),
                flooded,
                Condition.SOUND,
                surface,
                "",
                OptionalInt.empty(),
                Set.of());
    }
}

package org.spanroom.program;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.NewDuctOffer;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.VaultPlace;

/** Puts small networks together for tests. Vaults are V0, V1, ... on a line, 0.001 degrees of latitude apart, unless placed. */
final class NetworkBuilder {
    static final LocalDate ON_DATE = LocalDate.of(2027, 1, 15);

    private final List<VaultPlace> vaults = new ArrayList<>();
    private final List<SectionOffer> sections = new ArrayList<>();
    private int samples = 4;

    NetworkBuilder(int vaultCount) {
        for (int vault = 0; vault < vaultCount; vault++) {
            vaults.add(new VaultPlace("V" + vault, -30, 40 + 0.001 * vault));
        }
    }

    NetworkBuilder samples(int count) {
        samples = count;
        return this;
    }

    NetworkBuilder place(int vault, double lonDeg, double latDeg) {
        vaults.set(vault, new VaultPlace("V" + vault, lonDeg, latDeg));
        return this;
    }

    /** Adds a section without new build. */
    NetworkBuilder section(int from, int to, double lengthM, DuctOffer... ducts) {
        return section(from, to, lengthM, NO_BUILD, ducts);
    }

    NetworkBuilder section(int from, int to, double lengthM, NewDuctOffer newDuct, DuctOffer... ducts) {
        String id = "S" + sections.size();
        sections.add(new SectionOffer(id, id, from, to, lengthM, List.of(ducts), newDuct, Optional.empty()));
        return this;
    }

    DuctNetwork build() {
        return new DuctNetwork(vaults, sections, samples, ON_DATE);
    }

    static final NewDuctOffer NO_BUILD = new NewDuctOffer(0, Costs.NONE, Costs.NONE, 0);

    static NewDuctOffer newDuct(int positions, double firstMoney, double furtherMoney, int leadDays) {
        return new NewDuctOffer(positions, costs(firstMoney), costs(furtherMoney), leadDays);
    }

    static DuctOffer free(String spanId, int positions) {
        return new DuctOffer(spanId, spanId, positions, positions, OptionalInt.empty(), "", Optional.empty());
    }

    /** A duct that works in all of four samples and needs no permit. */
    static DuctOffer duct(String spanId, int now, int after, double money) {
        return duct(spanId, now, after, money, 0, 0b1111);
    }

    static DuctOffer duct(String spanId, int now, int after, double money, int leadDays, long draws) {
        return duct(spanId, now, after, money, leadDays, Optional.empty(), OptionalLong.of(draws));
    }

    static DuctOffer duct(
            String spanId,
            int now,
            int after,
            double money,
            int leadDays,
            Optional<LocalDate> notBefore,
            OptionalLong draws) {
        return new DuctOffer(
                spanId,
                spanId,
                now,
                after,
                OptionalInt.of(1),
                "",
                Optional.of(new DuctOffer.Recovery(costs(money), 2, leadDays, notBefore, draws)));
    }

    static Costs costs(double money) {
        return new Costs(money, new MoneyRange(0.8 * money, money, 1.3 * money));
    }
}

package org.spanroom.input;

import java.util.List;
import java.util.Set;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.testing.Ducts;

/** Two spans between three vaults for a fuzzer: one duct with recorded contents, one with assumed ones. */
final class FuzzedNetwork {
    private FuzzedNetwork() {}

    static List<String> vaultIds() {
        return List.of("V1", "V2", "V3");
    }

    static List<Vault> vaults() {
        return vaultIds().stream().map(Ducts::vault).toList();
    }

    static Network network() {
        var cable = new Cable("cable-1", 12, 0.2, Service.LIVE);
        var recorded = new Contents(
                List.of(
                        new Innerduct("innerduct-1", 33, 3, List.of(cable)),
                        new Innerduct("innerduct-2", 33, 3, List.of())),
                List.of(new Cable("cable-2", 12, 0.2, Service.DEAD)),
                true);
        return new Network(
                List.of(
                        span("D1", "V1", "V2", recorded, Set.of()),
                        span("D2", "V2", "V3", Contents.UNKNOWN, Set.of(Term.INSIDE_DIAMETER))),
                List.of(),
                200,
                200,
                0);
    }

    private static Span span(String duct, String from, String to, Contents contents, Set<Term> assumed) {
        return Ducts.span(Ducts.round(duct, "B1", 101.6, contents, assumed), from, to, Line.ofXy(0, 0, 100, 0));
    }
}

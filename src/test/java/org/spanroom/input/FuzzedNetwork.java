package org.spanroom.input;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultSite;

/** Two spans between three vaults for a fuzzer: one duct with recorded contents, one with assumed ones. */
final class FuzzedNetwork {
    private FuzzedNetwork() {}

    static List<String> vaultIds() {
        return List.of("V1", "V2", "V3");
    }

    static List<Vault> vaults() {
        return vaultIds().stream().map(FuzzedNetwork::vault).toList();
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
        Line line = Line.ofXy(0, 0, 100, 0);
        return new Span(
                duct + ":" + from + ":" + to,
                new Duct(
                        duct,
                        "B1",
                        BoreShape.ROUND,
                        101.6,
                        "",
                        "",
                        false,
                        contents,
                        false,
                        Condition.UNKNOWN,
                        "",
                        "",
                        OptionalInt.empty(),
                        assumed),
                List.of("r"),
                vault(from),
                vault(to),
                line,
                line,
                100,
                100,
                0,
                0,
                "");
    }

    private static Vault vault(String id) {
        return new Vault(0, id, 0, 0, List.of(), OptionalDouble.empty(), "", VaultSite.UNKNOWN);
    }
}

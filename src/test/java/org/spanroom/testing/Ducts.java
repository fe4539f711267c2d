package org.spanroom.testing;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultSite;

/** Ducts, vaults and spans of 100 m of which nothing is recorded but what a test asks for. */
public final class Ducts {
    private Ducts() {}

    /** Returns a sound duct without a name of its own, for tests of its room. */
    public static Duct sound(BoreShape shape, double insideMm, Contents contents) {
        return of("d", "", shape, insideMm, contents, Condition.SOUND, Set.of());
    }

    /** Returns a round duct of unknown condition. */
    public static Duct round(String id, String bankId, double insideMm, Contents contents, Set<Term> assumed) {
        return of(id, bankId, BoreShape.ROUND, insideMm, contents, Condition.UNKNOWN, assumed);
    }

    private static Duct of(
            String id,
            String bankId,
            BoreShape shape,
            double insideMm,
            Contents contents,
            Condition condition,
            Set<Term> assumed) {
        return new Duct(
                id,
                bankId,
                shape,
                insideMm,
                "",
                "",
                false,
                contents,
                false,
                condition,
                "",
                "",
                OptionalInt.empty(),
                assumed);
    }

    /** Returns a vault at longitude and latitude 0. */
    public static Vault vault(String id) {
        return new Vault(0, id, 0, 0, List.of(), OptionalDouble.empty(), "", VaultSite.UNKNOWN);
    }

    /** Returns the span of a duct between two vaults, named after all three. */
    public static Span span(Duct duct, String from, String to, Line line) {
        return new Span(
                duct.id() + ":" + from + ":" + to,
                duct,
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
}

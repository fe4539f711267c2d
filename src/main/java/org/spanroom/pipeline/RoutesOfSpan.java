package org.spanroom.pipeline;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.spanroom.model.Term;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.SpanName;
import org.spanroom.output.table.Text;

/**
 * The routes that one span depends on, of all that were read.
 *
 * <p>The name of a span begins with that of its duct, and only pieces of one duct are joined; pieces whose duct is not recorded are
 * joined among themselves. What else matters to the span are the ducts in the same bank, one of which may be empty. A bank is
 * recorded on any piece of a duct, so that all pieces of these ducts are taken too. Rather too many routes are taken than too few.
 */
final class RoutesOfSpan {
    private RoutesOfSpan() {}

    /** Returns the routes, in their order, among which a span of that id lies if there is one. */
    static List<Route> choose(List<Route> routes, String spanId) {
        String id = Text.clean(spanId);
        Predicate<Route> own =
                route -> id.startsWith(Text.clean(SpanName.escaped(route.duct().id())) + ":");
        Set<String> banks = new HashSet<>();
        withPieces(routes, own).forEach(route -> banks.add(route.duct().bankId()));
        banks.removeIf(String::isBlank);
        return withPieces(routes, own.or(route -> banks.contains(route.duct().bankId())));
    }

    /** Returns the wanted routes and all that may be joined to one of them. */
    private static List<Route> withPieces(List<Route> routes, Predicate<Route> wanted) {
        Set<String> ducts = new HashSet<>();
        boolean unnamed = false;
        for (Route route : routes) {
            if (wanted.test(route)) {
                ducts.add(route.duct().id());
                unnamed |= isUnnamed(route.duct());
            }
        }
        boolean withUnnamed = unnamed;
        return routes.stream()
                .filter(route -> ducts.contains(route.duct().id()) || (withUnnamed && isUnnamed(route.duct())))
                .toList();
    }

    private static boolean isUnnamed(Duct duct) {
        return duct.assumed().contains(Term.DUCT);
    }
}

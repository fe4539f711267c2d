package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Route;

class RoutesOfSpanTest {
    private static final List<Route> ROUTES = List.of(
            route("R-0", "D-1", "B-1"),
            route("R-1", "D-1", ""),
            route("R-2", "D-2", "B-1"),
            route("R-3", "D-2", "B-9"),
            route("R-4", "D-10", "B-2"),
            route("R-5", "D-3", "B-9"),
            unnamed("R-6", ""),
            unnamed("R-7", "B-2"));

    @Test
    void piecesOfTheDuctAndOfThoseInItsBankAreTaken() {
        assertThat(chosen("D-1:V-1-V-2")).containsExactly("R-0", "R-1", "R-2", "R-3");
        assertThat(chosen("D-3:V-1-V-2")).containsExactly("R-2", "R-3", "R-5");
    }

    /** Any unnamed piece may be joined to any other, and any of them may have a bank. */
    @Test
    void ofPiecesWithoutADuctAllAreTaken() {
        assertThat(chosen("R-6:V-1-V-2")).containsExactly("R-4", "R-6", "R-7");
    }

    /** Results have U+FFFD instead of what their formats cannot hold. */
    @Test
    void aNameIsFoundAsTheDataHasItAndAsTheResultsHaveIt() {
        List<Route> odd = List.of(route("R-0", "D\u0000", ""), route("R-1", "D", ""));

        assertThat(ids(RoutesOfSpan.choose(odd, "D\uFFFD:V-1-V-2"))).containsExactly("R-0");
        assertThat(ids(RoutesOfSpan.choose(odd, "D\u0000:V-1-V-2"))).containsExactly("R-0");
    }

    @Test
    void aStrangeNameTakesNothing() {
        assertThat(chosen("X:V-1-V-2")).isEmpty();
        assertThat(chosen("")).isEmpty();
    }

    private static List<String> chosen(String spanId) {
        return ids(RoutesOfSpan.choose(ROUTES, spanId));
    }

    private static List<String> ids(List<Route> routes) {
        return routes.stream().map(Route::id).toList();
    }

    private static Route route(String id, String duct, String bank) {
        return route(id, duct, bank, Set.of());
    }

    private static Route unnamed(String id, String bank) {
        return route(id, id, bank, Set.of(Term.DUCT));
    }

    private static Route route(String id, String duct, String bank, Set<Term> assumed) {
        return new Route(
                0,
                id,
                new Duct(
                        duct,
                        bank,
                        BoreShape.ROUND,
                        102.3,
                        "",
                        "",
                        false,
                        Contents.UNKNOWN,
                        false,
                        Condition.UNKNOWN,
                        "",
                        "",
                        OptionalInt.empty(),
                        assumed),
                Line.ofXy(-30, 40, -30, 40.001),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                "");
    }
}

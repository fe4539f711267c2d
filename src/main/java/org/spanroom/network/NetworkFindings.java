package org.spanroom.network;

import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;

/** Words the findings of this stage, each with its place. Safe for several threads. */
final class NetworkFindings {
    private static final int MOST_NAMED = 6;

    private final FindingLog log;
    private final IntFunction<String> routesSource;
    private final IntFunction<String> vaultsSource;

    NetworkFindings(FindingLog log, IntFunction<String> routesSource, IntFunction<String> vaultsSource) {
        this.log = log;
        this.routesSource = routesSource;
        this.vaultsSource = vaultsSource;
    }

    /** Returns a length for a message: centimeters are enough, and nothing that is there reads as 0. */
    static String meters(double lengthM) {
        return lengthM >= 0.01 || lengthM == 0
                ? String.format(Locale.ROOT, "%.2f m", lengthM)
                : String.format(Locale.ROOT, "%.2g m", lengthM);
    }

    /** Returns what findings call the file of a route. */
    String source(Route route) {
        return routesSource.apply(route.sequence());
    }

    private Finding of(FindingCode code, Route route, String detail) {
        return Finding.of(code, source(route), route.id(), detail);
    }

    /** Reports something about a field of a whole file. */
    void layer(FindingCode code, String source, String field, String detail) {
        log.add(Finding.of(code, source, "", detail).inField(field));
    }

    void route(FindingCode code, Route route, String detail, double lonDeg, double latDeg) {
        log.add(of(code, route, detail).at(lonDeg, latDeg));
    }

    void field(FindingCode code, Route route, String field, String detail, double lonDeg, double latDeg) {
        log.add(of(code, route, detail).inField(field).at(lonDeg, latDeg));
    }

    /** Reports a stretch of a chain that is not assigned to a span. */
    void remainder(FindingCode code, ChainLink piece, double placeM, double lengthM, String detail) {
        log.add(of(code, piece.route(), detail)
                .at(piece.lonAt(placeM), piece.latAt(placeM))
                .withLengthM(lengthM));
    }

    void routeWithoutVault(ChainLink piece, boolean closed) {
        String detail = "no vault is within tolerance of the line" + (closed ? ", which is closed" : "") + "; "
                + meters(piece.lengthM()) + " are not assigned to a span";
        remainder(FindingCode.ROUTE_WITHOUT_VAULT, piece, piece.placeOfSideM(0), piece.lengthM(), detail);
    }

    void vault(FindingCode code, Vault vault, String detail) {
        log.add(Finding.of(code, vaultsSource.apply(vault.sequence()), vault.id(), detail)
                .at(vault.lonDeg(), vault.latDeg()));
    }

    void ambiguousJoint(List<OpenEnd> group, List<Route> routes) {
        OpenEnd first = group.get(0);
        String names = group.stream()
                .limit(MOST_NAMED)
                .map(end -> routes.get(end.route()).id())
                .collect(Collectors.joining(", "));
        String whose = first.duct().isEmpty() ? "routes without a recorded duct" : "duct " + first.duct();
        String detail = group.size() + " ends of " + whose + " meet: " + names
                + (group.size() > MOST_NAMED ? " and others" : "");
        route(FindingCode.AMBIGUOUS_JOINT, routes.get(first.route()), detail, first.lonDeg(), first.latDeg());
    }
}

package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.finding.Severity;
import org.spanroom.input.InputData;
import org.spanroom.input.InputRecord;
import org.spanroom.model.Counted;
import org.spanroom.model.network.EndDistanceCounts;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;
import org.spanroom.network.EndDistances;

/**
 * Ends a run from which nothing can come: every feature of the routes or of the vaults was rejected, or no span came out. The message
 * begins with the likeliest cause; below it is each reason with its count and its first features.
 */
final class UsableInputs {
    private static final int FIRST_FEW = 3;

    /** Further apart than the two layers of one town. */
    private static final double FAR_KM = 20;

    private static final double KM_PER_DEG = 111.2;

    private final InputData inputs;
    private final List<Finding> findings;

    private UsableInputs(InputData inputs, FindingLog findings) {
        this.inputs = inputs;
        this.findings = findings.all();
    }

    /** @throws InputException if no feature of the routes, or none of the vaults, can be used */
    static void demandFeatures(InputData inputs, FindingLog findings) {
        for (String role : List.of("routes", "vaults")) {
            if (used(inputs, role) == 0) {
                throw new UsableInputs(inputs, findings).noFeatures(role);
            }
        }
    }

    /** @throws InputException if no route has two vaults */
    static void demandSpans(InputData inputs, Network network, FindingLog findings, double snapToleranceM) {
        if (network.spans().isEmpty()) {
            throw new UsableInputs(inputs, findings).noSpan(snapToleranceM);
        }
    }

    private static long used(InputData inputs, String role) {
        return inputs.records(role).stream()
                .mapToLong(InputRecord::featuresUsed)
                .sum();
    }

    private InputException noFeatures(String role) {
        Cause cause = cause(role);
        var lines = new ArrayList<String>();
        for (String each : List.of("routes", "vaults")) {
            if (used(inputs, each) == 0) {
                inputs.records(each).forEach(record -> addReasons(record, lines));
            }
        }
        long features = inputs.records(role).stream()
                .mapToLong(InputRecord::featuresRead)
                .sum();
        String problem = features == 0
                ? "it has no features: no " + role + " can be read from it"
                : String.format(
                        Locale.ROOT, "none of its %s can be used for %s", Counted.of(features, "feature"), role);
        return new InputException(file(role), problem + ". " + cause.text, cause.remedy, lines);
    }

    /** What probably went wrong, and what to do. */
    private record Cause(String text, String remedy) {}

    private Cause cause(String role) {
        FindingCode main = mainReason(role).orElse(FindingCode.EMPTY_GEOMETRY);
        String other = role.equals("routes") ? "vaults" : "routes";
        boolean empty = inputs.records(role).stream().allMatch(record -> record.featuresRead() == 0);
        if (empty) {
            return new Cause(
                    "The layer is empty",
                    "Export it again, or name another file with --" + role + " or another layer with --" + role
                            + "-layer.");
        }
        if (main == FindingCode.WRONG_GEOMETRY_TYPE) {
            boolean swapped =
                    used(inputs, other) == 0 && mainReason(other).equals(Optional.of(FindingCode.WRONG_GEOMETRY_TYPE));
            String wanted = role.equals("routes") ? "Routes are lines" : "Vaults are points or outlines";
            return swapped
                    ? new Cause(
                            "The files of routes and vaults seem to be swapped",
                            "Give the lines with --routes and the points or outlines with --vaults.")
                    : new Cause(
                            wanted + "; this seems to be another layer", "Name the right file with --" + role + ".");
        }
        if (main == FindingCode.EMPTY_GEOMETRY) {
            return new Cause(
                    "Its features have no shapes: perhaps it is a table",
                    "Export the layer with its shapes, or name another file with --" + role + ".");
        }
        if (main == FindingCode.ZERO_LENGTH_PART) {
            return new Cause(
                    "All vertices of each line are at the same location",
                    "Export it again with all digits of its coordinates, or name another file with --" + role + ".");
        }
        return main == FindingCode.BAD_COORDINATE
                ? wrongSystem(role)
                : new Cause("The file is damaged", "Export it again.");
    }

    private Cause wrongSystem(String role) {
        String system = inputs.records(role).get(0).crsName();
        // The remedy says how to give another system, so the suspicion need not.
        String why = suspicion(role)
                .map(text -> ": " + text.replaceFirst("[;.] [gG]ive it with --crs EPSG:code$", ""))
                .orElse("");
        return new Cause(
                "Its ordinates do not belong to the reference system that it is read in (" + system + ")" + why,
                "Give the right one with --crs EPSG:code or inputs." + role + ".crs.");
    }

    private Optional<String> suspicion(String role) {
        return inputs.records(role).stream()
                .flatMap(record -> of(FindingCode.LAYER_ISSUE, record.source()))
                .map(Finding::detail)
                .filter(text -> text.contains("--crs") || text.contains("axis_order"))
                .findFirst();
    }

    private Optional<FindingCode> mainReason(String role) {
        var counts = new EnumMap<FindingCode, Long>(FindingCode.class);
        inputs.records(role)
                .forEach(record ->
                        record.rejectedByCode().forEach((code, count) -> counts.merge(code, count, Long::sum)));
        return sorted(counts).map(Map.Entry::getKey).findFirst();
    }

    private static Stream<Map.Entry<FindingCode, Long>> sorted(Map<FindingCode, Long> counts) {
        Comparator<Map.Entry<FindingCode, Long>> mostFirst = Map.Entry.comparingByValue(Comparator.reverseOrder());
        return counts.entrySet().stream().sorted(mostFirst.thenComparing(Map.Entry.comparingByKey()));
    }

    private void addReasons(InputRecord record, List<String> lines) {
        sorted(record.rejectedByCode()).forEach(reason -> {
            FindingCode code = reason.getKey();
            lines.add(line("%,8d  %s: %s: %s", reason.getValue(), record.source(), code.key(), code.meaning()));
            addFirst(of(code, record.source()), lines);
        });
    }

    private InputException noSpan(double snapToleranceM) {
        var lines = new ArrayList<String>();
        Map<FindingCode, List<Finding>> byCode = findings.stream()
                .filter(finding -> finding.lengthM() > 0 || finding.code().severity() == Severity.REJECTED)
                .collect(Collectors.groupingBy(
                        Finding::code, () -> new EnumMap<>(FindingCode.class), Collectors.toList()));
        var counts = new EnumMap<FindingCode, Long>(FindingCode.class);
        byCode.forEach((code, list) ->
                counts.put(code, list.stream().mapToLong(Finding::count).sum()));
        sorted(counts).forEach(reason -> {
            FindingCode code = reason.getKey();
            lines.add(line("%,8d  %s: %s", reason.getValue(), code.key(), code.meaning()));
            addFirst(byCode.getOrDefault(code, List.of()).stream(), lines);
        });
        EndDistanceCounts ends = EndDistances.count(inputs.routes(), inputs.vaults());
        ends.bands()
                .forEach(band -> lines.add(line(
                        "%,8d  of %,d line ends have a vault within %.1f m",
                        band.count(), ends.endCount(), band.withinM())));
        Cause cause = causeOfNoSpan(snapToleranceM);
        return new InputException(file("routes"), "no span came out: " + cause.text, cause.remedy, lines);
    }

    private Cause causeOfNoSpan(double snapToleranceM) {
        Optional<String> role = Stream.of("routes", "vaults")
                .filter(each -> suspicion(each).isPresent())
                .findFirst();
        if (role.isPresent()) {
            return new Cause(
                    "of the " + role.get() + " " + suspicion(role.get()).orElse(""),
                    "Correct the reference system (--crs EPSG:code, inputs." + role.get() + ".crs) or axis_order.");
        }
        double farKm = nearestKm();
        if (farKm > FAR_KM) {
            Route route = inputs.routes().get(0);
            Vault vault = inputs.vaults().get(0);
            return new Cause(
                    line(
                            "routes and vaults lie %,.0f km apart (the first route at %.4f %.4f, the first vault at %.4f %.4f): one of"
                                    + " them is probably read in the wrong reference system",
                            farKm, route.lonLat().x(0), route.lonLat().y(0), vault.lonDeg(), vault.latDeg()),
                    "Give the right one at inputs.routes.crs or inputs.vaults.crs.");
        }
        return new Cause(
                line("no line has two vaults within network.snap_tolerance_m, which is %.2f m", snapToleranceM),
                "Compare it with the distances below; if they do not help, the layers may not belong together.");
    }

    /** Returns how far the bounds of the two layers are apart, roughly; 0 where they overlap. */
    private double nearestKm() {
        double[] ofRoutes = {180, 90, -180, -90};
        inputs.routes()
                .forEach(route ->
                        widen(ofRoutes, route.lonLat().x(0), route.lonLat().y(0)));
        double[] ofVaults = {180, 90, -180, -90};
        inputs.vaults().forEach(vault -> widen(ofVaults, vault.lonDeg(), vault.latDeg()));
        double eastDeg = Math.max(0, Math.max(ofVaults[0] - ofRoutes[2], ofRoutes[0] - ofVaults[2]));
        double northDeg = Math.max(0, Math.max(ofVaults[1] - ofRoutes[3], ofRoutes[1] - ofVaults[3]));
        double shrink = Math.cos(Math.toRadians((ofRoutes[1] + ofRoutes[3]) / 2));
        return KM_PER_DEG * Math.hypot(eastDeg * shrink, northDeg);
    }

    private static void widen(double[] bounds, double lonDeg, double latDeg) {
        bounds[0] = Math.min(bounds[0], lonDeg);
        bounds[1] = Math.min(bounds[1], latDeg);
        bounds[2] = Math.max(bounds[2], lonDeg);
        bounds[3] = Math.max(bounds[3], latDeg);
    }

    private Stream<Finding> of(FindingCode code, String source) {
        return findings.stream()
                .filter(finding -> finding.code() == code && finding.source().equals(source));
    }

    /** Numbers of features come in their order: shorter ones first. */
    private static void addFirst(Stream<Finding> all, List<String> lines) {
        all.filter(finding -> !finding.featureId().isEmpty())
                .sorted(Comparator.<Finding>comparingInt(
                                finding -> finding.featureId().length())
                        .thenComparing(Finding::featureId))
                .limit(FIRST_FEW)
                .forEach(finding -> lines.add(
                        "          " + finding.source() + ", " + finding.featureId() + ": " + finding.detail()));
    }

    private static String line(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    private Path file(String role) {
        return inputs.records(role).stream().map(InputRecord::file).findFirst().orElse(Path.of(role));
    }
}

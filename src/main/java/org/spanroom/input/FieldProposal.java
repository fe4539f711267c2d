package org.spanroom.input;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.spanroom.config.FieldMap;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/**
 * What a layer's fields might mean: each with samples and, where its name and values suggest one, a term and a unit. A proposal to be
 * looked over, not a decision.
 *
 * @param role routes or vaults, after the layer's geometries, or zones
 */
public record FieldProposal(Path file, String layer, String role, long features, List<Field> fields) {
    private static final int MOST_SAMPLES = 3;
    private static final int MOST_NUMBERS = 1000;
    private static final int LONGEST_SAMPLE = 24;

    /**
     * A field of the layer.
     *
     * @param samples up to three different values, the first that occur
     * @param filled how many features have a value
     */
    public record Field(String name, List<String> samples, long filled, Optional<Term> term, Optional<Unit> unit) {
        public Field {
            samples = List.copyOf(samples);
        }
    }

    public FieldProposal {
        fields = List.copyOf(fields);
    }

    /** Reads a layer and proposes what its fields mean. */
    public static FieldProposal of(Path file, Optional<String> layer, PlausibleRanges ranges, FindingLog findings) {
        try (LayerSource source = LayerSources.open(file, layer, findings)) {
            return of(source, ranges);
        }
    }

    /** Reads a layer of permit zones and proposes what its fields mean. */
    public static FieldProposal ofZones(
            Path file, Optional<String> layer, PlausibleRanges ranges, FindingLog findings) {
        try (LayerSource source = LayerSources.open(file, layer, findings)) {
            return of(source, ranges, true);
        }
    }

    static FieldProposal of(LayerSource source, PlausibleRanges ranges) {
        return of(source, ranges, false);
    }

    private static FieldProposal of(LayerSource source, PlausibleRanges ranges, boolean zones) {
        LayerHeader header = source.header();
        List<Seen> seen = header.fields().stream().map(Seen::new).toList();
        long[] linesAndOthers = new long[2];
        long features = source.read(header.fields(), feature -> {
            linesAndOthers[feature.geometry().kind() == SourceGeometry.Kind.LINES ? 0 : 1]++;
            for (int i = 0; i < seen.size(); i++) {
                seen.get(i).add(feature.values().get(i));
            }
        });
        String role = linesAndOthers[1] > linesAndOthers[0] ? role(zones) : "routes";
        var terms = new FieldWords(terms(role)).assign(seen);
        List<Field> fields = seen.stream()
                .map(field -> field(field, Optional.ofNullable(terms.get(field.name)), ranges))
                .toList();
        return new FieldProposal(header.file(), header.layerName(), role, features, fields);
    }

    private static String role(boolean zones) {
        return zones ? "zones" : "vaults";
    }

    private static Set<Term> terms(String role) {
        return switch (role) {
            case "zones" -> FieldMap.ZONE_TERMS;
            case "vaults" -> FieldMap.VAULT_TERMS;
            default -> FieldMap.routeTerms();
        };
    }

    private static Field field(Seen seen, Optional<Term> term, PlausibleRanges ranges) {
        Optional<Unit> unit = term.flatMap(found -> FieldWords.unit(found, seen, ranges));
        return new Field(seen.name, seen.samples, seen.filled, term, unit);
    }

    /** Returns the proposal as YAML to be pasted into a config, with what has no term behind it as comments. */
    public String text() {
        Map<Term, Field> byTerm = fields.stream()
                .filter(field -> field.term().isPresent())
                .collect(Collectors.toMap(
                        field -> field.term().get(), Function.identity(), (a, b) -> a, LinkedHashMap::new));
        var lines = new ArrayList<String>();
        lines.add("# " + file.getFileName() + ", layer " + layer + ": " + features + " features");
        lines.add("inputs:");
        lines.add("  " + role + ":");
        lines.add("    file: " + quoted(file.toString()));
        if (!layer.equals(LayerFormat.stem(file))) {
            lines.add("    layer: " + quoted(layer));
        }
        lines.add("    fields:");
        for (Term term : Term.values()) {
            Field field = byTerm.get(term);
            if (field != null) {
                lines.add(padded("      " + term.key() + ": " + source(field)) + "# " + shown(field));
            }
        }
        fields.stream()
                .filter(field -> field.term().isEmpty())
                .forEach(field -> lines.add(padded("      # no term: " + field.name()) + "# " + shown(field)));
        return String.join("\n", lines) + "\n";
    }

    private static String source(Field field) {
        String name = quoted(field.name());
        return field.unit()
                .map(unit -> "{field: " + name + ", unit: " + unit.symbol() + "}")
                .orElse(name);
    }

    private static String padded(String text) {
        return text + " ".repeat(Math.max(2, 62 - text.length()));
    }

    private static String shown(Field field) {
        return field.samples().isEmpty() ? "no values" : String.join(" | ", field.samples());
    }

    /** Names that YAML would read as something else are quoted. */
    private static String quoted(String name) {
        boolean plain =
                name.matches("[A-Za-z][A-Za-z0-9_./-]*") && !name.matches("(?i)true|false|yes|no|null|on|off|y|n");
        return plain ? name : "\"" + name.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
    }

    /** What has been seen of one field. */
    static final class Seen {
        private final String name;
        private final List<String> samples = new ArrayList<>();
        private final List<Double> numbers = new ArrayList<>();
        private long filled;

        Seen(String name) {
            this.name = name;
        }

        String name() {
            return name;
        }

        void add(@Nullable Object value) {
            if (value == null) {
                return;
            }
            boolean moreSamples = samples.size() < MOST_SAMPLES;
            boolean moreNumbers = numbers.size() < MOST_NUMBERS;
            filled++;
            if (!moreSamples && !moreNumbers) {
                return;
            }
            String text = SourceNumber.text(value).replaceAll("\\s+", " ");
            if (text.isEmpty()) {
                filled--;
                return;
            }
            String sample = text.length() > LONGEST_SAMPLE ? text.substring(0, LONGEST_SAMPLE) + "..." : text;
            if (moreSamples && !samples.contains(sample)) {
                samples.add(sample);
            }
            if (moreNumbers) {
                SourceNumber.parse(text).ifPresent(number -> numbers.add(number.inUnit()));
            }
        }

        /** Returns whether at least half of the values looked at are numbers. */
        boolean isNumeric() {
            return !numbers.isEmpty() && 2L * numbers.size() >= Math.min(filled, MOST_NUMBERS);
        }

        boolean isEmpty() {
            return filled == 0;
        }

        double medianInUnit() {
            var sorted = new ArrayList<>(numbers);
            Collections.sort(sorted);
            return sorted.isEmpty() ? Double.NaN : sorted.get(sorted.size() / 2);
        }
    }
}

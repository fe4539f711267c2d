package org.spanroom.output;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateOverride;
import org.spanroom.model.effort.RateSettings;
import org.spanroom.model.effort.Surface;
import org.spanroom.model.learn.RateChange;
import org.spanroom.model.learn.RatioEstimate;

/** Writes rates as the file that the config's key {@code rates} names; above each rate that changed stands what it was and why. */
final class RatesYaml {
    private final List<RateChange> changes;
    private final List<String> lines = new ArrayList<>();

    private RatesYaml(List<RateChange> changes) {
        this.changes = changes;
    }

    /** @param changes those that have a proposal are explained */
    static String text(RateSettings rates, List<RateChange> changes) {
        var yaml = new RatesYaml(changes);
        yaml.opening(rates);
        yaml.lines.add("");
        yaml.lines.add("standard:");
        for (RateKey key : RateKey.values()) {
            yaml.standard(key, Optional.ofNullable(rates.standard().get(key)));
        }
        yaml.rows("by_vault_kind", rates.byVaultKind());
        yaml.rows("by_zone_kind", rates.byZoneKind());
        return String.join("\n", yaml.lines) + "\n";
    }

    private void opening(RateSettings rates) {
        lines.add(
                "# Proposed rates: those of the run, and the changed ones marked with what they were. Check them, then name this file with");
        lines.add("# the key 'rates' of the config. A rate that was learned says so in its source.");
        lines.add("");
        lines.add("currency: " + quoted(rates.currency()));
        lines.add("surfaces:");
        for (Surface surface : Surface.values()) {
            String words = rates.surfaces().getOrDefault(surface, List.of()).stream()
                    .map(RatesYaml::quoted)
                    .collect(Collectors.joining(", "));
            lines.add("  " + surface.name().toLowerCase(Locale.ROOT) + ": [" + words + "]");
        }
        lines.add("surface_when_unknown: " + rates.surfaceWhenUnknown().name().toLowerCase(Locale.ROOT));
    }

    private void standard(RateKey key, Optional<Rate> rate) {
        rate.ifPresent(row -> {
            explain(key, "");
            lines.add("  " + key.key() + ": {" + values(row) + "}");
        });
    }

    private void rows(String section, List<RateOverride> rows) {
        lines.add("");
        lines.add(section + ":" + (rows.isEmpty() ? " []" : ""));
        for (RateOverride row : rows) {
            explain(row.rate(), row.kind());
            lines.add("  - {kind: " + quoted(row.kind()) + ", rate: "
                    + row.rate().key() + ", " + values(row.there()) + "}");
        }
    }

    private void explain(RateKey key, String kind) {
        for (RateChange change : changes) {
            boolean same =
                    change.rate().equals(Optional.of(key)) && change.kind().equals(kind);
            if (same && change.before().isPresent() && change.after().isPresent()) {
                Rate before = change.before().get();
                lines.add("  # was " + number(before.value()) + " (" + number(before.low()) + " to "
                        + number(before.high()) + "); " + change.learned() + ", actual over planned: "
                        + change.estimate().map(RatesYaml::words).orElse(""));
                return;
            }
        }
    }

    static String words(RatioEstimate estimate) {
        return String.format(
                Locale.ROOT,
                "%.3f (%.3f to %.3f) of %s, weight %.2f",
                estimate.medianRatio(),
                estimate.lowRatio(),
                estimate.highRatio(),
                Counted.of(estimate.spans(), "span"),
                estimate.weightRatio());
    }

    private static String values(Rate rate) {
        return "value: " + number(rate.value()) + ", low: " + number(rate.low()) + ", high: " + number(rate.high())
                + ", source: " + quoted(rate.source()) + ", date: " + quoted(rate.date());
    }

    /** Returns a number that reads back as the same, without an exponent. */
    static String number(double value) {
        BigDecimal exact = new BigDecimal(Double.toString(value));
        return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
    }

    static String quoted(String text) {
        return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}

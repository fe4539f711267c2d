package org.spanroom.input.proposal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.spanroom.config.AxisOrder;
import org.spanroom.config.ContentsConfig;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;

/** Proposals as YAML: the section "inputs" of a config, in which unsure fields are commented out with the reason. */
public final class ProposalYaml {
    private static final int COMMENT_COLUMN = 62;

    private ProposalYaml() {}

    /**
     * Returns the section.
     *
     * @param named how files are named in the config
     */
    public static String inputs(List<FieldProposal> proposals, ContentsConfig contents, Function<Path, String> named) {
        var lines = new ArrayList<String>();
        lines.add("inputs:");
        proposals.forEach(proposal -> add(proposal, named, lines));
        contents.file().ifPresent(file -> {
            lines.add("  contents:");
            lines.add("    file: " + quoted(named.apply(file)));
            contents.encoding().ifPresent(encoding -> lines.add("    encoding: " + quoted(encoding)));
            lines.add("    diameter_unit: " + contents.diameterUnit().symbol());
            lines.add("    mass_unit: " + contents.massUnit().symbol());
        });
        return String.join("\n", lines) + "\n";
    }

    private static void add(FieldProposal proposal, Function<Path, String> named, List<String> lines) {
        lines.add("  # " + comment(String.valueOf(proposal.file().getFileName())) + ", layer "
                + comment(proposal.layer()) + ": " + looked(proposal));
        lines.add("  " + proposal.role() + ":");
        lines.add("    file: " + files(proposal, named));
        if (!proposal.layer().equals(LayerFormat.stem(proposal.file()))) {
            lines.add("    layer: " + quoted(proposal.layer()));
        }
        proposal.source().crs().ifPresent(crs -> lines.add("    crs: " + quoted(crs)));
        if (proposal.source().axisOrder() == AxisOrder.NORTH_FIRST) {
            lines.add("    axis_order: north_first");
        }
        lines.add("    fields:");
        for (Term term : Term.values()) {
            proposal.find(term).ifPresent(field -> lines.add(line(term, field)));
        }
        proposal.fields().stream()
                .filter(field -> field.term().isEmpty())
                .forEach(field -> lines.add(padded("      # no term: " + comment(field.name())) + "# " + shown(field)));
    }

    /** The fields of several files are mapped once, by those of the first. */
    private static String files(FieldProposal proposal, Function<Path, String> named) {
        List<Path> paths = proposal.source().file().paths();
        return paths.size() < 2
                ? quoted(named.apply(proposal.file()))
                : paths.stream()
                        .map(path -> quoted(named.apply(path)))
                        .collect(Collectors.joining(", ", "[", "]  # fields proposed from the first"));
    }

    private static String looked(FieldProposal proposal) {
        if (proposal.features() == proposal.looked()) {
            return Counted.of(proposal.features(), "feature");
        }
        String all = proposal.features() < 0 ? "" : " of " + proposal.features();
        return "the first " + proposal.looked() + all + " features read";
    }

    private static String line(Term term, FieldProposal.Field field) {
        String entry = term.key() + ": " + source(field);
        return field.isSure()
                ? padded("      " + entry) + "# " + shown(field)
                : padded("      # " + entry) + "# unsure: " + field.doubt() + "; " + shown(field);
    }

    private static String source(FieldProposal.Field field) {
        String name = quoted(field.name());
        return field.unit()
                .map(unit -> "{field: " + name + ", unit: " + unit.symbol() + "}")
                .orElse(name);
    }

    private static String padded(String text) {
        return text + " ".repeat(Math.max(2, COMMENT_COLUMN - text.length()));
    }

    private static String shown(FieldProposal.Field field) {
        return field.samples().isEmpty() ? "no values" : comment(String.join(" | ", field.samples()));
    }

    /** A line end would end the comment. */
    private static String comment(String text) {
        return text.replaceAll("[\\p{Cntrl}\\u0080-\\u009f\\u2028-\\u202e\\u2066-\\u2069\\ufeff]", "?");
    }

    /** Returns a text as YAML reads it back; what YAML would read as something else is quoted. */
    public static String quoted(String text) {
        boolean plain =
                text.matches("[A-Za-z][A-Za-z0-9_./-]*") && !text.matches("(?i)true|false|yes|no|null|on|off|y|n");
        if (plain) {
            return text;
        }
        var quoted = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char each = text.charAt(i);
            if (each == '"' || each == '\\') {
                quoted.append('\\').append(each);
            } else if (comment(String.valueOf(each)).equals("?") && each != '?') {
                quoted.append(String.format(Locale.ROOT, "\\u%04x", (int) each));
            } else {
                quoted.append(each);
            }
        }
        return quoted.append('"').toString();
    }
}

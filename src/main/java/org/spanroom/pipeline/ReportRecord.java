package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;
import org.spanroom.output.RecordedAccount;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.report.PageTexts.Assumption;
import org.spanroom.output.report.PageTexts.Entry;
import org.spanroom.output.report.PageTexts.Input;
import org.spanroom.output.report.PageTexts.Problem;
import org.spanroom.output.report.PageTexts.RateLine;

/** The record of a run as the page shows it. */
final class ReportRecord {
    private static final int MINUTE = "2026-01-01T00:00".length();

    private final RecordedRun run;
    private final RecordedAccount account;
    private final RunConfig config;
    private final UnitSystem units;
    private final String folder;

    /**
     * Prepares the record.
     *
     * @param folder the results, as the page names them
     */
    ReportRecord(RecordedRun run, RecordedAccount account, RunConfig config, UnitSystem units, String folder) {
        this.folder = folder;
        this.units = units;
        this.run = run;
        this.account = account;
        this.config = config;
    }

    /** Returns when the run was started, to the minute. */
    String madeAt() {
        String at = account.startedAt();
        return at.length() < MINUTE ? at : at.substring(0, MINUTE).replace('T', ' ') + " UTC";
    }

    List<Entry> entries() {
        var entries = new ArrayList<Entry>();
        entries.add(new Entry("run", madeAt()));
        entries.add(new Entry("results", folder));
        entries.add(new Entry("version", run.version()));
        entries.add(new Entry("reference system of the layers", run.outputCrs()));
        entries.add(new Entry(
                "lengths",
                units.words(run.lengths().routesM(), 0, "m") + " of routes; "
                        + units.words(run.lengths().spansM(), 0, "m") + " in spans, "
                        + units.words(run.lengths().remaindersM(), 0, "m") + " not assigned to a span"));
        entries.add(new Entry(
                "simulation",
                config.uncertainty().simulated()
                        ? Counted.of(config.uncertainty().samples(), "draw") + ", seed "
                                + config.uncertainty().seed()
                        : "none"));
        account.rescoredFrom().ifPresent(from -> entries.add(new Entry("ranked again from", from)));
        account.filter().forEach((what, asked) -> entries.add(new Entry(what, asked)));
        account.notes().forEach(note -> entries.add(new Entry("note", note)));
        return entries;
    }

    /** Returns the files that were read; of their names only the last part, since a page is passed on. */
    List<Input> inputs() {
        return run.inputs().stream()
                .map(input -> new Input(
                        input.role(),
                        name(input.file()),
                        input.layer(),
                        input.crs(),
                        Counted.whole(input.featuresRead()),
                        Counted.whole(input.featuresUsed()),
                        Counted.whole(input.featuresRejected()),
                        input.sha256()))
                .toList();
    }

    private static String name(String file) {
        Path name = Path.of(file).getFileName();
        return name == null ? file : name.toString();
    }

    List<RateLine> rates() {
        var lines = new ArrayList<RateLine>();
        config.rates().standard().forEach((key, rate) -> lines.add(rate(key, "", rate)));
        config.rates()
                .byVaultKind()
                .forEach(row -> lines.add(rate(row.rate(), ", vaults of kind " + row.kind(), row.there())));
        config.rates()
                .byZoneKind()
                .forEach(row -> lines.add(rate(row.rate(), ", zones of kind " + row.kind(), row.there())));
        return lines;
    }

    /** @param where which spans or vaults have another rate than the standard one, after a comma; empty for that one */
    private RateLine rate(RateKey key, String where, Rate rate) {
        String name = key.key();
        int unit = List.of("_hours", "_money", "_ratio", "_m3", "_m2").stream()
                .filter(name::endsWith)
                .mapToInt(end -> name.length() - end.length())
                .findFirst()
                .orElse(name.length());
        String per = name.contains("_per_") ? name.substring(begin(name)) : name.substring(unit);
        String label = name.substring(0, name.length() - per.length());
        return new RateLine(
                RateLabels.of(key, label.replace('_', ' ')) + where,
                number(rate.value()) + " (" + number(rate.low()) + " to " + number(rate.high()) + ")",
                per.replace("_", " ").strip().replace("money", config.rates().currency()),
                rate.source(),
                ReportTexts.isIllustrative(rate) ? "illustrative" : "");
    }

    /** The unit of a rate for each of something begins with the word before: money_per_m. */
    private static int begin(String name) {
        int per = name.indexOf("_per_");
        return Math.max(0, name.lastIndexOf('_', per - 1));
    }

    private static String number(double value) {
        return value == Math.rint(value) ? String.format(Locale.ROOT, "%,.0f", value) : Double.toString(value);
    }

    List<Assumption> assumptions() {
        return account.contents().missing().stream()
                .map(missing -> new Assumption(
                        missing.term().replace('_', ' ').replace(" sdr", " SDR"),
                        missing.standsIn().isEmpty() ? "no value is used" : missing.standsIn(),
                        Counted.whole(missing.without()) + " of " + Counted.whole(missing.of()) + " "
                                + missing.counted()))
                .toList();
    }

    /** Returns the problems of the data by kind, in the order of the stages that find them. */
    List<Problem> findings() {
        var problems = new ArrayList<Problem>();
        for (FindingCode code : FindingCode.values()) {
            long count = account.findings().getOrDefault(code.key(), 0L);
            if (count > 0) {
                problems.add(new Problem(
                        code.meaning(),
                        code.severity().name().toLowerCase(Locale.ROOT),
                        Counted.whole(count),
                        todo(code)));
            }
        }
        for (Map.Entry<String, Long> other : account.findings().entrySet()) {
            if (isUnknown(other.getKey())) {
                problems.add(new Problem(other.getKey(), "", Counted.fixed(other.getValue(), 0), ""));
            }
        }
        return problems;
    }

    private static boolean isUnknown(String key) {
        for (FindingCode code : FindingCode.values()) {
            if (code.key().equals(key)) {
                return false;
            }
        }
        return true;
    }

    private static String todo(FindingCode code) {
        return switch (code.severity()) {
            case REJECTED -> "Not in the results: fix the data and run again.";
            case SUSPECT -> "In the results, but doubtful: check the record.";
            case NOTE -> "Nothing to fix; listed for the record.";
        };
    }

    /** Returns what anyone who goes out must observe. */
    static List<String> safety() {
        return List.of(
                "A vault may be a permit-required confined space: 29 CFR 1910.146; telecom manholes 1910.268(o);"
                        + " construction work 1926 subpart AA. The safety officer decides which applies.",
                "Test the air before entry, after pumping, at each duct mouth when its plug comes out, and"
                        + " continuously; keep an attendant outside.",
                "Set up traffic control before a cover is off; guard the opening at once.",
                "Identify each live cable at both ends before cutting anything.",
                "Local codes, the owner's rules and licensed practice govern.");
    }
}

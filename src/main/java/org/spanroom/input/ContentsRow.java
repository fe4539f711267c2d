package org.spanroom.input;

import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.csv.CSVRecord;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ValueWords;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Answer;
import org.spanroom.model.CatalogUse;
import org.spanroom.model.Service;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** One row of the contents table, its values in our units. */
final class ContentsRow {
    private static final int MOST_LINE_BREAKS = 50;

    private final RunConfig config;
    private final CappedLog log;
    private final CSVRecord record;
    private final Map<String, Integer> columns;
    private final long line;
    private final CatalogSizes sizes;
    private final WordMeanings words;
    private final Set<Term> assumed = EnumSet.noneOf(Term.class);
    private final CatalogOffers offers = new CatalogOffers();

    /** What all rows of a table are read with. */
    record Context(RunConfig config, CappedLog log, CatalogSizes sizes, WordMeanings words) {}

    ContentsRow(Context context, CSVRecord record, Map<String, Integer> columns, long line) {
        this.config = context.config();
        this.log = context.log();
        this.sizes = context.sizes();
        this.words = context.words();
        this.record = record;
        this.columns = columns;
        this.line = line;
    }

    long line() {
        return line;
    }

    String duct() {
        return cell("duct");
    }

    /** What findings call the row: its duct, or its line. */
    String id() {
        return duct().isEmpty() ? "line " + line : duct();
    }

    /** Returns the terms that had to be assumed for the row. */
    Set<Term> assumed() {
        return assumed;
    }

    /** Returns what was taken from the catalogue for the row. */
    CatalogUse catalogUse() {
        return offers.use();
    }

    /** Lets the catalogue offer what the row, an innerduct, leaves out. */
    void offerInnerduct() {
        sizes.offerInnerduct(offers, cell("catalog")).ifPresent(this::tellUnknown);
    }

    /** Lets the catalogue offer what the row, a cable, leaves out. */
    void offerCable() {
        sizes.offerCable(offers, cell("catalog")).ifPresent(this::tellUnknown);
    }

    private void tellUnknown(String problem) {
        tell(FindingCode.CATALOGUE_NAME_UNKNOWN, "catalog", problem);
    }

    /** Returns a cell's text; "" where the column, the cell or what it says is missing. */
    String cell(String column) {
        Integer index = columns.get(column);
        if (index == null || index >= record.size()) {
            return "";
        }
        String text = record.get(index).strip();
        return config.values().missing().contains(ValueWords.fold(text)) ? "" : text;
    }

    /**
     * Says what is wrong with a row that goes on over further lines, because a quote was opened and not closed: it has swallowed
     * rows. Only a column that is not read may hold a text of several lines, and not of very many.
     */
    Optional<String> runOn() {
        long lines = record.stream().mapToLong(ContentsRow::lineBreaks).sum();
        boolean inColumn =
                columns.values().stream().anyMatch(index -> index < record.size() && lineBreaks(record.get(index)) > 0);
        return inColumn || lines > MOST_LINE_BREAKS
                ? Optional.of("it and " + lines + " lines before it are one row: is a quote not closed there?")
                : Optional.empty();
    }

    private static long lineBreaks(String cell) {
        return cell.chars().filter(c -> c == '\n').count();
    }

    double outsideMm(Term term) {
        return numberOrAssumed(
                term, "outside_diameter", Optional.of(config.inputs().contents().diameterUnit()));
    }

    double massKgPerM() {
        return numberOrAssumed(
                Term.CABLE_MASS, "mass", Optional.of(config.inputs().contents().massUnit()));
    }

    /**
     * Returns the wall as recorded, else from the SDR as recorded; where neither is, the assumed wall, else from the assumed SDR. NaN
     * where nothing leaves a bore.
     */
    double wallMm(double outsideMm) {
        if (!cell("wall").isEmpty()) {
            double wallMm = number(
                    Term.INNERDUCT_WALL,
                    "wall",
                    Optional.of(config.inputs().contents().diameterUnit()));
            if (2 * wallMm < outsideMm) {
                return wallMm;
            }
            if (!Double.isNaN(wallMm)) {
                tell(FindingCode.UNUSABLE_VALUE, "wall", "a wall of " + cell("wall") + " leaves no bore");
            }
        }
        double sdrRatio = numberOrOffered(Term.INNERDUCT_SDR, "sdr", Optional.empty());
        if (Double.isNaN(sdrRatio)) {
            double assumedMm = config.assumed().findNumber(Term.INNERDUCT_WALL).orElse(Double.NaN);
            if (2 * assumedMm < outsideMm) {
                return assumedNumber(Term.INNERDUCT_WALL);
            }
            sdrRatio = assumedNumber(Term.INNERDUCT_SDR);
        }
        return sdrRatio > 2 ? outsideMm / sdrRatio : Double.NaN;
    }

    /** Returns whether the cable may be laid into a sleeve: yes, unless the row or else the configured default says no. */
    boolean mayMove() {
        String text = cell("may_move");
        Answer answer = words.answer().get(ValueWords.fold(text));
        if (answer != null) {
            return answer != Answer.NO;
        }
        if (!text.isEmpty()) {
            tell(FindingCode.UNUSABLE_VALUE, "may_move", "'" + text + "' stands in no list of words for may_move");
        }
        Answer assumedAnswer = WordMeanings.OUR_ANSWER.get(
                config.assumed().findWord(Term.CABLE_MAY_MOVE).orElse(""));
        if (assumedAnswer != null) {
            assumed.add(Term.CABLE_MAY_MOVE);
        }
        return assumedAnswer != Answer.NO;
    }

    Service service() {
        String text = cell("in_service");
        Service service = words.service().get(ValueWords.fold(text));
        if (service != null) {
            return service;
        }
        if (!text.isEmpty()) {
            tell(FindingCode.UNUSABLE_VALUE, "in_service", "'" + text + "' stands in no list of words for in_service");
        }
        assumed.add(Term.IN_SERVICE);
        return WordMeanings.OUR_SERVICE.getOrDefault(
                config.assumed().findWord(Term.IN_SERVICE).orElse("unknown"), Service.UNKNOWN);
    }

    private double numberOrAssumed(Term term, String column, Optional<Unit> unit) {
        double number = numberOrOffered(term, column, unit);
        return Double.isNaN(number) ? assumedNumber(term) : number;
    }

    private double numberOrOffered(Term term, String column, Optional<Unit> unit) {
        double number = number(term, column, unit);
        Optional<CatalogOffers.Offer> offer = Double.isNaN(number) ? offers.find(term) : Optional.empty();
        if (offer.isEmpty()) {
            return number;
        }
        if (offer.get().assumed()) {
            assumed.add(term);
        }
        return offers.take(term, offer.get());
    }

    private double assumedNumber(Term term) {
        double stand = config.assumed().findNumber(term).orElse(Double.NaN);
        if (!Double.isNaN(stand)) {
            assumed.add(term);
        }
        return stand;
    }

    private double number(Term term, String column, Optional<Unit> unit) {
        String text = cell(column);
        if (text.isEmpty()) {
            if (offers.findNamed(term).isEmpty()) {
                tell(FindingCode.MISSING_VALUE, column, "no " + column + " is given");
            }
            return Double.NaN;
        }
        Optional<SourceNumber> read = SourceNumber.parse(text)
                .filter(found -> found.unit().isEmpty()
                        || found.unit().map(Unit::dimension).equals(unit.map(Unit::dimension)));
        if (read.isEmpty()) {
            tell(FindingCode.UNUSABLE_VALUE, column, "'" + text + "' is not a number that can be read");
            return Double.NaN;
        }
        Optional<Unit> counting = read.get().unit().or(() -> unit);
        double kept = Quantities.kept(term, read.get().inUnit(), counting);
        if (!config.plausible().contains(term, kept)) {
            tell(
                    FindingCode.IMPLAUSIBLE_VALUE,
                    column,
                    Quantities.implausible(term, read.get().inUnit(), counting, config.plausible()));
            return Double.NaN;
        }
        offers.disagreement(term, kept).ifPresent(detail -> tell(FindingCode.CATALOGUE_DISAGREES, column, detail));
        return kept;
    }

    boolean unusable(String why) {
        tell(FindingCode.CONTENTS_ROW_UNUSABLE, "", why);
        return false;
    }

    void tell(FindingCode code, String column, String detail) {
        place().tell(code, column, detail);
    }

    /** Returns what is needed of the row to tell of it later, which takes less memory than the row. */
    RowPlace place() {
        return new RowPlace(log, id(), line);
    }

    /** Where a row stands. */
    record RowPlace(CappedLog log, String id, long line) {
        void tell(FindingCode code, String column, String detail) {
            log.add(Finding.of(code, log.source(), id, "line " + line + ": " + detail)
                    .inField(column));
        }
    }
}

package org.spanroom.input.fields;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.spanroom.config.ContentsConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.RecordLimit;
import org.spanroom.input.layer.Rejections;

/**
 * Reads the contents table: CSV (RFC 4180) with a header, one row for each innerduct, sleeve or cable in a duct.
 *
 * <p>Columns, in any order and case: duct, item, kind (innerduct, sleeve or cable), inside (the item that this one is in; empty for the duct
 * itself), outside_diameter, sdr or wall, mass, in_service, catalog (a row of the catalog that gives what the row leaves out), may_move
 * (no: the cable may not be laid into a sleeve), cells (of a sleeve) reserved (how many of them are promised and hold no cable), color (of an innerduct), tag (of a
 * cable), continuous_at_a and continuous_at_b (whether an innerduct runs uncut through the vault at that end of its duct); others are named in a
 * finding and left (one that almost has the name of a column that is missing is a mistake: {@link ContentsHeader}). Separators may be commas,
 * semicolons, tabs or vertical bars.
 */
public final class ContentsTableReader {
    /** Of characters, far beyond any; what follows a quote that is not closed is one row. */
    private static final long LONGEST_ROW = 200_000_000;

    private final Path file;
    private final RunConfig config;
    private final FindingLog findings;
    private final CappedLog log;
    private final ItemReader reader;
    private final Map<String, DuctItems> items = new LinkedHashMap<>();
    private final Rejections rejections = new Rejections();
    private long rows;
    private long used;

    public ContentsTableReader(Path file, RunConfig config, FindingLog findings) {
        this.file = file;
        this.config = config;
        this.findings = findings;
        this.log = new CappedLog(findings, String.valueOf(file.getFileName()));
        this.reader = new ItemReader(new CatalogSizes(config));
    }

    public long rows() {
        return rows;
    }

    public long usedRows() {
        return used;
    }

    public Rejections rejections() {
        return rejections;
    }

    public ContentsTable read() {
        ContentsConfig contents = config.inputs().contents();
        TableText text = TableText.of(file, contents.encoding(), findings);
        try (var limited = new RecordLimit(text.open(), LONGEST_ROW);
                CSVParser parser = CSVParser.parse(limited, format(text))) {
            var records = parser.iterator();
            if (!records.hasNext()) {
                throw new InputException(file, "the contents table is empty", "It needs a header and rows.");
            }
            CSVRecord header = records.next();
            var row = new ContentsRow(config, log, columns(header), header.size());
            while (records.hasNext()) {
                row.start(records.next(), parser.getCurrentLineNumber());
                if (!row.isBlank()) {
                    take(row);
                }
                limited.next();
            }
            row.reportUnits(log);
            reportNoRows();
        } catch (IOException | UncheckedIOException e) {
            throw new InputException(
                    file,
                    "the contents table cannot be read after row " + rows + ": " + TableText.words(e),
                    "Fix the table.",
                    e);
        }
        var byDuct = new TreeMap<String, ContentsTable.Listed>();
        items.forEach((duct, listed) -> byDuct.put(duct, listed.build()));
        log.close(rows);
        return new ContentsTable(log.source(), byDuct);
    }

    private static CSVFormat format(TableText text) throws IOException {
        return CSVFormat.RFC4180
                .builder()
                .setDelimiter(text.separator())
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .setTrailingData(true)
                .setLenientEof(true)
                .get();
    }

    private Map<String, Integer> columns(CSVRecord record) {
        var header = ContentsHeader.read(file, record.toList());
        if (!header.others().isEmpty()) {
            findings.add(Finding.of(
                    FindingCode.LAYER_ISSUE,
                    log.source(),
                    "",
                    "columns not used: " + String.join(", ", header.others()) + "; columns used: "
                            + String.join(", ", ContentsHeader.COLUMNS)));
        }
        return header.columns();
    }

    private void reportNoRows() {
        if (rows == 0) {
            findings.add(Finding.of(
                    FindingCode.LAYER_ISSUE,
                    log.source(),
                    "",
                    "the contents table has no rows; was it exported with a filter?"));
        }
    }

    private void take(ContentsRow row) {
        rows++;
        if (isTaken(row)) {
            used++;
        } else {
            rejections.count(FindingCode.CONTENTS_ROW_UNUSABLE);
        }
    }

    private boolean isTaken(ContentsRow row) {
        Optional<String> malformed = row.runOn().or(row::tooLong);
        if (malformed.isPresent()) {
            return row.unusable(malformed.get());
        }
        if (row.duct().isEmpty()) {
            return row.unusable("it names no duct");
        }
        String kind = row.cell("kind").toLowerCase(Locale.ROOT);
        DuctItems listed = items.computeIfAbsent(
                row.duct(), duct -> new DuctItems(reader, config.room().cellsPerSleeve()));
        return switch (kind) {
            case "innerduct" -> listed.addInnerduct(row);
            case "sleeve" -> listed.addSleeve(row);
            case "cable" -> listed.addCable(row);
            default -> listed.reject(row, "its kind is '" + row.cell("kind") + "', not innerduct, sleeve or cable");
        };
    }
}

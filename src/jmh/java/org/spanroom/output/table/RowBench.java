package org.spanroom.output.table;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.SampleResults;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.text.CsvFile;
import org.spanroom.output.text.GeoJsonFile;
import org.spanroom.rank.Ranking;

/** From a ranked span to its cells, and on to the bytes of a format; and from a number to its digits. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class RowBench {
    private RankedSpan span;
    private Row<RankedSpan> row;
    private TableFile.RowBatch csv;
    private TableFile.RowBatch geoJson;
    private final byte[] digits = new byte[Decimals.MOST_BYTES];
    private double number = 12345.678;

    /** Makes one span's row ready. */
    @Setup
    public void prepare() throws IOException {
        Path folder = Files.createTempDirectory("bench");
        Table<RankedSpan> table = SpanColumns.table(new SpanLayout(Ranking.criteria(), false));
        span = SampleResults.ranked("S-1", 1);
        row = new Row<>(table, OutputCrs.lonLat());
        row.load(span);
        csv = new CsvFile(folder.resolve("a.csv"), table).newBatch();
        geoJson = new GeoJsonFile(folder.resolve("a.geojson"), table).newBatch();
    }

    /** The cells of all columns. */
    @Benchmark
    public Row<RankedSpan> cells() {
        row.load(span);
        return row;
    }

    /** Cells, then a line of CSV. */
    @Benchmark
    public void cellsToCsv() {
        row.load(span);
        csv.add(row);
        csv.append();
    }

    /** Cells, then a GeoJSON feature. */
    @Benchmark
    public void cellsToGeoJson() {
        row.load(span);
        geoJson.add(row);
        geoJson.append();
    }

    /** A number with three decimals. */
    @Benchmark
    public int decimal() {
        return Decimals.format(number, 3, digits, 0);
    }
}

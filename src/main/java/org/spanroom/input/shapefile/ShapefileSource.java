package org.spanroom.input.shapefile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.FeatureOutlet;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerLog;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry.Kind;
import org.spanroom.input.layer.WantedFields;
import org.spanroom.model.Counted;

/**
 * A shapefile as a layer: its shapes and, row by row beside them, its attributes.
 *
 * <p>Shapes without a row have no attributes; rows without a shape are handed on without a geometry, so that each is
 * accounted for; features whose row is marked deleted are left out and counted in a finding.
 */
public final class ShapefileSource implements LayerSource {
    private final ShapefileParts parts;
    private final LayerHeader header;
    private final LayerLog log;

    private ShapefileSource(ShapefileParts parts, LayerHeader header, LayerLog log) {
        this.parts = parts;
        this.header = header;
        this.log = log;
    }

    public static LayerSource open(Path file, FindingLog findings) {
        try {
            ShapefileParts parts = ShapefileParts.around(file);
            var unnamed = new LayerHeader(parts.shp(), LayerFormat.stem(parts.shp()), List.of(), Optional.empty(), -1);
            var log = new LayerLog(unnamed.source(), findings);
            try (Reading looking = new Reading(parts, log)) {
                var names = new LinkedHashSet<String>();
                looking.fields().forEach(field -> names.add(field.name()));
                var header = new LayerHeader(
                        parts.shp(),
                        unnamed.layerName(),
                        List.copyOf(names),
                        parts.crsDefinition(log),
                        looking.announced());
                return new ShapefileSource(parts, header, log);
            }
        } catch (IOException e) {
            throw LayerFormat.unreadable(file, e);
        }
    }

    @Override
    public LayerHeader header() {
        return header;
    }

    @Override
    public long read(List<String> wantedFields, Consumer<SourceFeature> sink) {
        log.rejections().clear();
        var fields = new WantedFields(wantedFields);
        var outlet = new FeatureOutlet(log, fields, sink);
        try (Reading reading = new Reading(parts, LayerLog.unheard(""))) {
            reading.run(fields, outlet, log);
        } catch (IOException e) {
            throw LayerFormat.unreadable(header.file(), e);
        }
        log.close(outlet.met());
        return outlet.met();
    }

    @Override
    public Map<FindingCode, Long> rejected() {
        return log.rejections().byCode();
    }

    @Override
    public void close() {
        // each reading opens and closes the files by itself
    }

    /** The open files of one reading. */
    private static final class Reading implements AutoCloseable {
        /** What a decoder gives for bytes that are no character. */
        private static final char REPLACEMENT = '\uFFFD';

        private final ShapeRecords shapes;
        private final @Nullable DbfTable table;
        private final ShapeDecoder decoder = new ShapeDecoder();
        private final Optional<Path> memoPath;
        private @Nullable MemoTexts memos;
        private long announced = -1;

        Reading(ShapefileParts parts, LayerLog log) throws IOException {
            memoPath = parts.memos();
            shapes = ShapeRecords.open(parts.shp(), log);
            try {
                table = parts.dbf().isPresent() ? DbfTable.open(parts.dbf().get(), parts.encoding(log), log) : null;
                if (table == null) {
                    log.layer(FindingCode.LAYER_ISSUE, "its .dbf is missing; its features have no attributes");
                }
                chooseOrder(parts, log);
            } catch (IOException | RuntimeException e) {
                shapes.close();
                throw e;
            }
        }

        List<DbfField> fields() {
            return table == null ? List.of() : table.fields();
        }

        long announced() {
            return announced;
        }

        void run(WantedFields wanted, FeatureOutlet outlet, LayerLog log) throws IOException {
            DbfField[] columns = columns(wanted);
            if (table != null) {
                memos = new MemoTexts(memoPath, table, log);
            }
            long rows = table == null ? 0 : table.rows();
            long row = 0;
            for (; shapes.hasNext(); row++) {
                if (readRow(row, columns, wanted, log)) {
                    log.odd(FindingCode.LAYER_ISSUE, row + 1, "features are marked as deleted; they were skipped");
                    passOverShape();
                } else {
                    readShape(outlet, log);
                }
            }
            if (table != null && row > rows) {
                log.layer(
                        FindingCode.LAYER_ISSUE,
                        "the .shp has " + Counted.of(row, "shape") + ", but the .dbf has " + Counted.of(rows, "row"));
            }
            if (row < rows) {
                log.layer(
                        FindingCode.LAYER_ISSUE,
                        "the .dbf has " + Counted.of(rows, "row") + ", but the .shp has " + Counted.of(row, "shape"));
            }
            for (; row < rows; row++) {
                if (!readRow(row, columns, wanted, log)) {
                    decoder.vertices().clear();
                    outlet.handOn("", "null", Kind.NONE, decoder.vertices());
                }
            }
            if (table != null && table.encoding().guessed()) {
                log.layer(
                        FindingCode.ENCODING_ASSUMED,
                        "no encoding is stated for the .dbf; texts were read as UTF-8 or else Windows-1252");
            }
        }

        @Override
        public void close() throws IOException {
            shapes.close();
            if (table != null) {
                table.close();
            }
            if (memos != null) {
                memos.close();
            }
        }

        /**
         * Decides whether the index gives the places of the shapes: where the records of the .shp follow one another without a fault, and are
         * as many as the table has rows, they are read in that order, and the index is only compared with it.
         */
        private void chooseOrder(ShapefileParts parts, LayerLog log) throws IOException {
            announced = table == null ? -1 : table.rows();
            if (parts.shx().isEmpty()) {
                log.layer(FindingCode.LAYER_ISSUE, "its .shx is missing; the shapes were read in sequence");
                return;
            }
            Optional<Long> indexed = shapes.useIndex(parts.shx().get(), log);
            if (indexed.isEmpty()) {
                return;
            }
            long inSequence = shapes.countInSequence();
            boolean isSure = inSequence >= 0 && (table == null ? shapes.isWhole() : inSequence == table.rows());
            if (isSure) {
                Optional<String> differs = shapes.findDisagreement(inSequence);
                differs.ifPresent(words -> {
                    log.layer(FindingCode.LAYER_ISSUE, words + "; the index was not used");
                    shapes.dropIndex();
                });
                announced = inSequence;
                return;
            }
            announced = indexed.get();
            if (inSequence > indexed.get()) {
                log.layer(
                        FindingCode.LAYER_ISSUE,
                        "the .shp has " + Counted.of(inSequence, "record") + ", and its index lists " + indexed.get()
                                + "; only those were read");
            }
        }

        private @Nullable DbfField[] columns(WantedFields wanted) {
            var columns = new ArrayList<@Nullable DbfField>();
            for (String name : wanted.names()) {
                columns.add(fields().stream()
                        .filter(field -> field.name().equals(name))
                        .findFirst()
                        .orElse(null));
            }
            return columns.toArray(new DbfField[0]);
        }

        /** Reads the wanted values of a row, none where the table has no such row; returns true if it is deleted. */
        private boolean readRow(long row, @Nullable DbfField[] columns, WantedFields wanted, LayerLog log)
                throws IOException {
            wanted.clear();
            if (table == null || row >= table.rows()) {
                return false;
            }
            ByteBuffer bytes = table.row(row);
            if (DbfTable.isDeleted(bytes)) {
                return true;
            }
            for (int slot = 0; slot < columns.length; slot++) {
                DbfField column = columns[slot];
                wanted.set(slot, column == null ? null : value(column, bytes, row, log));
            }
            return false;
        }

        private @Nullable Object value(DbfField column, ByteBuffer bytes, long row, LayerLog log) {
            if (column.isMemo() && memos != null) {
                return memos.value(column, bytes, row + 1);
            }
            if (table == null) {
                return null;
            }
            Object value = column.value(bytes, table.encoding());
            if (value instanceof String text && text.indexOf(REPLACEMENT) >= 0) {
                log.odd(
                        FindingCode.LAYER_ISSUE,
                        row + 1,
                        "texts of the field \"" + column.name() + "\" are not valid in the encoding "
                                + table.encoding().name()
                                + " of the .dbf, and characters were lost; state the right one in the .cpg");
            }
            return value;
        }

        private void readShape(FeatureOutlet outlet, LayerLog log) throws IOException {
            try {
                decoder.decode(shapes.next());
            } catch (FeatureFault fault) {
                outlet.reject("", fault);
                return;
            }
            if (decoder.type() != 0 && decoder.type() != shapes.fileType()) {
                log.odd(FindingCode.LAYER_ISSUE, outlet.next(), "shapes have a type other than the file's");
            }
            if (decoder.heightsMissing()) {
                log.odd(FindingCode.LAYER_ISSUE, outlet.next(), "shapes should have heights, but have none");
            }
            outlet.handOn("", ShapeDecoder.name(decoder.type()), decoder.kind(), decoder.vertices());
        }

        private void passOverShape() throws IOException {
            try {
                shapes.next();
            } catch (FeatureFault fault) {
                // the owner deleted it; that it is damaged too does not matter
            }
        }
    }
}

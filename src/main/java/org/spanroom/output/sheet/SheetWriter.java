package org.spanroom.output.sheet;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.spanroom.model.fieldwork.CloseoutRow;
import org.spanroom.output.columns.FieldworkColumns;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.output.text.CsvWriter;

/**
 * Writes sheets section by section: a PDF, the same pages as HTML, and the close-out file of their blanks. They go to a hidden folder, which takes
 * its name once all are there.
 */
public final class SheetWriter implements AutoCloseable {
    /** The file by which a folder of ours is known. */
    public static final String MARKER = "closeout.csv";

    private static final String PDF = "sheets.pdf";
    private static final String HTML = "sheets.html";

    private final Path target;
    private final OutputFolder folder;
    private final SheetHtml html;
    private final SheetPdf pdf;
    private final Writer page;
    private final CsvWriter<CloseoutRow> closeout;
    private long blanks;
    private boolean closed;

    private SheetWriter(Path target, OutputFolder folder, SheetBook book) throws IOException {
        this.target = target;
        this.folder = folder;
        html = new SheetHtml(book);
        pdf = new SheetPdf(book, html);
        page = Files.newBufferedWriter(folder.path().resolve(HTML), StandardCharsets.UTF_8);
        closeout = new CsvWriter<>(folder.path().resolve(MARKER), FieldworkColumns.CLOSEOUT);
        page.write("<!DOCTYPE html>\n");
        page.write(html.head());
    }

    /**
     * Takes a folder.
     *
     * @throws OutputException if it exists and may not be replaced, or cannot be written
     */
    public static SheetWriter begin(Path target, boolean overwrite, SheetBook book) {
        OutputFolder folder = OutputFolder.create(target, overwrite, MARKER);
        try {
            return new SheetWriter(target, folder, book);
        } catch (IOException failure) {
            folder.close();
            throw OutputException.of(target, failure);
        } catch (RuntimeException failure) {
            folder.close();
            throw failure;
        }
    }

    /** Adds the pages of a section. */
    public void add(SheetSection section) {
        String pages = html.section(section);
        try {
            page.write(pages);
            pdf.add(pages, section.pages().size());
        } catch (IOException failure) {
            throw OutputException.of(target, failure);
        }
        section.pages().stream().flatMap(each -> each.rows().stream()).forEach(this::write);
    }

    private void write(CloseoutRow row) {
        closeout.write(row);
        blanks++;
    }

    /** Puts everything in its place and returns the files. */
    public List<Path> finish() {
        try {
            page.write(SheetHtml.foot());
            page.close();
            closeCloseout();
            try (OutputStream out =
                    new BufferedOutputStream(Files.newOutputStream(folder.path().resolve(PDF)))) {
                pdf.save(out);
            }
        } catch (IOException failure) {
            throw OutputException.of(target, failure);
        }
        folder.commit();
        return List.of(target.resolve(PDF), target.resolve(HTML), target.resolve(MARKER));
    }

    private void closeCloseout() {
        if (!closed) {
            closed = true;
            closeout.close();
        }
    }

    /** Returns how many pages there are so far. */
    public int pages() {
        return pdf.pages();
    }

    /** Returns how many blanks they have. */
    public long blanks() {
        return blanks;
    }

    @Override
    public void close() {
        try (folder;
                page;
                pdf) {
            closeCloseout();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }
}

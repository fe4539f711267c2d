package org.spanroom.output.sheet;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.StringReader;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * Makes one PDF of sections, one after another, so that the memory holds the layout of one only. The same pages give the same bytes: its times
 * are those of the run.
 */
final class SheetPdf implements AutoCloseable {
    private static final String FAMILY = "Liberation Sans";
    private static final int BOLD_WEIGHT = 700;
    private static final int REGULAR_WEIGHT = 400;

    private final SheetBook book;
    private final SheetHtml html;
    private final PDDocument document = new PDDocument(IOUtils.createTempFileOnlyStreamCache());
    private final PDFont regular;
    private final PDFont bold;

    SheetPdf(SheetBook book, SheetHtml html) throws IOException {
        XRLog.setLoggingEnabled(false);
        this.book = book;
        this.html = html;
        regular = load(SheetFont.REGULAR);
        bold = load(SheetFont.BOLD);
    }

    private PDFont load(SheetFont font) throws IOException {
        try (InputStream file = font.open()) {
            TrueTypeFont parsed = new TTFParser().parse(new RandomAccessReadBuffer(file));
            // Ligatures would take most of the time, and words with them are not found by a search.
            parsed.setEnableGsub(false);
            return PDType0Font.load(document, parsed, true);
        }
    }

    /**
     * Adds the pages of a section.
     *
     * @param pages as XHTML
     * @param count how many there are
     */
    void add(String pages, int count) throws IOException {
        int before = document.getNumberOfPages();
        var builder = new PdfRendererBuilder();
        builder.usePDDocument(document);
        builder.useFont(new PDFontSupplier(regular), FAMILY, REGULAR_WEIGHT, FontStyle.NORMAL, true);
        builder.useFont(new PDFontSupplier(bold), FAMILY, BOLD_WEIGHT, FontStyle.NORMAL, true);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.useUriResolver((base, uri) -> null);
        builder.withW3cDocument(parse(html.head() + pages + SheetHtml.foot()), null);
        try (var renderer = builder.buildPdfRenderer()) {
            renderer.layout();
            renderer.createPDFWithoutClosing();
        }
        int added = document.getNumberOfPages() - before;
        if (added != count) {
            throw new IllegalStateException("a page does not fit its paper: " + added + " for " + count);
        }
    }

    /** Reads XHTML with nothing from outside: no document type, so no entity. */
    private static Document parse(String xhtml) throws IOException {
        try {
            var factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xhtml)));
        } catch (ParserConfigurationException | SAXException failure) {
            throw new IllegalStateException("a page is no XHTML", failure);
        }
    }

    void save(OutputStream out) throws IOException {
        Calendar time = GregorianCalendar.from(book.startedAt().atZone(ZoneOffset.UTC));
        var about = new PDDocumentInformation();
        about.setTitle("Sheets of run " + book.runCode());
        about.setCreator("Spanroom " + book.version());
        about.setCreationDate(time);
        about.setModificationDate(time);
        document.setDocumentInformation(about);
        document.setDocumentId(book.startedAt().toEpochMilli());
        document.save(out);
    }

    int pages() {
        return document.getNumberOfPages();
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}

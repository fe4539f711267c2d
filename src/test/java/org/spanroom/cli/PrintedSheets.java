package org.spanroom.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.zxing.Binarizer;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** The three files of sheets, taken apart by general libraries. */
final class PrintedSheets {
    private static final CSVFormat CSV =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

    private final Path folder;

    PrintedSheets(Path folder) {
        this.folder = folder;
    }

    Path pdf() {
        return folder.resolve("sheets.pdf");
    }

    String html() throws IOException {
        return Files.readString(folder.resolve("sheets.html"));
    }

    List<CSVRecord> closeout() throws IOException {
        try (var parser = CSV.parse(Files.newBufferedReader(folder.resolve("closeout.csv")))) {
            return parser.getRecords();
        }
    }

    /** Returns the elements of the pages, as an XML parser finds them. */
    List<Element> htmlPages() throws IOException {
        String page = html();
        assertEquals("<!DOCTYPE html>\n", page.substring(0, 16));
        try {
            var factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            Document document =
                    factory.newDocumentBuilder().parse(new InputSource(new StringReader(page.substring(16))));
            return withClass(document.getDocumentElement(), "div", "page");
        } catch (ParserConfigurationException | SAXException failure) {
            throw new IllegalStateException(failure);
        }
    }

    static List<Element> withClass(Element within, String tag, String word) {
        NodeList all = within.getElementsByTagName(tag);
        return IntStream.range(0, all.getLength())
                .mapToObj(place -> (Element) all.item(place))
                .filter(element ->
                        List.of(element.getAttribute("class").split(" ", -1)).contains(word))
                .toList();
    }

    /** Returns the text of each page of the PDF. */
    List<String> pdfTexts() throws IOException {
        var texts = new ArrayList<String>();
        try (PDDocument document = Loader.loadPDF(pdf().toFile())) {
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                var stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                stripper.setSortByPosition(true);
                texts.add(stripper.getText(document));
            }
        }
        return texts;
    }

    /**
     * A line of letters on a page.
     *
     * @param baselinePt from the top of the page
     */
    record Placed(String text, double baselinePt, double leftPt, double rightPt, double sizePt) {}

    /** Returns what is written on a page, with places. */
    static List<Placed> placed(PDDocument document, int page) throws IOException {
        var found = new ArrayList<Placed>();
        var stripper = new PDFTextStripper() {
            @Override
            protected void writeString(String text, List<TextPosition> positions) {
                TextPosition first = positions.get(0);
                TextPosition last = positions.get(positions.size() - 1);
                found.add(new Placed(
                        text,
                        first.getYDirAdj(),
                        first.getXDirAdj(),
                        last.getXDirAdj() + last.getWidthDirAdj(),
                        first.getFontSizeInPt()));
            }
        };
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        stripper.getText(document);
        return found;
    }

    /** Returns what a camera reads of each page at this many dots to the inch, in gray. */
    List<String> codes(int dotsPerInch) throws IOException {
        var codes = new ArrayList<String>();
        try (PDDocument document = Loader.loadPDF(pdf().toFile())) {
            var renderer = new PDFRenderer(document);
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                BufferedImage whole = renderer.renderImageWithDPI(page, dotsPerInch, ImageType.GRAY);
                // As one holds a telephone: over the corner with the code. Circles elsewhere on a page may look like
                // its marks.
                int left = 2 * whole.getWidth() / 3;
                codes.add(decode(whole.getSubimage(left, 0, whole.getWidth() - left, whole.getHeight() / 4)));
            }
        }
        return codes;
    }

    private static String decode(BufferedImage image) {
        int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        var source = new RGBLuminanceSource(image.getWidth(), image.getHeight(), pixels);
        for (Binarizer binarizer : List.of(new HybridBinarizer(source), new GlobalHistogramBinarizer(source))) {
            try {
                return new QRCodeReader()
                        .decode(new BinaryBitmap(binarizer), Map.of(DecodeHintType.TRY_HARDER, Boolean.TRUE))
                        .getText();
            } catch (ReaderException unread) {
                // The other way of telling dark from light may do.
            }
        }
        return "";
    }

    /** Returns how often each word occurs. */
    static Map<String, Integer> words(String text) {
        var words = new TreeMap<String, Integer>();
        for (String word : text.replaceAll("[\\p{Z}\\s]+", " ").strip().split(" ", -1)) {
            words.merge(word, 1, Integer::sum);
        }
        return words;
    }
}

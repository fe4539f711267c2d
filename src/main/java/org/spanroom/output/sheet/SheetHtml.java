package org.spanroom.output.sheet;

import com.github.mustachejava.DefaultMustacheFactory;
import com.github.mustachejava.Mustache;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Writes pages as XHTML, with every value escaped. One file of it is what a browser prints; parts of it are what the PDF is made from, so that
 * both have the same content. It has no script, and its policy lets it load nothing.
 */
final class SheetHtml {
    private static final String FOLDER = "org/spanroom/output/sheet/";

    private final SheetBook book;
    private final Mustache page = new DefaultMustacheFactory(FOLDER).compile("page.mustache");
    private final Mustache head = new DefaultMustacheFactory(FOLDER).compile("head.mustache");
    private final String styles = text("sheet.css");

    SheetHtml(SheetBook book) {
        this.book = book;
    }

    /** Returns what comes before the pages. */
    String head() {
        Map<String, Object> model = new LinkedHashMap<>();
        model.put("title", "Sheets of run " + book.runCode());
        model.put("styles", styles);
        model.put("paper", book.paper().key());
        model.put(
                "size",
                String.format(
                        Locale.ROOT,
                        "%.1fmm %.1fmm",
                        book.paper().widthMm(),
                        book.paper().heightMm()));
        model.put("height", String.format(Locale.ROOT, "%.1fmm", PageBudget.heightMm(book.paper())));
        var out = new StringWriter();
        head.execute(out, model);
        return out.toString();
    }

    String section(SheetSection section) {
        var out = new StringWriter();
        section.pages().forEach(each -> page.execute(out, each));
        return out.toString();
    }

    /** Returns what comes after the pages. */
    static String foot() {
        return "</body>\n</html>\n";
    }

    private static String text(String name) {
        try (InputStream in = SheetHtml.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new FileNotFoundException(name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }
}

package org.spanroom.output;

import java.util.List;
import java.util.Locale;

/** Writes one SVG drawing, element by element; user units are pixels, and text is escaped. */
final class Svg {
    private final StringBuilder text = new StringBuilder();

    Svg(double widthPx, double heightPx, String title) {
        line(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%s\" height=\"%s\" viewBox=\"0 0 %s %s\" "
                        + "font-family=\"sans-serif\" font-size=\"12\">",
                widthPx, heightPx, widthPx, heightPx);
        text.append("<title>").append(escaped(title)).append("</title>\n");
        line("<rect width=\"%s\" height=\"%s\" fill=\"#ffffff\"/>", widthPx, heightPx);
    }

    void stroke(double x1, double y1, double x2, double y2, Pen pen) {
        line("<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" " + pen.attributes() + "/>", x1, y1, x2, y2);
    }

    /** Draws a line through x0, y0, x1, y1, ... . */
    void path(List<double[]> points, Pen pen) {
        text.append("<polyline fill=\"none\" points=\"");
        for (double[] point : points) {
            text.append(number(point[0])).append(',').append(number(point[1])).append(' ');
        }
        text.append("\" ").append(pen.attributes()).append("/>\n");
    }

    void circle(double x, double y, double radiusPx, String fill, Pen pen) {
        line("<circle cx=\"%s\" cy=\"%s\" r=\"%s\" fill=\"" + fill + "\" " + pen.attributes() + "/>", x, y, radiusPx);
    }

    /** Writes a line of text that begins, is centred, or ends at the point: anchor start, middle or end. */
    void label(double x, double y, String anchor, int sizePx, String words) {
        line("<text x=\"%s\" y=\"%s\" text-anchor=\"" + anchor + "\" font-size=\"" + sizePx + "\">", x, y);
        text.setLength(text.length() - 1);
        text.append(escaped(words)).append("</text>\n");
    }

    String finish() {
        return text + "</svg>\n";
    }

    /** How a line is drawn. Widths and dashes differ too, so that a print in grey reads as well. */
    record Pen(String colour, double widthPx, String dash) {
        static final Pen NONE = new Pen("none", 0, "");
        static final Pen THIN = new Pen("#b8b8b8", 0.7, "");
        static final Pen AXIS = new Pen("#404040", 1, "");

        String attributes() {
            String dashes = dash.isEmpty() ? "" : " stroke-dasharray=\"" + dash + "\"";
            return "stroke=\"" + colour + "\" stroke-width=\"" + number(widthPx) + "\"" + dashes;
        }
    }

    static String escaped(String words) {
        var safe = new StringBuilder(words.length());
        words.codePoints().forEach(point -> {
            switch (point) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> safe.appendCodePoint(isXml(point) ? point : 0xFFFD);
            }
        });
        return safe.toString();
    }

    /** The characters that XML 1.0 (W3C, section 2.2) allows. */
    private static boolean isXml(int point) {
        return point == 0x9
                || point == 0xA
                || point == 0xD
                || (point >= 0x20 && point <= 0xD7FF)
                || (point >= 0xE000 && point <= 0xFFFD)
                || point >= 0x10000;
    }

    private void line(String format, double... numbers) {
        Object[] words = new Object[numbers.length];
        for (int i = 0; i < numbers.length; i++) {
            words[i] = number(numbers[i]);
        }
        text.append(String.format(Locale.ROOT, format, words)).append('\n');
    }

    private static String number(double value) {
        String fixed = String.format(Locale.ROOT, "%.2f", value);
        return fixed.endsWith(".00") ? fixed.substring(0, fixed.length() - 3) : fixed;
    }
}

package org.spanroom.output.explain;

import java.util.List;
import java.util.Locale;

/** Writes one SVG drawing, element by element; user units are pixels, and text is escaped. */
public final class Svg {
    /** Widths of characters over the size of the letters, wide enough for common sans-serif faces. */
    private static final double WIDE_RATIO = 1;

    private static final double CAPITAL_RATIO = 0.72;
    private static final double DIGIT_RATIO = 0.64;
    private static final double NARROW_RATIO = 0.41;
    private static final double USUAL_RATIO = 0.61;

    private final StringBuilder text = new StringBuilder();
    private final Shared shared;

    public Svg(double widthPx, double heightPx, String title) {
        shared = Shared.NOTHING;
        line(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%s\" height=\"%s\" viewBox=\"0 0 %s %s\" "
                        + "font-family=\"sans-serif\" font-size=\"12\" stroke-linejoin=\"round\">",
                widthPx, heightPx, widthPx, heightPx);
        text.append("<title>").append(escaped(title)).append("</title>\n");
        line("<rect width=\"%s\" height=\"%s\" fill=\"#ffffff\"/>", widthPx, heightPx);
    }

    /** Begins a square drawing of few bytes: whole pixels, and what most elements share is said once. It takes the size of its place. */
    public Svg(double sizePx, String title, Shared shared) {
        this.shared = shared;
        line(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %s %s\" font-family=\"sans-serif\" "
                        + "text-anchor=\"middle\" font-size=\"" + shared.sizePx() + "\" " + attributes(shared.pen())
                        + ">",
                sizePx,
                sizePx);
        text.append("<title>").append(escaped(title)).append("</title>\n");
        line("<rect width=\"%s\" height=\"%s\" fill=\"#ffffff\" stroke=\"none\"/>", sizePx, sizePx);
    }

    /**
     * What the root of a drawing says for all elements, which then leave it out.
     *
     * @param pen the lines of most elements
     * @param sizePx the size of most labels, which are centered
     * @param decimals of all places
     */
    public record Shared(Pen pen, int sizePx, int decimals) {
        static final Shared NOTHING = new Shared(Pen.NONE, 0, 2);

        boolean isNothing() {
            return equals(NOTHING);
        }
    }

    public void stroke(double x1, double y1, double x2, double y2, Pen pen) {
        line("<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"" + drawn(pen) + "/>", x1, y1, x2, y2);
    }

    /** Draws a line through points of x and y. */
    public void path(List<double[]> points, Pen pen) {
        text.append("<polyline fill=\"none\" points=\"").append(listed(points)).append('"');
        text.append(drawn(pen)).append("/>\n");
    }

    /** Fills the area within points of x and y. */
    public void area(List<double[]> points, String fill) {
        text.append("<polygon points=\"").append(listed(points)).append("\" fill=\"");
        text.append(fill).append("\"/>\n");
    }

    public void circle(double x, double y, double radiusPx, String fill, Pen pen) {
        line("<circle cx=\"%s\" cy=\"%s\" r=\"%s\" fill=\"" + fill + "\"" + drawn(pen) + "/>", x, y, radiusPx);
    }

    /** Writes a line of text that begins, is centered, or ends at the point: anchor start, middle or end. */
    public void label(double x, double y, String anchor, int sizePx, String words) {
        boolean isShared = anchor.equals("middle") && sizePx == shared.sizePx();
        String placed = isShared ? "" : " text-anchor=\"" + anchor + "\" font-size=\"" + sizePx + "\"";
        line("<text x=\"%s\" y=\"%s\"" + placed + (shared.isNothing() ? "" : " stroke=\"none\"") + ">", x, y);
        text.setLength(text.length() - 1);
        text.append(escaped(words)).append("</text>\n");
    }

    /** Puts another finished drawing in, its upper left corner at the point. */
    public void inset(double x, double y, String drawing) {
        text.append("<svg x=\"")
                .append(number(x))
                .append("\" y=\"")
                .append(number(y))
                .append('"');
        text.append(drawing, "<svg".length(), drawing.length());
    }

    public String finish() {
        return text + "</svg>\n";
    }

    /** How a line is drawn. Widths and dashes differ too, so that a print in gray reads as well. */
    public record Pen(String color, double widthPx, String dash) {
        public static final Pen NONE = new Pen("none", 0, "");
        public static final Pen THIN = new Pen("#c8c8c8", 0.7, "");
        public static final Pen AXIS = new Pen("#404040", 1, "");
    }

    private static String attributes(Pen pen) {
        return "stroke=\"" + pen.color() + "\" " + widthAndDash(pen);
    }

    private static String widthAndDash(Pen pen) {
        String dashes = pen.dash().isEmpty() ? "" : " stroke-dasharray=\"" + pen.dash() + "\"";
        return "stroke-width=\"" + number(pen.widthPx(), 2) + "\"" + dashes;
    }

    /** Returns the attributes of a line after a blank; none where the drawing has them for all elements. */
    private String drawn(Pen pen) {
        if (shared.isNothing() || !pen.color().equals(shared.pen().color())) {
            return " " + attributes(pen);
        }
        return pen.equals(shared.pen()) ? "" : " " + widthAndDash(pen);
    }

    /** Returns how wide words are likely to be drawn: an estimate, since fonts differ; full-width characters count double. */
    public static double widthPx(String words, int sizePx) {
        return words.codePoints().mapToDouble(Svg::widthRatio).sum() * sizePx;
    }

    private static double widthRatio(int point) {
        if (point >= 0x1100 || "mwMW@%".indexOf(point) >= 0) {
            return WIDE_RATIO;
        }
        if ("ijltfr ,.;:'|!()[]-".indexOf(point) >= 0) {
            return NARROW_RATIO;
        }
        if (Character.isDigit(point)) {
            return DIGIT_RATIO;
        }
        return Character.isUpperCase(point) ? CAPITAL_RATIO : USUAL_RATIO;
    }

    /** Returns the words, cut and marked as such if they would be wider. */
    public static String fitted(String words, int sizePx, double roomPx) {
        if (widthPx(words, sizePx) <= roomPx) {
            return words;
        }
        int end = words.length();
        while (end > 0 && widthPx(words.substring(0, end), sizePx) > roomPx - sizePx) {
            end = words.offsetByCodePoints(end, -1);
        }
        return words.substring(0, end) + "\u2026";
    }

    public static String escaped(String words) {
        var safe = new StringBuilder(words.length());
        words.codePoints().forEach(point -> {
            switch (point) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> safe.appendCodePoint(isShown(point) ? point : 0xFFFD);
            }
        });
        return safe.toString();
    }

    /** The characters that XML 1.0 (W3C, section 2.2) allows, less those that are not seen but act. */
    private static boolean isShown(int point) {
        boolean xml = (point >= 0x20 && point <= 0xD7FF) || (point >= 0xE000 && point <= 0xFFFD) || point >= 0x10000;
        int type = Character.getType(point);
        return xml && type != Character.CONTROL && type != Character.FORMAT;
    }

    private String listed(List<double[]> points) {
        var list = new StringBuilder();
        for (double[] point : points) {
            list.append(list.isEmpty() ? "" : " ")
                    .append(number(point[0]))
                    .append(',')
                    .append(number(point[1]));
        }
        return list.toString();
    }

    private void line(String format, double... numbers) {
        Object[] words = new Object[numbers.length];
        for (int i = 0; i < numbers.length; i++) {
            words[i] = number(numbers[i]);
        }
        text.append(String.format(Locale.ROOT, format, words)).append('\n');
    }

    private String number(double value) {
        return number(value, shared.decimals());
    }

    private static String number(double value, int decimals) {
        String fixed = String.format(Locale.ROOT, "%." + decimals + "f", value);
        String plain = fixed.endsWith(".00") ? fixed.substring(0, fixed.length() - 3) : fixed;
        return plain.equals("-0") ? "0" : plain;
    }
}

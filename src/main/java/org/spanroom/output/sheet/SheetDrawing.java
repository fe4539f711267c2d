package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A drawing with its words beside it: those are text of the page, so that they have its fonts and can be selected and read aloud.
 *
 * @param svg without words, of the size that its style gives
 */
public record SheetDrawing(double widthMm, double heightMm, String svg, List<Label> labels) {
    private static final Pattern TEXT =
            Pattern.compile("<text x=\"([-.0-9]+)\" y=\"([-.0-9]+)\"([^>]*)>([^<]*)</text>\\R?");
    private static final Pattern ANCHOR = Pattern.compile("text-anchor=\"(\\w+)\"");
    private static final Pattern TITLE = Pattern.compile("<title>[^<]*</title>\\R?");
    private static final Pattern ROOT_SIZE = Pattern.compile("^<svg([^>]*?) width=\"[^\"]*\" height=\"[^\"]*\"");
    private static final Pattern VIEW = Pattern.compile("viewBox=\"0 0 ([.0-9]+) ([.0-9]+)\"");

    /** Half of the room that a centered word has. */
    private static final double HALF_ROOM_MM = 40;

    /** From the top of a line to where its letters stand, at 9 pt in lines of 11 pt. */
    private static final double BASELINE_MM = 3.04;

    public SheetDrawing {
        labels = List.copyOf(labels);
    }

    /**
     * Words in a drawing.
     *
     * @param leftMm left edge of their room
     * @param topMm top of their line
     * @param align start, middle or end
     */
    public record Label(double leftMm, double topMm, double widthMm, String align, String words) {
        /** Returns the place as a style. */
        public String place() {
            return String.format(Locale.ROOT, "left:%.2fmm;top:%.2fmm;width:%.2fmm", leftMm, topMm, widthMm);
        }
    }

    /**
     * Takes the words out of a drawing.
     *
     * @param drawn SVG with a view box that begins at 0, its words in elements of their own
     */
    static SheetDrawing of(String drawn, double widthMm) {
        Matcher view = VIEW.matcher(drawn);
        if (!view.find()) {
            throw new IllegalArgumentException("a drawing needs a view box");
        }
        double mmPerPx = widthMm / Double.parseDouble(view.group(1));
        double heightMm = mmPerPx * Double.parseDouble(view.group(2));
        var labels = new ArrayList<Label>();
        Matcher text = TEXT.matcher(drawn);
        while (text.find()) {
            Matcher anchor = ANCHOR.matcher(text.group(3));
            labels.add(label(
                    Double.parseDouble(text.group(1)) * mmPerPx,
                    Double.parseDouble(text.group(2)) * mmPerPx,
                    anchor.find() ? anchor.group(1) : "middle",
                    plain(text.group(4))));
        }
        String bare = TITLE.matcher(TEXT.matcher(drawn).replaceAll("")).replaceAll("");
        return new SheetDrawing(
                widthMm, heightMm, sized(ROOT_SIZE.matcher(bare).replaceFirst("<svg$1"), widthMm, heightMm), labels);
    }

    private static String sized(String svg, double widthMm, double heightMm) {
        return String.format(Locale.ROOT, "<svg style=\"width:%.2fmm;height:%.2fmm\"", widthMm, heightMm)
                + svg.substring("<svg".length());
    }

    private static Label label(double xMm, double yMm, String anchor, String words) {
        double leftMm = switch (anchor) {
            case "start" -> xMm;
            case "end" -> xMm - 2 * HALF_ROOM_MM;
            default -> xMm - HALF_ROOM_MM;
        };
        return new Label(leftMm, yMm - BASELINE_MM, 2 * HALF_ROOM_MM, anchor, words);
    }

    /** Drawings escape what they write; the page does so again. */
    private static String plain(String escaped) {
        return escaped.replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&amp;", "&");
    }

    /** Returns the size as a style. */
    public String size() {
        return String.format(Locale.ROOT, "width:%.2fmm;height:%.2fmm", widthMm, heightMm);
    }
}

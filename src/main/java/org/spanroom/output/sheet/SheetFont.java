package org.spanroom.output.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** The two fonts of the sheets, and how wide words are in them. */
@SuppressWarnings("ImmutableEnumChecker") // The map holds what was read of the font, which does not change.
enum SheetFont {
    REGULAR("LiberationSans-Regular.ttf"),
    BOLD("LiberationSans-Bold.ttf");

    private static final String FOLDER = "/liberation/";
    private static final double MM_PER_PT = 25.4 / 72;
    private static final String CUT = "\u2026";

    private final String file;
    private final Map<Integer, Double> emByPoint = new ConcurrentHashMap<>();

    SheetFont(String file) {
        this.file = file;
    }

    /** Holds what is read only once it is needed. */
    private static final class Measures {
        static final Map<SheetFont, TrueTypeFont> FONTS = Map.of(REGULAR, REGULAR.parse(), BOLD, BOLD.parse());
    }

    InputStream open() {
        InputStream stream = SheetFont.class.getResourceAsStream(FOLDER + file);
        if (stream == null) {
            throw new IllegalStateException("the font " + file + " is missing");
        }
        return stream;
    }

    private TrueTypeFont parse() {
        try (InputStream stream = open()) {
            return new TTFParser().parse(new RandomAccessReadBuffer(stream));
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    /** Returns how wide words are. */
    double widthMm(String words, double sizePt) {
        return words.codePoints().mapToDouble(this::widthEm).sum() * sizePt * MM_PER_PT;
    }

    private double widthEm(int point) {
        return emByPoint.computeIfAbsent(point, this::readEm);
    }

    private synchronized double readEm(int point) {
        try {
            TrueTypeFont font = Objects.requireNonNull(Measures.FONTS.get(this));
            CmapLookup glyphs = font.getUnicodeCmapLookup();
            int glyph = glyphs.getGlyphId(point);
            // A browser takes a glyph that is missing from another font; none is wider than its size.
            return glyph == 0 ? 1 : (double) font.getAdvanceWidth(glyph) / font.getUnitsPerEm();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    /** Returns how many lines words take in a column, broken at blanks. */
    int lines(String words, double sizePt, double columnMm) {
        double blankMm = widthMm(" ", sizePt);
        int lines = 1;
        double usedMm = 0;
        for (String word : words.split(" ", -1)) {
            double wordMm = widthMm(word, sizePt);
            if (usedMm > 0 && usedMm + blankMm + wordMm > columnMm) {
                lines++;
                usedMm = wordMm;
            } else {
                usedMm += (usedMm > 0 ? blankMm : 0) + wordMm;
            }
        }
        return lines;
    }

    /** Returns the words, cut and marked as such if they are wider than the room. */
    String fitted(String words, double sizePt, double roomMm) {
        if (widthMm(words, sizePt) <= roomMm) {
            return words;
        }
        int end = 0;
        double leftMm = roomMm - widthMm(CUT, sizePt);
        while (end < words.length()) {
            int point = words.codePointAt(end);
            leftMm -= widthEm(point) * sizePt * MM_PER_PT;
            if (leftMm < 0) {
                break;
            }
            end += Character.charCount(point);
        }
        return words.substring(0, end) + CUT;
    }
}

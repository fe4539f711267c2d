package org.spanroom.output.style;

/**
 * One class of a legend.
 *
 * @param key name for programs, of lower-case letters, digits and {@code _}
 * @param label words of the legend
 * @param lightHex color on a light page, as {@code #rrggbb}
 * @param darkHex color on a dark page
 * @param widthMm width of a line on the page
 */
public record PaletteClass(String key, String label, String lightHex, String darkHex, double widthMm) {
    /** Returns the color on a page. */
    public String hex(Background page) {
        return page == Background.LIGHT ? lightHex : darkHex;
    }
}

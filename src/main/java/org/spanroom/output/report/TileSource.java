package org.spanroom.output.report;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.regex.Pattern;

/**
 * Where map tiles come from, as the user gave it: an address with {z}, {x} and {y} in it.
 *
 * @param template the address
 * @param origin its beginning, which the page's policy allows images from
 */
public record TileSource(String template, String origin) {
    private static final Pattern ORIGIN = Pattern.compile("https?://[A-Za-z0-9.-]+(:\\d{1,5})?");

    /**
     * Reads an address.
     *
     * @throws IllegalArgumentException if it is not one of tiles
     */
    public static TileSource of(String template) {
        for (String part : new String[] {"{z}", "{x}", "{y}"}) {
            if (!template.contains(part)) {
                throw new IllegalArgumentException("the address of tiles must have {z}, {x} and {y} in it");
            }
        }
        String origin = origin(template.replace("{z}", "0").replace("{x}", "0").replace("{y}", "0"));
        if (!ORIGIN.matcher(origin).matches()) {
            throw new IllegalArgumentException(
                    "the address of tiles must begin with http:// or https:// and a host, without wildcards");
        }
        return new TileSource(template, origin);
    }

    private static String origin(String address) {
        try {
            URI uri = new URI(address);
            return uri.getScheme() + "://" + uri.getRawAuthority();
        } catch (URISyntaxException notAnAddress) {
            throw new IllegalArgumentException("the address of tiles cannot be read: " + notAnAddress.getReason());
        }
    }
}

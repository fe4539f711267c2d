package org.spanroom.sample;

import java.util.List;
import java.util.Locale;

/**
 * Gives the streets of a district their names and hands their center lines on: a backdrop to find one's way by. Draws nothing by chance, so
 * that names change nothing of the city. Lines that only ducts follow, loops and those under other streets, are no streets.
 */
final class StreetNamer {
    /** The first district begins with the first word, the next ones farther on. */
    private static final int WORDS_APART = 11;

    private static final List<String> WORDS = List.of(
            "Lantern",
            "Tallow",
            "Cooper",
            "Gull",
            "Kelp",
            "Ropewalk",
            "Saltpan",
            "Fiddler",
            "Netmender",
            "Driftwood",
            "Oakum",
            "Ballast",
            "Heron",
            "Cockle",
            "Bellbuoy",
            "Sailcloth",
            "Tarpot",
            "Windlass",
            "Cormorant",
            "Pilot",
            "Samphire",
            "Chandler",
            "Tern",
            "Lobsterpot",
            "Capstan",
            "Foghorn",
            "Marram",
            "Caulker",
            "Plover",
            "Anchorsmith",
            "Seaholly",
            "Barrel",
            "Curlew",
            "Lugger",
            "Pebble",
            "Halyard",
            "Limpet",
            "Mainsail",
            "Eelgrass",
            "Whistle",
            "Dory",
            "Sandpiper",
            "Treenail");

    /** Put before the words when they come round again within a district. */
    private static final List<String> AGAIN = List.of("", "Upper ", "Lower ", "Little ", "Far ");

    /** Districts beyond these have their number behind the name. */
    private static final int UNNUMBERED_DISTRICTS = 4;

    private final District district;
    private int named;

    StreetNamer(District district) {
        this.district = district;
    }

    /** Hands the streets of the district and its links to others on. */
    void record(List<Street> streets, List<Street> links, CitySink sink) {
        for (Street street : streets) {
            if (street.rank() == Street.Rank.MAIN || street.rank() == Street.Rank.SIDE) {
                DrawnLine axis = axis(street);
                sink.street(new StreetFeature(name(what(axis)), rank(street), axis));
            }
        }
        for (Street link : links) {
            sink.street(new StreetFeature(name("Causeway"), rank(link), axis(link)));
        }
    }

    private String name(String what) {
        int place = WORDS_APART * (district.number() - 1) + named;
        String again = AGAIN.get(Math.min(AGAIN.size() - 1, named / WORDS.size()));
        named++;
        String where = district.number() > UNNUMBERED_DISTRICTS ? ", ward " + district.number() : "";
        return again + WORDS.get(place % WORDS.size()) + " " + what + where;
    }

    private static String rank(Street street) {
        return street.rank().name().toLowerCase(Locale.ROOT);
    }

    /** Each kind of district has words of its own for what runs east and what runs north; what comes back to its beginning is a ring. */
    private String what(DrawnLine axis) {
        int last = axis.size() - 1;
        double east = Math.abs(axis.x(last) - axis.x(0));
        double north = Math.abs(axis.y(last) - axis.y(0));
        if (east + north < 1) {
            return "Ring";
        }
        boolean isEast = east > north;
        return switch (district.kind()) {
            case OLD_QUARTER -> isEast ? "Street" : "Lane";
            case HARBOR -> isEast ? "Road" : "Row";
            case RINGS -> isEast ? "Avenue" : "Walk";
            case HILLSIDE -> isEast ? "Terrace" : "Rise";
        };
    }

    /** Returns the line along the middle of a street. Bends that only its ducts have, it does not. */
    private static DrawnLine axis(Street street) {
        DrawnLine axis = middle(street.legs().get(0));
        for (Leg leg : street.legs().subList(1, street.legs().size())) {
            axis = axis.joined(middle(leg), false);
        }
        return axis;
    }

    private static DrawnLine middle(Leg leg) {
        return leg.course().hasCorners()
                ? DrawnLine.of(new double[] {
                    leg.from().x(), leg.from().y(), leg.to().x(), leg.to().y()
                })
                : leg.trace();
    }
}

package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Draws the permit zones of one district: strips along streets, over railways and water, and areas, some with holes.
 *
 * <p>The first four districts have every kind between them; of the others every second has one, so that there are about
 * two thousand to a million routes.
 */
final class ZonePlanner {
    private static final int PURPOSE = 11;
    private static final int VERTICES = 16;
    private static final int MOST_LEGS = 4;
    private static final int ATTEMPTS = 24;
    private static final double FRONTAGE_M = 60;

    /** What kinds the first districts have. */
    private static final List<List<Kind>> FIRST = List.of(
            List.of(Kind.HERITAGE, Kind.CUT_BAN, Kind.NIGHT, Kind.EVENT, Kind.SCHOOL, Kind.WORKS),
            List.of(Kind.WATER, Kind.RAIL, Kind.ENVIRONMENT, Kind.CUT_BAN, Kind.WORKS, Kind.CUT_BAN_BESIDE),
            List.of(Kind.CUT_BAN, Kind.SPOILT, Kind.EVENT, Kind.RAIL, Kind.WORKS),
            List.of(Kind.ENVIRONMENT, Kind.SCHOOL, Kind.CUT_BAN, Kind.UNEXPLAINED));

    private static final List<Kind> ALL = List.of(
            Kind.CUT_BAN,
            Kind.HERITAGE,
            Kind.NIGHT,
            Kind.RAIL,
            Kind.WATER,
            Kind.SCHOOL,
            Kind.ENVIRONMENT,
            Kind.EVENT,
            Kind.WORKS);

    private static final List<Days> WORKS = List.of(
            new Days("2026-06-01", "2029-05-31"),
            new Days("2028-03-15", "2028-11-30"),
            new Days("2025-09-01", "2026-04-30"));

    private static final List<String> NAMES = List.of(
            "Lanternway",
            "Saltmarrow",
            "Cooperdock",
            "Fiddlebank",
            "Ropewalk Rise",
            "Gullstone",
            "Kelpgate",
            "Tallowmere");

    private final District district;
    private final StreetPlan plan;
    private final CitySink sink;
    private final Chance chance;
    private int zones;

    /** What restricts the work in a zone, with the words for it and the last word of its name. */
    private enum Kind {
        CUT_BAN("no-cut|moratorium|street cut ban", "resurfacing"),
        /** Along one side of a street, whose ducts are on its edge. */
        CUT_BAN_BESIDE("no-cut|moratorium|street cut ban", "frontage"),
        /** Planned works in a street. */
        WORKS("street works|works", "works"),
        NIGHT("night work only|night", "night works"),
        ENVIRONMENT("habitat|environmental", "reed beds"),
        HERITAGE("heritage|historic", "old walls"),
        RAIL("tram|railway", "line"),
        WATER("wetland|waterway", "creek"),
        SCHOOL("school zone|school", "school"),
        EVENT("event window|event", "fair"),
        /** A school zone whose outline crosses itself. */
        SPOILT("school", "yard"),
        /** A zone of an unexplained word. */
        UNEXPLAINED("see ordinance 12", "belt");

        private final String words;
        private final String what;

        Kind(String words, String what) {
            this.words = words;
            this.what = what;
        }
    }

    ZonePlanner(District district, StreetPlan plan, CitySink sink) {
        this.district = district;
        this.plan = plan;
        this.sink = sink;
        this.chance = district.chance(PURPOSE);
    }

    /** Hands the district's zones to the sink. */
    void plan() {
        for (Kind kind : kinds()) {
            List<DrawnLine> rings = rings(kind);
            zones++;
            String id = "Z" + district.number() + "-" + zones;
            String type = chance.pick(List.of(kind.words.split("\\|", -1)));
            String title = NAMES.get((district.number() + 3 * zones) % NAMES.size()) + " " + kind.what;
            Days days = days(kind);
            sink.zone(new ZoneFeature(id, type, title, days.first(), days.last(), rings));
            fault(kind).ifPresent(fault -> sink.fault(new KnownFault(fault, "zones", id, type)));
        }
    }

    private List<Kind> kinds() {
        int number = district.number();
        if (number <= FIRST.size()) {
            return FIRST.get(number - 1);
        }
        return number % 2 == 0 ? List.of(ALL.get(number / 2 % ALL.size())) : List.of();
    }

    private static Optional<Fault> fault(Kind kind) {
        return switch (kind) {
            case SPOILT -> Optional.of(Fault.ZONE_CROSSES_ITSELF);
            case UNEXPLAINED -> Optional.of(Fault.ZONE_OF_NO_KIND);
            default -> Optional.empty();
        };
    }

    /** First and last day of a restriction, each empty where there is none. */
    private record Days(String first, String last) {}

    /**
     * Works in one street are over, in one are going on for years, in one are yet to come; of events one has no recorded first
     * day; in the Hillside district the ban is over.
     */
    private Days days(Kind kind) {
        int month = chance.from(1, 9);
        int day = chance.from(10, 28);
        return switch (kind) {
            case CUT_BAN -> {
                int year = district.kind() == DistrictKind.HILLSIDE ? 2024 : 2030;
                yield new Days(date(year - 5, month, day), date(year, month, day));
            }
            case CUT_BAN_BESIDE -> new Days("", date(2030, month, day));
            case EVENT -> new Days(district.number() == 1 ? "" : date(2029, month, day - 9), date(2029, month, day));
            case WORKS -> WORKS.get(district.number() % WORKS.size());
            default -> new Days("", "");
        };
    }

    private static String date(int year, int month, int day) {
        return String.format(Locale.ROOT, "%d-%02d-%02d", year, month, day);
    }

    private List<DrawnLine> rings(Kind kind) {
        double awayM = chance.between(0, 160);
        double bearingRad = chance.between(0, 2 * Math.PI);
        double x = district.centerX() + awayM * StrictMath.cos(bearingRad);
        double y = district.centerY() + awayM * StrictMath.sin(bearingRad);
        return switch (kind) {
            case CUT_BAN ->
                List.of(along(chance.happens(0.5) ? Street.Rank.MAIN : Street.Rank.SIDE, middle -> strip(middle, 7)));
            case CUT_BAN_BESIDE -> List.of(along(Street.Rank.MAIN, ZonePlanner::frontage));
            case WORKS -> List.of(along(Street.Rank.MAIN, middle -> strip(middle, 8)));
            case NIGHT -> List.of(along(Street.Rank.MAIN, middle -> strip(middle, 9)));
            case RAIL -> List.of(strip(across(bearingRad, 0), 11));
            case WATER -> List.of(strip(across(bearingRad, 35), 18));
            case HERITAGE, ENVIRONMENT -> {
                double radiusM = chance.between(190, 260);
                yield List.of(round(x, y, radiusM), round(x, y, 0.3 * radiusM));
            }
            case EVENT, UNEXPLAINED -> List.of(round(x, y, chance.between(90, 170)));
            case SCHOOL -> List.of(yard(x, y, false));
            case SPOILT -> List.of(yard(x, y, true));
        };
    }

    /**
     * Returns an outline along a stretch of a street of a rank, or of a side street where those bend so sharply that it crosses
     * itself; a straight one where all do.
     */
    private DrawnLine along(Street.Rank rank, UnaryOperator<DrawnLine> outline) {
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            DrawnLine ring = outline.apply(street(attempt < ATTEMPTS / 2 ? rank : Street.Rank.SIDE));
            if (isSimple(ring)) {
                return ring;
            }
        }
        return outline.apply(across(0, 0));
    }

    private static boolean isSimple(DrawnLine ring) {
        Coordinate[] vertices = new Coordinate[ring.size()];
        for (int i = 0; i < vertices.length; i++) {
            vertices[i] = new Coordinate(ring.x(i), ring.y(i));
        }
        return new GeometryFactory().createLinearRing(vertices).isSimple();
    }

    /** Returns a stretch of a street of up to four legs without sharp turns. */
    private DrawnLine street(Street.Rank rank) {
        List<List<Leg>> stretches = plan.streets().stream()
                .filter(street -> street.rank() == rank)
                .flatMap(street -> stretches(street.legs()).stream())
                .toList();
        if (stretches.isEmpty()) {
            return across(0, 0);
        }
        List<Leg> legs = chance.pick(stretches);
        int first = chance.below(Math.max(1, legs.size() - MOST_LEGS + 1));
        DrawnLine middle = legs.get(first).trace();
        for (Leg leg : legs.subList(first + 1, Math.min(legs.size(), first + MOST_LEGS))) {
            middle = middle.joined(leg.trace(), true);
        }
        return middle;
    }

    /** Returns the legs between sharp turns, two or more at a time. */
    private static List<List<Leg>> stretches(List<Leg> legs) {
        List<List<Leg>> stretches = new ArrayList<>();
        int start = 0;
        for (int i = 0; i <= legs.size(); i++) {
            if (i == legs.size() || legs.get(i).course().hasCorners()) {
                if (i - start > 1) {
                    stretches.add(legs.subList(start, i));
                }
                start = i + 1;
            }
        }
        return stretches;
    }

    /** Returns the outline of the plots along the left side of a street, one edge of which is the street's middle. */
    private static DrawnLine frontage(DrawnLine middle) {
        int last = middle.size() - 1;
        double dx = middle.x(last) - middle.x(0);
        double dy = middle.y(last) - middle.y(0);
        double lengthM = Math.sqrt(dx * dx + dy * dy);
        double deepestM = 0;
        for (int i = 0; i <= last; i++) {
            double asideM = ((middle.y(i) - middle.y(0)) * dx - (middle.x(i) - middle.x(0)) * dy) / lengthM;
            deepestM = Math.max(deepestM, asideM);
        }
        double leftX = -dy / lengthM * (deepestM + FRONTAGE_M);
        double leftY = dx / lengthM * (deepestM + FRONTAGE_M);
        double[] xy = new double[2 * middle.size() + 4];
        for (int i = 0; i <= last; i++) {
            xy[2 * i] = middle.x(i);
            xy[2 * i + 1] = middle.y(i);
        }
        xy[2 * last + 2] = middle.x(last) + leftX;
        xy[2 * last + 3] = middle.y(last) + leftY;
        xy[2 * last + 4] = middle.x(0) + leftX;
        xy[2 * last + 5] = middle.y(0) + leftY;
        return closed(xy);
    }

    /** Returns a way across the district, straight or in waves of a height. */
    private DrawnLine across(double bearingRad, double waveM) {
        double reachM = 26 * Math.sqrt(district.targetSpans());
        double cos = StrictMath.cos(bearingRad);
        double sin = StrictMath.sin(bearingRad);
        double[] xy = new double[2 * VERTICES + 2];
        for (int i = 0; i <= VERTICES; i++) {
            double along = reachM * (2.0 * i / VERTICES - 1);
            double aside = 90 + waveM * StrictMath.sin(along / 160);
            xy[2 * i] = district.centerX() + along * cos - aside * sin;
            xy[2 * i + 1] = district.centerY() + along * sin + aside * cos;
        }
        return DrawnLine.of(xy);
    }

    private static DrawnLine strip(DrawnLine middle, double halfWidthM) {
        DrawnLine left = middle.beside(halfWidthM);
        DrawnLine right = middle.beside(-halfWidthM);
        List<Double> xy = new ArrayList<>();
        for (int i = 0; i < left.size(); i++) {
            xy.add(left.x(i));
            xy.add(left.y(i));
        }
        for (int i = right.size() - 1; i >= 0; i--) {
            xy.add(right.x(i));
            xy.add(right.y(i));
        }
        return closed(xy.stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** Returns an uneven ring round a place, every ray from which meets it once, so that it never crosses itself. */
    private DrawnLine round(double x, double y, double radiusM) {
        double[] xy = new double[2 * VERTICES];
        for (int i = 0; i < VERTICES; i++) {
            double bearingRad = 2 * Math.PI * i / VERTICES;
            double awayM = radiusM * chance.between(0.85, 1.15);
            xy[2 * i] = x + awayM * StrictMath.cos(bearingRad);
            xy[2 * i + 1] = y + awayM * StrictMath.sin(bearingRad);
        }
        return closed(xy);
    }

    /** Returns four corners round a place, in turn or crosswise. */
    private static DrawnLine yard(double x, double y, boolean crosswise) {
        double eastM = 85;
        double northM = 60;
        double[] inTurn = {x - eastM, y - northM, x + eastM, y - northM, x + eastM, y + northM, x - eastM, y + northM};
        double[] across = {x - eastM, y - northM, x + eastM, y + northM, x + eastM, y - northM, x - eastM, y + northM};
        return closed(crosswise ? across : inTurn);
    }

    private static DrawnLine closed(double[] xy) {
        double[] ring = java.util.Arrays.copyOf(xy, xy.length + 2);
        ring[xy.length] = xy[0];
        ring[xy.length + 1] = xy[1];
        return DrawnLine.of(ring);
    }
}

package org.spanroom.crs;

import java.util.Comparator;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;

/**
 * Finds the EPSG code of a system that was read from a text without one, as .prj files are.
 *
 * <p>A code is given only where nothing distinguishes the two: the same datum by its name in .prj files, the same ellipsoid and unit,
 * and the same ordinates within half a millimeter at places all over the area that the dataset gives for the code. The codes on the
 * datum are tried in the order in which their names are similar. Several may mean the same plane: one without a word on the order of its
 * axes goes before "(E-N)", and that before "(N-E)", since files hold easting first.
 */
final class SystemFinder {
    /** Beyond this many names the system is one of the owner's own. */
    private static final int MOST_TRIED = 40;

    private static final double SAME_PLACE_M = 0.0005;
    private static final double SAME_UNIT_RATIO = 1e-9;
    private static final int STEPS = 4;

    private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{N}]+|(?<=\\p{L})(?=\\p{N})");
    private static final Pattern EASTING_FIRST = Pattern.compile("\\(z?E[,-]\\s?N\\)");
    private static final Pattern NORTHING_FIRST = Pattern.compile("\\(N[,-]\\s?z?E\\)");
    private static final Map<String, OptionalInt> FOUND = new ConcurrentHashMap<>();

    private SystemFinder() {}

    static OptionalInt find(ReferenceSystem system) {
        return FOUND.computeIfAbsent(system.wkt(), wkt -> search(system));
    }

    private static OptionalInt search(ReferenceSystem system) {
        try {
            CoordinateReferenceSystem plane = Transforms.horizontal(WktReader.parse(system.wkt()));
            GeographicCRS geographic = Transforms.geographic(plane);
            Optional<Integer> datum = Datums.findCode(geographic);
            if (datum.isEmpty()) {
                return OptionalInt.empty();
            }
            return plane instanceof GeographicCRS
                    ? geographicCode(system, datum.get())
                    : projectedCode(system, plane.getName().getCode(), datum.get());
        } catch (IllegalArgumentException unknown) {
            return OptionalInt.empty();
        }
    }

    private static OptionalInt geographicCode(ReferenceSystem system, int code) {
        return isSame(system, EpsgDataset.findByCode(code)) ? OptionalInt.of(code) : OptionalInt.empty();
    }

    private static OptionalInt projectedCode(ReferenceSystem system, String name, int datumCode) {
        Set<String> words = words(name);
        Map<Integer, String> known = EpsgDataset.projectedOn(datumCode);
        var mostAlike = Comparator.<Map.Entry<Integer, String>>comparingDouble(
                        entry -> -likeness(words, words(entry.getValue())))
                .thenComparing(Map.Entry.comparingByKey());
        return known.entrySet().stream()
                .filter(entry -> likeness(words, words(entry.getValue())) > 0)
                .sorted(mostAlike)
                .limit(MOST_TRIED)
                .filter(entry -> isSame(system, entry.getKey()))
                .min(Comparator.<Map.Entry<Integer, String>>comparingInt(entry -> axisWords(entry.getValue()))
                        .thenComparing(mostAlike))
                .map(entry -> OptionalInt.of(entry.getKey()))
                .orElseGet(OptionalInt::empty);
    }

    private static int axisWords(String name) {
        return EASTING_FIRST.matcher(name).find()
                ? 1
                : NORTHING_FIRST.matcher(name).find() ? 2 : 0;
    }

    private static boolean isSame(ReferenceSystem system, int code) {
        try {
            return isSame(system, EpsgDataset.findByCode(code));
        } catch (IllegalArgumentException unusable) {
            return false;
        }
    }

    private static boolean isSame(ReferenceSystem system, ReferenceSystem known) {
        double unitM = system.unitLengthM().orElse(0);
        double knownM = known.unitLengthM().orElse(0);
        if (known.area().isEmpty() || Math.abs(unitM - knownM) > SAME_UNIT_RATIO * knownM) {
            return false;
        }
        double[] places = known.area().get().grid(STEPS);
        double[] ours = places.clone();
        double[] theirs = places.clone();
        system.fromLonLat(ours, 2);
        known.fromLonLat(theirs, 2);
        double metersPerUnit = unitM == 0 ? 111_000 : unitM;
        for (int i = 0; i < places.length; i++) {
            if (!(Math.abs(ours[i] - theirs[i]) * metersPerUnit <= SAME_PLACE_M)) {
                return false;
            }
        }
        return true;
    }

    private static Set<String> words(String name) {
        return BETWEEN_WORDS
                .splitAsStream(name.toLowerCase(Locale.ROOT))
                .filter(word -> !word.isEmpty())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Returns which share of all words of two names they have in common. */
    private static double likeness(Set<String> one, Set<String> other) {
        var all = new TreeSet<>(one);
        all.addAll(other);
        return (one.size() + other.size() - all.size()) / (double) all.size();
    }
}

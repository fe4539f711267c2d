package org.spanroom.config;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the words of the source data mean. Case and surrounding blanks do not matter.
 *
 * @param missing words that say that nothing is recorded
 * @param live words for a cable in service
 * @param dead words for a cable out of service
 * @param serviceUnknown words for a cable whose service state is unknown
 * @param flooded words for a duct with water in it
 * @param notFlooded words for a dry duct
 * @param yes words that affirm any other question
 * @param no words that deny it
 * @param squareBore shapes that mean a square bore
 * @param directBuried duct types that mean that no outer duct surrounds the innerducts
 */
public record ValueWords(
        List<String> missing,
        List<String> live,
        List<String> dead,
        List<String> serviceUnknown,
        List<String> flooded,
        List<String> notFlooded,
        List<String> yes,
        List<String> no,
        List<String> roundBore,
        List<String> squareBore,
        List<String> sound,
        List<String> oval,
        List<String> collapsed,
        List<String> blocked,
        List<String> directBuried) {
    public ValueWords {
        missing = folded(missing);
        live = folded(live);
        dead = folded(dead);
        serviceUnknown = folded(serviceUnknown);
        flooded = folded(flooded);
        notFlooded = folded(notFlooded);
        yes = folded(yes);
        no = folded(no);
        roundBore = folded(roundBore);
        squareBore = folded(squareBore);
        sound = folded(sound);
        oval = folded(oval);
        collapsed = folded(collapsed);
        blocked = folded(blocked);
        directBuried = folded(directBuried);
        demandApart(Map.of("live", live, "dead", dead, "service_unknown", serviceUnknown));
        demandApart(Map.of("flooded", flooded, "not_flooded", notFlooded));
        demandApart(Map.of("yes", yes, "no", no));
        demandApart(Map.of("round_bore", roundBore, "square_bore", squareBore));
        demandApart(Map.of("sound", sound, "oval", oval, "collapsed", collapsed, "blocked", blocked));
    }

    /** Returns the word as it is compared: without blanks around it, in lower case. */
    public static String fold(String word) {
        return word.strip().toLowerCase(Locale.ROOT);
    }

    private static List<String> folded(List<String> words) {
        return words.stream().map(ValueWords::fold).distinct().toList();
    }

    private static void demandApart(Map<String, List<String>> lists) {
        var seen = new TreeMap<String, String>();
        new TreeMap<>(lists)
                .forEach((name, words) -> words.forEach(word -> {
                    String before = seen.putIfAbsent(word, name);
                    if (before != null) {
                        throw new IllegalArgumentException(
                                "the word '" + word + "' is listed in both " + before + " and " + name);
                    }
                }));
    }
}

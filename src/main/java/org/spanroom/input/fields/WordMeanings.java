package org.spanroom.input.fields;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.spanroom.config.ValueWords;
import org.spanroom.model.Answer;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Service;

/** What the words of the source data mean, by term; and what our own words for assumed values mean. */
record WordMeanings(
        Map<String, Service> service,
        Map<String, Boolean> flooded,
        Map<String, Answer> answer,
        Map<String, BoreShape> shape,
        Map<String, Condition> condition,
        List<String> directBuried) {
    static final Map<String, Service> OUR_SERVICE =
            Map.of("live", Service.LIVE, "dead", Service.DEAD, "unknown", Service.UNKNOWN);
    static final Map<String, Boolean> OUR_FLOODED = Map.of("yes", true, "no", false);
    static final Map<String, Answer> OUR_ANSWER = Map.of("yes", Answer.YES, "no", Answer.NO);
    static final Map<String, BoreShape> OUR_SHAPE = Map.of("round", BoreShape.ROUND, "square", BoreShape.SQUARE);
    static final Map<String, Condition> OUR_CONDITION = Map.of(
            "sound", Condition.SOUND,
            "oval", Condition.OVAL,
            "collapsed", Condition.COLLAPSED,
            "blocked", Condition.BLOCKED,
            "unknown", Condition.UNKNOWN);

    static WordMeanings of(ValueWords words) {
        return new WordMeanings(
                meanings(Map.of(
                        Service.LIVE,
                        words.live(),
                        Service.DEAD,
                        words.dead(),
                        Service.UNKNOWN,
                        words.serviceUnknown())),
                meanings(Map.of(true, words.flooded(), false, words.notFlooded())),
                meanings(Map.of(Answer.YES, words.yes(), Answer.NO, words.no())),
                meanings(Map.of(BoreShape.ROUND, words.roundBore(), BoreShape.SQUARE, words.squareBore())),
                meanings(Map.of(
                        Condition.SOUND, words.sound(),
                        Condition.OVAL, words.oval(),
                        Condition.COLLAPSED, words.collapsed(),
                        Condition.BLOCKED, words.blocked())),
                words.directBuried());
    }

    /** Each word is in one list only, as the config has checked. */
    private static <T> Map<String, T> meanings(Map<T, List<String>> lists) {
        var meanings = new HashMap<String, T>();
        lists.forEach((meaning, words) -> words.forEach(word -> meanings.put(word, meaning)));
        return meanings;
    }
}

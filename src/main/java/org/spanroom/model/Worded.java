package org.spanroom.model;

import java.util.List;

/** A choice that people may name by several words. */
public interface Worded {
    /** Returns the words in lower case, the one that we use first. */
    List<String> words();
}

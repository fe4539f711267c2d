package org.spanroom.model.learn;

/**
 * A report that nothing is learned from.
 *
 * @param entry its number in the field book
 * @param subject id of its span
 * @param fact word of the fact
 * @param item what of it
 * @param why in words
 */
public record LeftOut(int entry, String subject, String fact, String item, String why) {}

package org.spanroom.input.layer;

/**
 * One layer of a file as a list shows it.
 *
 * @param geometryType the one type of its geometries, in the words of its format, or all of them, separated by commas
 * @param featureCount how many features it has, counted
 */
public record LayerInfo(String name, String geometryType, long featureCount) {}

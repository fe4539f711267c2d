package org.spanroom.network;

import org.spanroom.model.Unit;

/**
 * The field of the routes that their recorded lengths come from.
 *
 * @param name its name in the config
 * @param unit the unit that the config gives for it
 */
public record RecordedField(String name, Unit unit) {}

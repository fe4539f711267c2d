package org.spanroom.model.rank;

/**
 * Positions that recovery adds on one span if its contents, so far as they are not recorded, are few or many. Where they are recorded both
 * are what recovery adds anyway.
 */
public record ScenarioGains(int few, int many) {}

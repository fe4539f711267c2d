package org.spanroom.model.program;

import java.util.Optional;

/**
 * How much a section is needed.
 *
 * @param step how the cables would get through it without new build; empty where they cannot
 * @param ways how many ways between hubs pass it
 * @param narrowest on how many of these it is the narrowest section, or one of several
 * @param corridor number of the corridor that it is in, from 1; 0 where it is in none
 */
public record SectionNeed(SectionOffer section, Optional<WayStep> step, int ways, int narrowest, int corridor) {}

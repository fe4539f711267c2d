package org.spanroom.survey;

import org.spanroom.model.network.Duct;

/**
 * What a survey needs of one span.
 *
 * @param duct its duct; whether its contents are recorded decides whether there is anything to learn
 * @param from the place of the vault where it begins among all vaults
 * @param to the place of the vault where it ends
 * @param worth what is at stake, in cable-meters: its length times the positions that it is expected to gain, at least one
 * @param gains whether recovery gains a position, as far as it is known
 */
public record SurveySpan(Duct duct, int from, int to, double worth, boolean gains) {}

package org.spanroom.model.effort;

/**
 * The other way to the positions that are needed: new ducts on the same path.
 *
 * @param trenchM meters of open trench
 * @param boreM meters bored
 * @param co2eIceKg emissions of its materials less those of the sleeves that recovery lays, by ICE; never to be added to those by
 *     WARM
 */
public record NewBuild(
        BuildMethod method, int ducts, double trenchM, double boreM, Amounts<BuildItem> costMoney, double co2eIceKg) {}

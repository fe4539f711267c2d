package org.spanroom.model.effort;

/**
 * The other way to the positions that are needed: new ducts on the same path.
 *
 * @param trenchM meters of open trench
 * @param boreM meters bored
 * @param co2eIceKg emissions of its materials less those of the sleeves that recovery lays, by ICE; never to be added to those by
 *     WARM
 * @param co2eDigKg the part of co2eIceKg that a trench emits once, however many ducts lie in it: surface and encasement
 */
public record NewBuild(
        BuildMethod method,
        int ducts,
        double trenchM,
        double boreM,
        Amounts<BuildItem> costMoney,
        double co2eIceKg,
        double co2eDigKg) {}

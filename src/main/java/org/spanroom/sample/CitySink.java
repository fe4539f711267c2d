package org.spanroom.sample;

/** Takes the city's features one by one; none is kept. */
interface CitySink {
    void route(RouteFeature route);

    void vault(VaultFeature vault);

    void contents(ListedItem row);

    void zone(ZoneFeature zone);

    void street(StreetFeature street);

    void fault(KnownFault fault);
}

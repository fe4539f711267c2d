package org.spanroom.sample;

/** Passes everything on, and writes one district's own routes and vaults to layers of their own as well. */
final class DistrictExtract implements CitySink {
    private final CitySink next;
    private final int district;
    private final CityLayers layers;

    DistrictExtract(CitySink next, int district, CityLayers layers) {
        this.next = next;
        this.district = district;
        this.layers = layers;
    }

    @Override
    public void route(RouteFeature route) {
        next.route(route);
        if (route.district() == district && !route.link()) {
            layers.routes().write(route);
        }
    }

    @Override
    public void vault(VaultFeature vault) {
        next.vault(vault);
        if (vault.district() == district && !vault.link()) {
            layers.vaults().write(vault);
        }
    }

    @Override
    public void contents(ListedItem row) {
        next.contents(row);
    }

    @Override
    public void zone(ZoneFeature zone) {
        next.zone(zone);
    }

    @Override
    public void street(StreetFeature street) {
        next.street(street);
    }

    @Override
    public void fault(KnownFault fault) {
        next.fault(fault);
    }
}

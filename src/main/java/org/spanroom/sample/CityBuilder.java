package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;

/** Builds the city district after district until it has its spans; no more than one district is held at a time. */
final class CityBuilder {
    private static final int PURPOSE = 5;
    private static final int NAMING = 10;
    private static final int NOTING = 17;

    private final int spans;
    private final CityLayout layout;
    private final CityCount sink;
    private final DistrictBuilder.City city;
    private final List<Built> built = new ArrayList<>();

    CityBuilder(int spans, long seed, CitySink sink) {
        this.spans = spans;
        this.layout = new CityLayout(spans, seed);
        this.sink = new CityCount(sink);
        this.city = new DistrictBuilder.City(
                this.sink,
                new FaultSchedule(seed),
                new SpareSchedule(seed),
                new RouteRecorder(
                        this.sink, Chance.of(seed, PURPOSE), Chance.of(seed, NAMING), Chance.of(seed, NOTING)));
    }

    /** A district that has been built. */
    record Built(int number, DistrictKind kind, int spans) {}

    /** Builds all and returns the districts. */
    List<Built> build() {
        int laid = 0;
        for (int number = 1; laid < spans; number++) {
            District district = layout.district(number);
            StreetPlan plan = StreetPlanner.draw(district);
            List<Street> links = new LinkPlanner(layout, district, plan).links();
            // What one district could not hold, the next ones make up for.
            long upTo = Math.min(spans, (long) number * layout.spansPerDistrict());
            int here = new DistrictBuilder(district, plan, city, (int) upTo - laid).build(links);
            new StreetNamer(district).record(plan.streets(), links, this.sink);
            new ZonePlanner(district, plan, this.sink).plan();
            laid += here;
            built.add(new Built(number, district.kind(), here));
        }
        return built;
    }

    CityCount count() {
        return sink;
    }
}

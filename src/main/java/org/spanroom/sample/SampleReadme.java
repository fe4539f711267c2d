package org.spanroom.sample;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The text that is beside a city's files and says what is in them, with the counts of this very city. */
final class SampleReadme {
    private static final int MOST_DISTRICTS = 12;

    private static final String BY_HAND = """
             Do not edit by hand:
            a test writes this folder again and compares it, and replaces it with `-Dspanroom.rewrite=true`:

            ```
            mvn -Pquick test -Dtest=SampleGisTest -Dspanroom.rewrite=true
            ```\
            """;

    private static final String TEXT = """
            # Tidemarrow, a city that does not exist

            All of this is invented: the city, its districts, owners, ducts and cables. Its location is in the open ocean, at about
            %s N, %s W. Written by Spanroom's own generator (package `org.spanroom.sample`)
            for %s spans and seed %d; the same numbers give the same bytes.%s

            ## Files

            %s
            ## Districts

            %s
            ## Sections

            A section is the ducts of one bank between the same two vaults. It is counted in each row that applies, before
            faults were added. A bank has the same use along all its sections: some are crowded, some have sleeves from an
            earlier campaign, some are wet.

            %s
            ## Ducts

            Sizes are from published tables (the code names the sources: `BoreType`,
            `InnerductSize`, `CableSize`), and the contents of every duct really fit. A duct is counted in each row
            that applies, before faults were added.

            %s
            In many banks all ducts have the same line, in others neighbors are up to 0.15 m apart; vaults are up
            to 0.3 m beside the line; vertices have noise of 1 to 3.5 cm (standard deviation, by quality level). Corners are
            single vertices or arcs of 18 in, 36 in, 1.2 m and 25 ft radius; some spans turn by 90 to 450 degrees in
            all, are longer than 183 m, climb by up to 23 %%, or contain the heaviest cables. A few meet one limit
            each: 450 degrees with a light load, elbows of 0.42 m with the thickest cable, links of 378 m
            between districts; links up the hill contain the heaviest cables.
            About 4 %% of the lines are drawn in two parts. Some records name a row of `config/catalog.yaml` instead of a
            size, and some use other words for the same value, as different surveyors would.

            Zones overlap, some have holes, one ban has expired, and the edge of one runs along the middle of a street, on the ducts
            themselves. Street works have a first and a last day: some are over, some are in progress, some are upcoming. Half
            of the embargoes have expired.

            Holes of ducts are noted in a third of the banks, mirrored at the far vault. Innerducts that run uncut through a vault, and
            slack of a single duct, are recorded where the owner refuses the work or a cable is of unknown service, so that no ranked
            span rests on them.

            ## Fields

            %s
            ## Faults

            Added on purpose, each at the given rate per ducts or vaults; `known-faults.csv` lists every one. A feature has
            one at most. Two kinds have separate streets: loops, and lines that pass under others.

            %s""";

    private final long seed;
    private final CityCount count;
    private final List<CityBuilder.Built> districts;

    SampleReadme(long seed, CityCount count, List<CityBuilder.Built> districts) {
        this.seed = seed;
        this.count = count;
        this.districts = districts;
    }

    /** Returns the text for layers of a format, with or without the two districts that are there in other formats too. */
    String text(DemoCity.Format format, boolean withDistricts) {
        return TEXT.formatted(
                CityPlane.ORIGIN_LAT_DEG,
                -CityPlane.ORIGIN_LON_DEG,
                spans(),
                seed,
                withDistricts ? BY_HAND : "",
                files(format, withDistricts),
                districts(),
                table("sections", count.sections().entrySet().stream()),
                ducts(),
                fields(),
                faults());
    }

    private String files(DemoCity.Format format, boolean withDistricts) {
        String crs = switch (format) {
            case GEOJSON -> "longitude and latitude on WGS 84 (CRS84)";
            case SHAPEFILE -> "EPSG:2226, US survey feet";
            case GPKG -> "EPSG:32609, meters";
        };
        String all = """
                | file | rows | what |
                |---|---:|---|
                | `%s` | %d | lines, one or two per duct; %s |
                | `%s` | %d | points: `vault_id`, `kind`, `elev_m`, `volume` (m3 or with its unit), `water`, `surface`, `hold` (whether a live cable can be restrained there), `slack_ft` (cable slack stored in it, in feet); of inspected vaults also `depth_ft`, `in_len_ft`, `in_wid_ft`, `in_high_ft` (inside, in feet), `lid_in` (opening under the cover, in inches), `gas` (whether gas was found), `power` (whether power cables share it), `inspected` (day); the same system |
                | `contents.csv` | %d | innerducts, cables and sleeves of ducts with mixed contents, one per row; inches, and pounds per 1000 ft, or a catalog row; for a sleeve its `cells` and the number of `reserved` cells; for some innerducts their `color` and whether they run uncut through a vault (`continuous_at_a`, `continuous_at_b`), for some cables their `tag` |
                | `zones.gpkg` | %d | permit zones, polygons: `zone_id`, `zone_type`, `title`, `until`, `starts`; %s |
                | `%s` | %d | center lines of streets, a backdrop for the report: `name`, `rank`; longitude and latitude on WGS 84 |
                | `known-faults.csv` | %d | the faults that were added |
                | `spanroom.yaml` | | the config for these files: `rank --config` and this file |
                """.formatted(
                        format.routes(),
                        count.routes(),
                        crs,
                        format.vaults(),
                        count.vaults(),
                        count.rows(),
                        count.zones(),
                        withDistricts || format != DemoCity.Format.GEOJSON
                                ? "EPSG:2226, US survey feet"
                                : "longitude and latitude on WGS 84",
                        DemoCity.STREETS,
                        count.streets(),
                        total(count.faults().values().stream()));
        return withDistricts ? all + """
                | `harbor.shp`, `harbor_vaults.shp` | | the Harbor district again, in EPSG:2226 (US survey feet), without the links to others |
                | `hillside.gpkg` | | the Hillside district again, layers `ducts` (with heights) and `vaults`, in EPSG:32609 (meters) |
                | `oldtown.geojson`, `oldtown_vaults.geojson` | | a separate town, with other fields, that does not record the contents of its ducts: see `src/site/markdown/little-recorded.md` |
                | `connections.csv` | 9 | connections that are wanted, for `connect`: see `src/site/markdown/connections.md` |
                | `program.yaml` | | the annual program that they are part of, for `program`: see `src/site/markdown/program.md` |
                | `closeout.csv` | | what the crews report of its first weeks, for `closeout`: see `src/site/markdown/crew.md` |
                """ : all;
    }

    private String districts() {
        String rows = districts.stream()
                .limit(MOST_DISTRICTS)
                .map(built -> "| " + built.number() + " | " + built.kind().title() + " | " + built.spans() + " |\n")
                .collect(Collectors.joining());
        String more = districts.size() > MOST_DISTRICTS ? "| ... | " + districts.size() + " in all | |\n" : "";
        return "| number | kind | spans |\n|---:|---|---:|\n" + rows + more;
    }

    private String ducts() {
        return table(
                "ducts",
                count.ducts().entrySet().stream()
                        .sorted(Map.Entry.<String, Integer>comparingByValue()
                                .reversed()
                                .thenComparing(Map.Entry.comparingByKey())));
    }

    private static String table(String counted, Stream<Map.Entry<String, Integer>> counts) {
        return "| " + counted + " | count |\n|---|---:|\n"
                + counts.map(entry -> "| " + entry.getKey() + " | " + entry.getValue() + " |\n")
                        .collect(Collectors.joining());
    }

    private static String fields() {
        return "| field | in Shapefiles | meaning |\n|---|---|---|\n"
                + Stream.of(RouteField.values())
                        .map(field ->
                                "| `" + field.field() + "` | `" + field.shortName() + "` | " + field.meaning() + " |\n")
                        .collect(Collectors.joining());
    }

    private String faults() {
        return "| fault | one in | count | description |\n|---|---:|---:|---|\n"
                + Stream.of(Fault.values())
                        .map(fault -> "| `" + fault.key() + "` | " + rate(fault) + " | "
                                + count.faults().getOrDefault(fault, 0) + " | " + fault.text() + " |\n")
                        .collect(Collectors.joining());
    }

    private static String rate(Fault fault) {
        return switch (fault.target()) {
            case ROUTE -> fault.oneIn() + " ducts";
            case VAULT -> fault.oneIn() + " vaults";
            case STREET, ZONE -> "";
        };
    }

    private long spans() {
        return total(districts.stream().map(CityBuilder.Built::spans));
    }

    private static long total(Stream<Integer> counts) {
        return counts.mapToLong(Integer::longValue).sum();
    }
}

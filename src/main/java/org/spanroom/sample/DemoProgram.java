package org.spanroom.sample;

/** The config of the annual program of the demo city. */
final class DemoProgram {
    static final String FILE = "program.yaml";

    static final String TEXT = """
            # The annual program of the invented city: three years. All other keys have the values of config/program.yaml, which
            # explains every key.

            first_day: 2027-01-04
            years:
              - {money: 400000, crew_hours: }
              - {money: 400000, crew_hours: }
              - {money: 400000, crew_hours: }

            crews:
              - {name: north crew, shifts_per_week: 4, shift_hours: 7.5, shifts: days}
              - {name: south crew, shifts_per_week: 4, shift_hours: 7.5, shifts: either}

            stop_windows:
              - {name: winter stop, from: 12-15, until: 01-15, zone_kinds: []}
              - {name: start of school, from: 08-23, until: 09-17, zone_kinds: [school]}
              - {name: harbor festival, from: 2028-06-12, until: 2028-06-25, zone_kinds: []}
            change_freezes:
              - {name: year-end change freeze, from: 11-20, until: 01-05, least_circuits: 24}

            # At most two spans of this owner in work in one week: its inspector has to be there.
            district: owner
            most_in_work: {Quayfold Signals: 2}

            connections: connections.csv
            must: [B141-1:V3-1058:V3-1059]
            must_not: [B195-3:V4-1036:V4-1087]
            """;

    private DemoProgram() {}
}

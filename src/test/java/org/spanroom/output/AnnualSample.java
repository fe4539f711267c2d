package org.spanroom.output;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.spanroom.model.Line;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.ConnectionStep;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.CurvePoint;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.NewDuctOffer;
import org.spanroom.model.program.PriceItem;
import org.spanroom.model.program.ProgramConnection;
import org.spanroom.model.program.ProgramDucts;
import org.spanroom.model.program.ProgramItem;
import org.spanroom.model.program.ProgramResults;
import org.spanroom.model.program.ProgramTotals;
import org.spanroom.model.program.ReserveItem;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.model.program.VaultPlace;
import org.spanroom.model.program.WayStep;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.model.program.WorkOrder;
import org.spanroom.model.program.YearBudget;
import org.spanroom.model.program.YearSpread;

/** A program put together by hand: four vaults in a row, three sections, two crews, two years. */
final class AnnualSample {
    static final LocalDate READY_ON = LocalDate.of(2027, 1, 15);

    private static final Costs NEW_DUCT = costs(9000);

    private AnnualSample() {}

    /** A span of the program, changed part by part; the rest of it is plain. */
    static final class Item {
        private final String spanId;
        private final String sectionId;
        private int year;
        private String crew = "crew 1";
        private int place = 1;
        private List<LocalDate> days = List.of(LocalDate.of(2027, 3, 1));
        private double startHours;
        private double sharedHours;
        private String vaultA = "V1";
        private String vaultB = "V2";
        private List<String> permits = List.of();
        private String check = "";
        private boolean isNight;
        private boolean isSimulated = true;
        private List<String> connections = List.of();
        private Optional<Line> line = Optional.empty();

        Item(String spanId, String sectionId) {
            this.spanId = spanId;
            this.sectionId = sectionId;
        }

        Item in(int yearFromZero) {
            year = yearFromZero;
            return this;
        }

        Item by(String name, int placeInWeek, String... isoDays) {
            crew = name;
            place = placeInWeek;
            days = List.of(isoDays).stream().map(LocalDate::parse).toList();
            return this;
        }

        Item shares(double startsAtHours, double hours) {
            startHours = startsAtHours;
            sharedHours = hours;
            return this;
        }

        Item between(String first, String second) {
            vaultA = first;
            vaultB = second;
            return this;
        }

        Item permits(String... names) {
            permits = List.of(names);
            return this;
        }

        Item check(String what) {
            check = what;
            return this;
        }

        Item night() {
            isNight = true;
            return this;
        }

        Item notSimulated() {
            isSimulated = false;
            return this;
        }

        Item serves(String... names) {
            connections = List.of(names);
            return this;
        }

        Item drawn(double... lonLatDeg) {
            line = Optional.of(Line.ofXy(lonLatDeg));
            return this;
        }

        ProgramItem build() {
            LocalDate first = days.get(0);
            var order = new WorkOrder(
                    spanId,
                    sectionId,
                    year,
                    1,
                    6.5,
                    isNight,
                    vaultA,
                    vaultB,
                    0.5,
                    0.5,
                    "",
                    30,
                    14,
                    LocalDate.MIN,
                    LocalDate.MAX,
                    List.of());
            var entry = new WorkCalendar.Entry(
                    order,
                    crew,
                    first.minusDays(first.getDayOfWeek().getValue() - 1L),
                    1,
                    place,
                    days,
                    startHours,
                    6.5 - sharedHours,
                    sharedHours,
                    first.minusDays(30),
                    check.isEmpty() ? first : first.minusDays(14));
            SpanFacts facts = facts(spanId, OptionalInt.of(7), List.of(vaultA, vaultB), permits, check, line);
            return new ProgramItem(
                    span(facts, OptionalLong.of(0b0111)),
                    sectionId,
                    entry,
                    costs(1000),
                    800,
                    connections,
                    isSimulated ? OptionalDouble.of(0.75) : OptionalDouble.empty(),
                    isSimulated ? OptionalDouble.of(0.5) : OptionalDouble.empty(),
                    "It saves most for its money.");
        }
    }

    /** Spans S1 and S2 in one week, S3 by night over a weekend, S4 in the second year. */
    static List<ProgramItem> items() {
        return List.of(
                new Item("S1", "B1")
                        .by("crew 1", 1, "2027-03-01")
                        .permits("lane closure", "street cut")
                        .serves("hospital", "library")
                        .drawn(-30, 40, -30, 40.001)
                        .build(),
                new Item("S2", "B2")
                        .by("crew 1", 2, "2027-03-01", "2027-03-02")
                        .between("V2", "V3")
                        .shares(6.5, 0.5)
                        .check("count the innerducts")
                        .drawn(-30, 40.001, -30, 40.002)
                        .build(),
                new Item("S3", "B3")
                        .by("crew 2", 1, "2027-03-12", "2027-03-15")
                        .between("V3", "V4")
                        .night()
                        .notSimulated()
                        .build(),
                new Item("S4", "B1").in(1).by("crew 1", 1, "2028-03-06").build());
    }

    static ProgramResults results() {
        return results(items(), List.of(new PriceItem("must", "S1", 250.5, -3, 1, 100)));
    }

    static ProgramResults results(List<ProgramItem> items, List<PriceItem> prices) {
        var years = List.of(
                new CalendarRules.ProgramYear(LocalDate.of(2027, 1, 1), LocalDate.of(2027, 12, 31)),
                new CalendarRules.ProgramYear(LocalDate.of(2028, 1, 1), LocalDate.of(2028, 12, 31)));
        var rules = new CalendarRules(READY_ON, years, List.of(), List.of(), Map.of());
        var ducts = new ProgramDucts(
                section("B2"), 1, 2, NEW_DUCT, 7000, LocalDate.of(2027, 1, 30), List.of("hospital", "library"));
        return new ProgramResults(
                rules,
                List.of(new YearBudget(5000, 400), new YearBudget(5000, 400)),
                items,
                List.of(ducts),
                List.of(served(), notServed()),
                reserve(),
                totals(),
                List.of(new YearSpread(0, 4, 6, 8.5)),
                List.of(
                        new CurvePoint(0.5, 5000, 4900, 6, 1, 700, OptionalDouble.empty(), OptionalDouble.empty()),
                        new CurvePoint(1, 10_000, 9000, 10, 2, 1500, OptionalDouble.of(1600), OptionalDouble.of(1025))),
                prices);
    }

    private static ProgramConnection served() {
        var connection = new Connection(
                1,
                "hospital",
                "V1",
                "V3",
                2,
                OptionalDouble.of(20_000),
                Optional.of(LocalDate.of(2028, 6, 30)),
                true,
                Optional.empty());
        SectionOffer first = section("B1");
        SectionOffer second = section("B2");
        var recovered = new WayStep(
                first, true, WayStep.Action.RECOVER, Optional.of(first.ducts().get(0)), Optional.empty());
        var built = new WayStep(second, true, WayStep.Action.BUILD, Optional.empty(), Optional.of(second.newDuct()));
        return new ProgramConnection(
                connection,
                List.of(
                        new ConnectionStep(recovered, 0, costs(1000), 600, List.of("library"), 3),
                        new ConnectionStep(built, 1, NEW_DUCT, 6000.25, List.of("library"), 3)),
                OptionalInt.of(1),
                Optional.of(LocalDate.of(2028, 12, 31)),
                "",
                "6,000 more in the first year");
    }

    private static ProgramConnection notServed() {
        var connection = new Connection(
                2, "library", "V1", "V4", 1, OptionalDouble.empty(), Optional.empty(), false, Optional.empty());
        return new ProgramConnection(
                connection, List.of(), OptionalInt.empty(), Optional.empty(), "not worth its cost", "");
    }

    private static List<ReserveItem> reserve() {
        SpanFacts first = facts("R1", OptionalInt.of(9), List.of("V1", "V2"), List.of(), "", Optional.empty());
        SpanFacts second = facts("R2", OptionalInt.empty(), List.of("V2", "V3"), List.of(), "", Optional.empty());
        return List.of(
                new ReserveItem(
                        1,
                        span(first, OptionalLong.of(0b1011)),
                        "B1",
                        OptionalDouble.of(0.125),
                        "the budget of both years is used up"),
                new ReserveItem(0, span(second, OptionalLong.empty()), "B2", OptionalDouble.empty(), "must not"));
    }

    private static List<ProgramTotals> totals() {
        return List.of(
                new ProgramTotals(-1, "", "", 4, 12, 9.25, costs(13_000), 25.5, 300, 2000, 200, 50.5),
                new ProgramTotals(0, "", "", 3, 9, 6.75, costs(3000), 19, 225, 1500, 150, 50.5),
                new ProgramTotals(0, "owner", "city", 3, 9, 6.75, costs(3000), 19, 225, 1500, 150, 50.5),
                new ProgramTotals(1, "", "", 1, 3, 2.25, costs(10_000), 6.5, 75, 500, 50, 0));
    }

    static SpanFacts facts(
            String spanId,
            OptionalInt rank,
            List<String> vaults,
            List<String> permits,
            String check,
            Optional<Line> line) {
        return new SpanFacts(
                spanId,
                rank,
                List.of(),
                vaults.get(0),
                vaults.get(1),
                111,
                3,
                false,
                0.5,
                0.5,
                150,
                4000,
                75,
                50,
                0,
                500,
                300,
                OptionalInt.empty(),
                permits,
                // Spans that need permits from others are entered, too.
                permits.isEmpty() ? List.of() : List.of("vault entry"),
                List.of(),
                List.of(),
                Map.of(),
                "",
                check,
                line);
    }

    private static EligibleSpan span(SpanFacts facts, OptionalLong draws) {
        return new EligibleSpan(
                facts, duct(facts.spanId(), draws), 0, 0, 900, 4000.5, 30, 14, READY_ON, List.of(), false);
    }

    private static DuctOffer duct(String spanId, OptionalLong draws) {
        var recovery = new DuctOffer.Recovery(costs(1000), 6.5, 30, Optional.empty(), draws);
        return new DuctOffer(spanId, spanId, 0, 3, OptionalInt.of(7), "", Optional.of(recovery));
    }

    /** A cost whose range is a tenth below it to a fifth above it. */
    private static Costs costs(double money) {
        return new Costs(money, new MoneyRange(0.9 * money, 1.05 * money, 1.2 * money));
    }

    static DuctNetwork network() {
        return new DuctNetwork(
                List.of(
                        new VaultPlace("V1", -30, 40),
                        new VaultPlace("V2", -30, 40.001),
                        new VaultPlace("V3", -30, 40.002),
                        new VaultPlace("V4", Double.NaN, Double.NaN)),
                List.of(section("B1"), section("B2"), section("B3")),
                4,
                READY_ON);
    }

    private static SectionOffer section(String id) {
        int from = id.charAt(1) - '1';
        Optional<Line> line = id.equals("B3")
                ? Optional.empty()
                : Optional.of(Line.ofXy(-30, 40 + 0.001 * from, -30, 40.001 + 0.001 * from));
        return new SectionOffer(
                id,
                id,
                from,
                from + 1,
                111,
                List.of(duct("S" + (from + 1), OptionalLong.of(0b0111))),
                new NewDuctOffer(9, NEW_DUCT, NEW_DUCT, 60),
                line);
    }
}

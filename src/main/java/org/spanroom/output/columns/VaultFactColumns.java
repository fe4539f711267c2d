package org.spanroom.output.columns;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.model.Answer;
import org.spanroom.model.network.AirSupplyReason;
import org.spanroom.model.network.AirTest;
import org.spanroom.model.network.VaultFacts;
import org.spanroom.model.network.VaultNeeds;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.network.VaultUse;
import org.spanroom.output.table.Column;

/** The columns of what is recorded of a vault and of what follows for the crew; empty where it is unknown. */
public final class VaultFactColumns {
    private static final Column<VaultUse> KIND = Column.text(
            "kind", "kind", "The recorded kind of vault.", row -> row.vault().kind());

    private static final List<Column<VaultUse>> SIZE = List.of(
            Column.real("volume_m3", "volume_m3", 2, "Volume of air inside.", site(VaultSite::volumeM3)),
            Column.text(
                    "volume_from",
                    "volume_of",
                    "What the volume rests on: recorded, inside_size (length x width x height), or assumed by the config.",
                    facts(facts -> facts.volumeBasis().key())),
            Column.real(
                    "depth_m", "depth_m", 2, "Recorded depth, from the cover to the floor.", facts(VaultFacts::depthM)),
            Column.real(
                    "inside_length_m",
                    "in_len_m",
                    2,
                    "Recorded inside length.",
                    facts(facts -> facts.inside().lengthM())),
            Column.real(
                    "inside_width_m",
                    "in_width_m",
                    2,
                    "Recorded inside width.",
                    facts(facts -> facts.inside().widthM())),
            Column.real(
                    "inside_height_m",
                    "in_high_m",
                    2,
                    "Recorded inside height, from floor to ceiling.",
                    facts(facts -> facts.inside().heightM())),
            Column.real(
                    "cover_size_mm",
                    "cover_mm",
                    1,
                    "Recorded least width of the opening under the cover.",
                    facts(VaultFacts::coverSizeMm)));

    private static final List<Column<VaultUse>> SITE = List.of(
            flag(
                    "water",
                    "water",
                    "Whether standing water is recorded, or assumed by the config.",
                    site(VaultSite::water)),
            Column.text(
                    "surface",
                    "surface",
                    "The recorded surface around the cover, or the one that the config assumes.",
                    site(VaultSite::surface)),
            flag(
                    "cable_hold",
                    "cable_hold",
                    "Whether a live cable can be restrained there.",
                    site(VaultSite::cableHold)),
            Column.real(
                    "cable_slack_m",
                    "slack_m",
                    2,
                    "Recorded slack of each live cable stored there.",
                    site(VaultSite::cableSlackM)),
            flag(
                    "gas_found",
                    "gas_found",
                    "Whether gas was found in it before, by the records.",
                    facts(VaultFacts::gasFound)),
            flag(
                    "joint_power",
                    "joint_powr",
                    "Whether power cables share it, by the records.",
                    facts(VaultFacts::jointPower)),
            Column.text(
                    "inspected_on",
                    "inspected",
                    "Day of its last inspection, as year-month-day.",
                    facts(facts -> facts.inspectedOn().map(Object::toString))));

    private static final List<Column<VaultUse>> AIR = List.of(
            Column.real(
                    "purge_minutes",
                    "purge_min",
                    1,
                    "Least time of ventilating before entry: the air changes of the rates, and never less than their "
                            + "minimum (UFC 3-560-01). Empty where the volume is not known or crews do not enter.",
                    needs(VaultNeeds::purgeMinutes)),
            Column.text(
                    "air_tests",
                    "air_tests",
                    "When the air is tested, joined by ;: "
                            + words(Stream.of(AirTest.values()).map(AirTest::key))
                            + ". " + AirTest.AFTER_PUMPING.key()
                            + " also where nothing is recorded about water. Empty where crews do not enter.",
                    needs(needs -> needs.airTests().stream().map(AirTest::key).collect(Collectors.joining(";")))),
            Column.real(
                    "air_retest_hours",
                    "retest_h",
                    1,
                    "Longest time between two tests, in addition to continuous monitoring.",
                    needs(VaultNeeds::airRetestHours)),
            flag(
                    "forced_air",
                    "forced_air",
                    "Whether air is supplied continuously while a person is inside (29 CFR 1910.268(o)(2)), by the "
                            + "records; the test before entry can demand it of any vault. Empty: not recorded.",
                    needs(VaultNeeds::airSupply)),
            Column.text(
                    "forced_air_why",
                    "air_why",
                    "Why, or what is not recorded, joined by ;: "
                            + words(Stream.of(AirSupplyReason.values()).map(AirSupplyReason::key)) + ".",
                    needs(needs -> needs.airSupplyReasons().stream()
                            .map(AirSupplyReason::key)
                            .collect(Collectors.joining(";")))));

    private static final List<Column<VaultUse>> PERMITS = List.of(
            flag(
                    "discharge_permit",
                    "discharge",
                    "Whether water is pumped out, whose discharge needs a permit. Empty: not recorded.",
                    needs(VaultNeeds::pumped)),
            flag(
                    "lane_closure",
                    "lane_close",
                    "Whether the cover is in the roadway, so that a lane is closed. Empty: not recorded.",
                    needs(VaultNeeds::inRoadway)),
            flag(
                    "confined_space_entry",
                    "confined",
                    "Whether crews enter it, by its kind and vault_kinds of the config. Empty: the kind is not recorded.",
                    needs(VaultNeeds::entered)));

    private VaultFactColumns() {}

    /** Returns all of them, the kind first. */
    static List<Column<VaultUse>> all() {
        return Stream.of(List.of(KIND), SIZE, SITE, AIR, PERMITS)
                .flatMap(List::stream)
                .toList();
    }

    /** Returns their names. */
    public static List<String> names() {
        return all().stream().map(Column::name).toList();
    }

    private static Column<VaultUse> flag(
            String name, String shortName, String meaning, Function<VaultUse, Answer> answer) {
        return Column.flag(name, shortName, meaning, row -> ofAnswer(answer.apply(row)));
    }

    private static Optional<Boolean> ofAnswer(Answer answer) {
        return answer == Answer.UNKNOWN ? Optional.empty() : Optional.of(answer == Answer.YES);
    }

    private static String words(Stream<String> keys) {
        return keys.collect(Collectors.joining(", "));
    }

    private static <T> Function<VaultUse, T> site(Function<VaultSite, T> cell) {
        return row -> cell.apply(row.vault().site());
    }

    private static <T> Function<VaultUse, T> facts(Function<VaultFacts, T> cell) {
        return row -> cell.apply(row.vault().facts());
    }

    private static <T> Function<VaultUse, T> needs(Function<VaultNeeds, T> cell) {
        return row -> cell.apply(row.needs());
    }
}

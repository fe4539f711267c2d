package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.network.SectionKey;

/** Groups of random spans against plain maps of Java's library. */
class SectionGroupsTest {
    /**
     * Spans in the order of a ranking.
     *
     * @param ranked how many of them are ranked
     */
    record Drawn(List<SectionKey> keys, int ranked) {
        /** Numbers the spans in another order than that of the ranking. */
        SectionGroups groups() {
            List<Integer> numbers =
                    new ArrayList<>(IntStream.range(0, keys.size()).boxed().toList());
            Collections.shuffle(numbers, new Random(ranked));
            int[] places = new int[keys.size()];
            for (int place = 0; place < places.length; place++) {
                places[numbers.get(place)] = place;
            }
            int[] order = numbers.stream().mapToInt(Integer::intValue).toArray();
            return SectionGroups.of(order, ranked, span -> keys.get(places[span]));
        }

        /** The places of each section's spans, in the order of its first one. */
        Map<SectionKey, List<Integer>> places() {
            Map<SectionKey, List<Integer>> places = new LinkedHashMap<>();
            for (int place = 0; place < keys.size(); place++) {
                places.computeIfAbsent(keys.get(place), key -> new ArrayList<>())
                        .add(place);
            }
            return places;
        }
    }

    /** From none to more than the first table of slots has room for; from one bank for all to one for each. */
    static Stream<Drawn> drawn() {
        var random = new Random(11);
        return IntStream.range(0, 60).mapToObj(i -> {
            int spans = i < 10 ? i / 2 : random.nextInt(9000);
            int banks = 1 + random.nextInt(1 + spans);
            int vaults = 1 + random.nextInt(9);
            List<SectionKey> keys = IntStream.range(0, spans)
                    .mapToObj(span -> SectionKey.of(
                            random.nextInt(5) == 0 ? "" : "B" + random.nextInt(banks),
                            "D" + span,
                            "V" + random.nextInt(vaults),
                            "V" + random.nextInt(vaults)))
                    .toList();
            return new Drawn(keys, random.nextInt(3) * spans / 2);
        });
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void everySpanIsInItsSectionAndInNoOther(Drawn drawn) {
        SectionGroups groups = drawn.groups();
        Map<SectionKey, List<Integer>> expected = drawn.places();

        assertThat(groups.size()).isEqualTo(expected.size());
        for (int section = 0; section < groups.size(); section++) {
            SectionKey key = drawn.keys().get(groups.first(section));
            List<Integer> members =
                    Arrays.stream(groups.members(section)).boxed().toList();

            assertThat(members).isEqualTo(expected.get(key));
            assertThat(groups.first(section)).isEqualTo(members.get(0));
        }
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void theBestSectionsAreFirstAndThoseWithoutARankByName(Drawn drawn) {
        SectionGroups groups = drawn.groups();
        Comparator<Map.Entry<SectionKey, List<Integer>>> order = Comparator.comparingInt(
                entry -> Math.min(drawn.ranked(), entry.getValue().get(0)));
        List<SectionKey> expected = drawn.places().entrySet().stream()
                .sorted(order.thenComparing(entry -> entry.getKey().id()))
                .map(Map.Entry::getKey)
                .toList();

        assertThat(IntStream.range(0, groups.size())
                        .mapToObj(section -> drawn.keys().get(groups.first(section))))
                .isEqualTo(expected);
        assertThat(groups.countRanked()).isEqualTo((int)
                drawn.keys().subList(0, drawn.ranked()).stream().distinct().count());
    }

    /** The excluded spans may come in any order: sections of these alone are the same. */
    @ParameterizedTest
    @MethodSource("drawn")
    void sectionsWithoutARankDoNotDependOnTheOrderOfTheirSpans(Drawn drawn) {
        var shuffled = new ArrayList<>(drawn.keys());
        Collections.shuffle(shuffled, new Random(3));

        assertThat(sizes(new Drawn(shuffled, 0))).isEqualTo(sizes(new Drawn(drawn.keys(), 0)));
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void membersOfSectionsThatFollowOneAnotherAreThoseOfEach(Drawn drawn) {
        SectionGroups groups = drawn.groups();
        int from = groups.size() / 3;

        assertThat(groups.members(from, groups.size()))
                .containsExactly(IntStream.range(from, groups.size())
                        .flatMap(section -> Arrays.stream(groups.members(section)))
                        .toArray());
    }

    private static List<String> sizes(Drawn drawn) {
        SectionGroups groups = drawn.groups();
        return IntStream.range(0, groups.size())
                .mapToObj(
                        section -> drawn.keys().get(groups.first(section)).id() + " " + groups.members(section).length)
                .toList();
    }
}

package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanList;

/** Which of several empty ducts is named, whatever the order they are read in. */
class EmptyDuctsTest {
    @Test
    void ofASoundOneAndOneThatNobodyLookedIntoTheSoundOneIsNamed() {
        HandMade sound = empty("z", "", Condition.SOUND);
        HandMade unknown = empty("a", "", Condition.UNKNOWN);

        inEitherOrder(sound, unknown).forEach(ducts -> {
            assertThat(ducts.findProved(full(""))).contains("z");
            assertThat(ducts.findUnproved(full(""))).isEmpty();
        });
    }

    @Test
    void ofTwoSoundOnesTheOneOfTheSmallerNameIsNamed() {
        inEitherOrder(empty("a", "", Condition.SOUND), empty("b", "", Condition.SOUND))
                .forEach(ducts -> assertThat(ducts.findProved(full(""))).contains("a"));
    }

    @Test
    void anOwnersOwnAndThoseOfNobodyServeAlike() {
        HandMade own = empty("z", "City", Condition.SOUND);
        HandMade nobodys = empty("a", "", Condition.UNKNOWN);
        HandMade strangers = empty("0", "Harbor", Condition.SOUND);

        assertThat(of(own, nobodys, strangers).findProved(full("city"))).contains("z");
        assertThat(of(own, strangers).findProved(full("city"))).contains("z");
        assertThat(of(nobodys, strangers).findUnproved(full("city"))).contains("a");
        assertThat(of(strangers).findProved(full("city"))).isEmpty();
        // Any span serves here.
        assertThat(of(strangers).findProved(full(""))).contains("0");
    }

    @Test
    void bothVaultsMustBeTheSpansVaults() {
        for (List<String> vaults : List.of(List.of("V1", "V3"), List.of("V3", "V2"), List.of("V0", "V2"))) {
            HandMade elsewhere = empty("a", "", Condition.SOUND).in("B", vaults.get(0), vaults.get(1));
            HandMade back = empty("b", "", Condition.SOUND).in("B", vaults.get(1), vaults.get(0));

            assertThat(of(elsewhere, back).findProved(full(""))).isEmpty();
        }
        assertThat(of(empty("a", "", Condition.SOUND).in("B", "V2", "V1")).findProved(full("")))
                .contains("a");
    }

    /** Spare is what is recorded as empty and sound, and may serve; each other record takes that away. */
    @Test
    void aDuctIsSpareOnlyWhereNothingIsRecordedAgainstIt() {
        assertThat(isSpare(one -> {})).isTrue();
        assertThat(isSpare(one -> one.consent = Answer.YES)).isTrue();
        assertThat(isSpare(one -> one.consent = Answer.NO)).isFalse();
        assertThat(isSpare(one -> one.directBuried = true)).isFalse();
        assertThat(isSpare(one -> one.contents = Contents.UNKNOWN)).isFalse();
        assertThat(isSpare(one -> one.contents = HandMade.holding(Service.DEAD)))
                .isFalse();
        assertThat(isSpare(one ->
                        one.contents = new Contents(List.of(), List.of(new Cable("c", 12, 0.2, Service.LIVE)), true)))
                .isFalse();
        for (Condition condition : Condition.values()) {
            assertThat(isSpare(one -> one.condition = condition)).isEqualTo(condition == Condition.SOUND);
        }
    }

    private static boolean isSpare(Consumer<HandMade> change) {
        HandMade one = empty("a", "", Condition.SOUND);
        change.accept(one);
        return one.assessed().span().duct().isSpare();
    }

    /** A duct without a recorded bank is a bank of its own, and pieces of one duct are not beside each other. */
    @Test
    void withoutABankNoDuctLiesBeside() {
        for (String bank : List.of("", " ")) {
            HandMade empty = empty("d", "", Condition.SOUND).in(bank, "V1", "V2");
            Span span = HandMade.named("full").in(bank, "V1", "V2").assessed().span();

            assertThat(span.duct().id()).isEqualTo("d");
            assertThat(of(empty).findProved(span)).isEmpty();
            assertThat(of(empty).findUnproved(span)).isEmpty();
        }
    }

    private static Stream<EmptyDucts> inEitherOrder(HandMade one, HandMade other) {
        return Stream.of(of(one, other), of(other, one));
    }

    private static EmptyDucts of(HandMade... all) {
        return EmptyDucts.of(
                SpanList.of(Arrays.stream(all).map(one -> one.assessed().span()).toList()));
    }

    private static HandMade empty(String duct, String owner, Condition condition) {
        HandMade one = HandMade.named("span-" + duct).empty().in("B", "V1", "V2");
        one.ductId = duct;
        one.owner = owner;
        one.condition = condition;
        return one;
    }

    private static Span full(String owner) {
        HandMade one = HandMade.named("full").in("B", "V1", "V2");
        one.owner = owner;
        return one.assessed().span();
    }
}

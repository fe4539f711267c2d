package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RecentAnswersTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyAnswerIsRightAndFewAreKept(long seed) {
        var random = new Random(seed);
        var answers = new RecentAnswers<Integer, String>(50);
        for (int turn = 0; turn < 20_000; turn++) {
            int question = (int) Math.abs(random.nextGaussian() * 200);
            assertThat(answers.get(question, q -> Integer.toString(q))).isEqualTo(Integer.toString(question));
            assertThat(answers.kept()).isLessThanOrEqualTo(100);
        }
    }

    @Test
    void whatIsAskedAgainBeforeTooMuchElseIsNotWorkedOutAgain() {
        var asked = new AtomicInteger();
        var answers = new RecentAnswers<Integer, Integer>(100);
        for (int question = 0; question < 1_000; question++) {
            answers.get(question, q -> q);
            answers.get(-1, q -> asked.incrementAndGet());
        }
        assertThat(asked).hasValue(1);
        assertThat(answers.workedOut()).isEqualTo(1_001);
    }

    @Test
    void threadsThatAskTogetherGetOneAnswer() {
        var answers = new RecentAnswers<Integer, Object>(1_000);
        Set<Object> seen = IntStream.range(0, 100_000)
                .parallel()
                .mapToObj(i -> answers.get(i % 500, q -> new Object()))
                .collect(Collectors.toSet());
        assertThat(seen).hasSize(500);
        assertThat(answers.workedOut()).isEqualTo(500);
    }
}

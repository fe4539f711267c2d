package org.spanroom.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class LatestAnswerTest {
    private final List<List<Integer>> asked = Collections.synchronizedList(new ArrayList<>());
    private final LatestAnswer<List<Integer>, Integer> sums = new LatestAnswer<>(question -> {
        asked.add(question);
        return question.stream().mapToInt(Integer::intValue).sum();
    });

    @Test
    void theSameQuestionInARowIsAnsweredOnce() {
        List<Integer> question = List.of(1, 2, 3);

        assertThat(List.of(sums.of(question), sums.of(question), sums.of(question)))
                .containsExactly(6, 6, 6);
        assertThat(asked).hasSize(1);
    }

    @Test
    void onlyTheLatestQuestionIsRemembered() {
        List<Integer> one = List.of(1, 2, 3);
        List<Integer> other = List.of(4, 5);

        assertThat(List.of(sums.of(one), sums.of(other), sums.of(one))).containsExactly(6, 9, 6);
        assertThat(asked).containsExactly(one, other, one);
    }

    @Test
    void anEqualQuestionThatIsAnotherObjectIsAnsweredAgain() {
        assertThat(sums.of(new ArrayList<>(List.of(7)))).isEqualTo(7);
        assertThat(sums.of(new ArrayList<>(List.of(7)))).isEqualTo(7);
        assertThat(asked).hasSize(2);
    }

    @Test
    void eachThreadHasALatestQuestionOfItsOwn() throws InterruptedException {
        List<Integer> mine = List.of(1);
        List<Integer> others = List.of(2);
        sums.of(mine);
        var other = new Thread(() -> sums.of(others));
        other.start();
        other.join();

        assertThat(sums.of(mine)).isEqualTo(1);
        assertThat(asked).containsExactly(mine, others);
    }
}

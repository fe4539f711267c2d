package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.spanroom.model.Line;

/** Heights worked by hand. */
class ProfileTest {
    private static final Line HILL = Line.ofXyz(0, 0, 10, 40, 0, 14, 100, 0, 8);

    @Test
    void heightsBetweenKnotsLieOnTheGradeAndBeyondTheEndsAreThoseOfTheEnds() {
        Profile hill = Profile.of(HILL, 0.15);

        assertThat(hill.heightAt(10)).isCloseTo(11, within(1e-12));
        assertThat(hill.heightAt(70)).isCloseTo(11, within(1e-12));
        assertThat(hill.heightAt(40)).isEqualTo(14);
        assertThat(hill.heightAt(-5)).isEqualTo(10);
        assertThat(hill.heightAt(105)).isEqualTo(8);
    }

    /** A quarter of a meter off the straight grade, to the bit. */
    @Test
    void whatLiesJustWithinTheToleranceIsNoChangeOfGrade() {
        Line bump = Line.ofXyz(0, 0, 0, 10, 0, 0.25, 20, 0, 0);

        assertThat(Profile.of(bump, 0.25).size()).isEqualTo(2);
        assertThat(Profile.of(bump, 0.24).size()).isEqualTo(3);
    }

    @Test
    void lineWithoutElevationsIsLevel() {
        Profile level = Profile.of(Line.ofXy(0, 0, 10, 0), 0.15);

        assertThat(level.isLevel()).isTrue();
        assertThat(level.heightAt(5)).isZero();
    }
}

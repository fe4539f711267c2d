package org.spanroom.pull;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Span;
import org.spanroom.model.pull.PullAssessment;

/** The pulls of three innerducts out of one span with two bends, from both ends, in three states of friction. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class PullAssessorBench {
    private final PullAssessor assessor = new PullAssessor(ShippedConfig.get().pull());
    private final Span span = PullCase.span(
            PullCase.ductWith(
                    PullCase.exampleInnerduct("i1"), PullCase.exampleInnerduct("i2"), PullCase.exampleInnerduct("i3")),
            150);
    private final Bends bends = PullCase.bends(40, 45, 1.5, 110, 60, 1.5);

    /** One span. */
    @Benchmark
    public PullAssessment assess() {
        return assessor.assess(span, bends);
    }
}

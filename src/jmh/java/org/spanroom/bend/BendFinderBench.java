package org.spanroom.bend;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Line;
import org.spanroom.model.bend.Bends;

/** Finding the bends of a span: two right-angled corners drawn as arcs, with noise, in so many vertices. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class BendFinderBench {
    private final BendFinder finder = new BendFinder(ShippedConfig.get().bend());

    /** Vertices of the line. */
    @Param({"2", "3", "5", "6", "20", "27", "200"})
    public int vertices;

    private Line line;

    /** Draws the line. */
    @Setup
    public void draw() {
        var random = new Random(1);
        double[] xy = new double[2 * vertices];
        double x = 0;
        double y = 0;
        for (int i = 0; i < vertices; i++) {
            double share = (double) i / (vertices - 1);
            double heading = share < 0.45 ? 0 : share > 0.55 ? Math.PI / 2 : (share - 0.45) / 0.1 * Math.PI / 2;
            x += 120.0 / vertices * Math.cos(heading);
            y += 120.0 / vertices * Math.sin(heading);
            xy[2 * i] = x + 0.02 * random.nextGaussian();
            xy[2 * i + 1] = y + 0.02 * random.nextGaussian();
        }
        line = Line.ofXy(xy);
    }

    /** One span. */
    @Benchmark
    public Bends find() {
        return finder.find(line, 100);
    }
}

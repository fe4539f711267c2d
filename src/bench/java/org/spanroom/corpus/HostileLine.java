package org.spanroom.corpus;

import java.util.Random;
import org.spanroom.model.Line;

/** Lines of any number of vertices that make a finder of bends work hard, each in its own way. The same line each time. */
public enum HostileLine {
    ZIGZAG {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> pen.place(vertex, vertex % 2));
        }
    },

    NOISY_STRAIGHT {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> pen.place(pen.unevenM(), pen.noiseM()));
        }
    },

    SPIRAL {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> {
                double turnRad = 2 * Math.sqrt(vertex);
                pen.polar(0.25 * turnRad, turnRad);
            });
        }
    },

    BACK_AND_FORTH {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> pen.place(10 * (vertex % 2), 0));
        }
    },

    /** As a receiver that alternates between two places, a little off each time. */
    NOISY_BACK_AND_FORTH {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> pen.place(10 * (vertex % 2) + pen.noiseM(), pen.noiseM()));
        }
    },

    ONE_PLACE {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> pen.place(0, 0));
        }
    },

    /** As a receiver that lies still. */
    NOISY_PLACE {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> pen.place(pen.noiseM(), pen.noiseM()));
        }
    },

    EVEN_ARC {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> pen.polar(WIDE_RADIUS_M, 0.5 * vertex / WIDE_RADIUS_M));
        }
    },

    NOISY_ARC {
        @Override
        void draw(Pen pen) {
            pen.drawNoisyArc(WIDE_RADIUS_M);
        }
    },

    /** A ring road, round and round. */
    NOISY_RING {
        @Override
        void draw(Pen pen) {
            pen.drawNoisyArc(RING_RADIUS_M);
        }
    },

    /** Independent normal steps of a meter to each side. */
    RANDOM_WALK {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> pen.step(pen.random.nextGaussian(), pen.random.nextGaussian()));
        }
    },

    /** Steps of a meter whose direction drifts. */
    DRIFTING_HEADING {
        @Override
        void draw(Pen pen) {
            double[] headingRad = {0};
            pen.draw(vertex -> {
                headingRad[0] += 0.1 * pen.random.nextGaussian();
                pen.step(Math.cos(headingRad[0]), Math.sin(headingRad[0]));
            });
        }
    },

    /** Noise that is the same for some vertices in a row, as a receiver's is. */
    DRIFTING_OFFSET {
        @Override
        void draw(Pen pen) {
            double[] offM = {0};
            pen.draw(vertex -> {
                offM[0] = 0.97 * offM[0] + pen.noiseM();
                pen.place(pen.unevenM(), offM[0]);
            });
        }
    },

    /** A wave of 200 m, a meter high. */
    WAVE {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> {
                double alongM = pen.unevenM();
                pen.place(alongM, Math.sin(alongM * 2 * Math.PI / 200) + pen.noiseM());
            });
        }
    },

    /** Corners to the left and to the right in turn. */
    STAIRS {
        @Override
        void draw(Pen pen) {
            pen.draw(vertex -> pen.place(3.0 * (vertex + 1 - (vertex + 1) % 2) / 2, 3.0 * (vertex - vertex % 2) / 2));
        }
    };

    private static final double NOISE_M = 0.05;
    private static final double WIDE_RADIUS_M = 50_000;
    private static final double RING_RADIUS_M = 1000;

    /** What draws one vertex. */
    @FunctionalInterface
    interface Stroke {
        void draw(int vertex);
    }

    /** Places vertex after vertex. */
    static final class Pen {
        final Random random = new Random(5);
        private final double[] xy;
        private int vertex;
        private double alongM;

        Pen(int vertices) {
            this.xy = new double[2 * vertices];
        }

        void draw(Stroke stroke) {
            for (vertex = 0; vertex < xy.length / 2; vertex++) {
                stroke.draw(vertex);
            }
        }

        /** Draws vertices unevenly apart about an arc. */
        void drawNoisyArc(double radiusM) {
            draw(number -> {
                double turnRad = unevenM() / radiusM;
                polar(radiusM + noiseM(), turnRad);
            });
        }

        /** Returns the distance after another step of 0.1 to 1 m. */
        double unevenM() {
            alongM += 0.1 + 0.9 * random.nextDouble();
            return alongM;
        }

        double noiseM() {
            return NOISE_M * random.nextGaussian();
        }

        void place(double xM, double yM) {
            xy[2 * vertex] = xM;
            xy[2 * vertex + 1] = yM;
        }

        void polar(double radiusM, double turnRad) {
            place(radiusM * Math.sin(turnRad), radiusM * Math.cos(turnRad));
        }

        /** Places the vertex at a distance from the one before it. */
        void step(double xM, double yM) {
            place(vertex == 0 ? 0 : xy[2 * vertex - 2] + xM, vertex == 0 ? 0 : xy[2 * vertex - 1] + yM);
        }
    }

    abstract void draw(Pen pen);

    /** Returns the line in meters. */
    public Line line(int vertices) {
        var pen = new Pen(vertices);
        draw(pen);
        return Line.ofXy(pen.xy);
    }
}

package org.spanroom.input.layer;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.spanroom.input.layer.SourceGeometry.Kind;

/**
 * The vertices of one geometry while it is read, packed, in parts; used again for the next one, because a layer has
 * millions of features and their vertices should be copied once.
 */
public final class VertexBuffer {
    /** More than any real feature has; keeps the ordinates of one feature within one array. */
    static final int MOST_VERTICES = 100_000_000;

    private static final int STRIDE = 3;

    private double[] ordinates = new double[STRIDE * 256];
    private int vertices;
    private int heights;
    private int[] partEnds = new int[16];
    private int parts;
    private final BitSet polygonStarts = new BitSet();
    private boolean nextPartStartsPolygon = true;

    public void clear() {
        vertices = 0;
        heights = 0;
        parts = 0;
        polygonStarts.clear();
        nextPartStartsPolygon = true;
    }

    int vertices() {
        return vertices;
    }

    /** Adds a vertex to the part at hand; a height that is no number is treated as none. */
    public void add(double x, double y, double z) throws FeatureFault {
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            throw FeatureFault.badCoordinate("vertex " + (vertices + 1) + " is " + x + ", " + y);
        }
        if (vertices == MOST_VERTICES) {
            throw FeatureFault.unreadable("more than " + MOST_VERTICES + " vertices in one feature");
        }
        int at = STRIDE * vertices++;
        if (at == ordinates.length) {
            ordinates = Arrays.copyOf(ordinates, Math.min(2 * at, STRIDE * MOST_VERTICES));
        }
        ordinates[at] = x;
        ordinates[at + 1] = y;
        ordinates[at + 2] = z;
        if (Double.isFinite(z)) {
            heights++;
        }
    }

    /** Ends the part at hand; a part without vertices leaves no trace. */
    public void endPart() {
        if (vertices == partStart(parts)) {
            return;
        }
        if (parts == partEnds.length) {
            partEnds = Arrays.copyOf(partEnds, 2 * parts);
        }
        polygonStarts.set(parts, nextPartStartsPolygon);
        nextPartStartsPolygon = false;
        partEnds[parts++] = vertices;
    }

    /** Lets the next part be the outer ring of a further polygon. */
    public void startPolygon() {
        nextPartStartsPolygon = true;
    }

    /** Returns true if some vertices have a height and others have none, so that {@code build} leaves all heights out. */
    boolean heightsIncomplete() {
        return heights > 0 && heights < vertices;
    }

    /** Returns the parts as a geometry of that kind, without lines of one vertex and rings of fewer than three. */
    public SourceGeometry build(Kind kind) {
        if (kind == Kind.OTHER) {
            return new SourceGeometry(Kind.OTHER, List.of(), false, List.of());
        }
        boolean hasZ = heights > 0 && heights == vertices;
        List<double[]> built;
        List<Boolean> starts = List.of();
        if (kind == Kind.POLYGONS) {
            starts = new ArrayList<>();
            built = rings(hasZ, starts);
        } else {
            built = kind == Kind.POINTS ? points(hasZ) : lines(hasZ);
        }
        return built.isEmpty()
                ? new SourceGeometry(Kind.NONE, List.of(), false, List.of())
                : new SourceGeometry(kind, built, hasZ, starts);
    }

    /** Returns how many parts {@code build} leaves out for having too few vertices. */
    int tooShort(Kind kind) {
        int fewest = kind == Kind.LINES ? 2 : kind == Kind.POLYGONS ? 3 : 1;
        int count = 0;
        for (int part = 0; part < parts; part++) {
            count += partEnds[part] - partStart(part) < fewest ? 1 : 0;
        }
        return count;
    }

    private List<double[]> points(boolean hasZ) {
        if (vertices == 1) {
            return List.of(packed(0, 1, hasZ));
        }
        var built = new ArrayList<double[]>(vertices);
        for (int vertex = 0; vertex < vertices; vertex++) {
            built.add(packed(vertex, vertex + 1, hasZ));
        }
        return built;
    }

    private List<double[]> lines(boolean hasZ) {
        if (parts == 1 && partEnds[0] >= 2) {
            return List.of(packed(0, partEnds[0], hasZ));
        }
        var built = new ArrayList<double[]>(parts);
        for (int part = 0; part < parts; part++) {
            if (partEnds[part] - partStart(part) >= 2) {
                built.add(packed(partStart(part), partEnds[part], hasZ));
            }
        }
        return built;
    }

    /** Leaves out the holes of an outer ring that is left out. */
    private List<double[]> rings(boolean hasZ, List<Boolean> starts) {
        var built = new ArrayList<double[]>(parts);
        boolean polygonLeftOut = false;
        for (int part = 0; part < parts; part++) {
            boolean outer = polygonStarts.get(part);
            boolean leftOut = partEnds[part] - partStart(part) < 3;
            if (outer) {
                polygonLeftOut = leftOut;
            }
            if (!leftOut && !polygonLeftOut) {
                built.add(packed(partStart(part), partEnds[part], hasZ));
                starts.add(outer);
            }
        }
        return built;
    }

    private int partStart(int part) {
        return part == 0 ? 0 : partEnds[part - 1];
    }

    private double[] packed(int from, int to, boolean hasZ) {
        if (hasZ) {
            return Arrays.copyOfRange(ordinates, STRIDE * from, STRIDE * to);
        }
        var xy = new double[2 * (to - from)];
        for (int vertex = from, at = 0; vertex < to; vertex++) {
            xy[at++] = ordinates[STRIDE * vertex];
            xy[at++] = ordinates[STRIDE * vertex + 1];
        }
        return xy;
    }
}

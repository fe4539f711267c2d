package org.spanroom.plain;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.referencing.CRS;
import org.geotools.referencing.CRS.AxisOrder;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.linearref.LengthIndexedLine;

/**
 * What a good engineer writes in a day to cut routes at vaults: Jackson reads, GeoTools projects, a JTS tree finds vaults, JTS cuts, on all
 * cores, all in memory, and the spans go out as GeoJSON with the attributes of their routes. No engineering, no findings, no ranking.
 *
 * <p>Usage: {@code PlainCut ROUTES VAULTS OUT}.
 */
public final class PlainCut {
    private static final double TOLERANCE_M = 2;
    private static final int CHUNK = 2048;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private PlainCut() {}

    public static void main(String[] args) throws Exception {
        long begun = System.nanoTime();
        var routesFile = new PlainReader(Path.of(args[0]));
        List<PlainFeature> vaults = new PlainReader(Path.of(args[1])).read();
        List<PlainFeature> routes = routesFile.read();
        begun = report("read", begun);
        MathTransform toPlane = toPlane(routes.get(0).coordinates()[0]);
        project(vaults, toPlane);
        project(routes, toPlane);
        begun = report("project", begun);
        var tree = new STRtree();
        for (PlainFeature vault : vaults) {
            tree.insert(new Envelope(vault.plane()[0]), vault);
        }
        tree.build();
        begun = report("index", begun);
        long[] found = write(routes, tree, Path.of(args[2]));
        report("match, cut and write", begun);
        System.out.printf("%d spans of %.3f km%n", found[0], found[1] / 1e6);
    }

    /** Returns the transform to the UTM zone of a place. */
    private static MathTransform toPlane(Coordinate lonLat) throws Exception {
        int zone = (int) Math.floor((lonLat.x + 180) / 6) + 1;
        var utm = CRS.decode("EPSG:" + (lonLat.y < 0 ? 32700 + zone : 32600 + zone), true);
        var degrees = CRS.decode("EPSG:4326", true);
        if (CRS.getAxisOrder(degrees) != AxisOrder.EAST_NORTH) {
            throw new IllegalStateException("axes of EPSG:4326");
        }
        return CRS.findMathTransform(degrees, utm, true);
    }

    private static void project(List<PlainFeature> features, MathTransform toPlane) {
        IntStream.range(0, (features.size() + CHUNK - 1) / CHUNK).parallel().forEach(chunk -> {
            int end = Math.min(features.size(), (chunk + 1) * CHUNK);
            for (int i = chunk * CHUNK; i < end; i++) {
                features.get(i).project(toPlane);
            }
        });
    }

    /** Returns the number of spans and their length, mm. */
    private static long[] write(List<PlainFeature> routes, STRtree tree, Path file) throws Exception {
        int threads = Runtime.getRuntime().availableProcessors();
        var pool = Executors.newFixedThreadPool(threads);
        long[] found = new long[2];
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
            out.write("{\"type\":\"FeatureCollection\",\"features\":[\n".getBytes(StandardCharsets.UTF_8));
            Deque<Future<PlainWriter>> due = new ArrayDeque<>();
            for (int from = 0; from < routes.size(); from += CHUNK) {
                List<PlainFeature> some = routes.subList(from, Math.min(routes.size(), from + CHUNK));
                due.add(pool.submit(() -> cut(some, tree)));
                if (due.size() > 2 * threads) {
                    append(due.remove(), out, found);
                }
            }
            while (!due.isEmpty()) {
                append(due.remove(), out, found);
            }
            out.write("\n]}\n".getBytes(StandardCharsets.UTF_8));
        } finally {
            pool.shutdown();
        }
        return found;
    }

    private static void append(Future<PlainWriter> done, OutputStream out, long[] found)
            throws IOException, InterruptedException, ExecutionException {
        PlainWriter chunk = done.get();
        if (found[0] > 0 && chunk.spans() > 0) {
            out.write(",\n".getBytes(StandardCharsets.UTF_8));
        }
        chunk.writeTo(out);
        found[0] += chunk.spans();
        found[1] += Math.round(chunk.lengthM() * 1000);
    }

    private record Cut(double atM, PlainFeature vault) {}

    private static PlainWriter cut(List<PlainFeature> routes, STRtree tree) throws IOException {
        var writer = new PlainWriter();
        for (PlainFeature route : routes) {
            Geometry line = FACTORY.createLineString(route.plane());
            Envelope near = line.getEnvelopeInternal();
            near.expandBy(TOLERANCE_M);
            var along = new LengthIndexedLine(line);
            var cuts = new ArrayList<Cut>();
            for (Object found : tree.query(near)) {
                var vault = (PlainFeature) found;
                if (line.distance(FACTORY.createPoint(vault.plane()[0])) <= TOLERANCE_M) {
                    cuts.add(new Cut(along.project(vault.plane()[0]), vault));
                }
            }
            cuts.sort((a, b) -> Double.compare(a.atM(), b.atM()));
            var alongDegrees = new LengthIndexedLine(FACTORY.createLineString(route.coordinates()));
            for (int i = 1; i < cuts.size(); i++) {
                Cut from = cuts.get(i - 1);
                Cut to = cuts.get(i);
                Coordinate[] plane = along.extractLine(from.atM(), to.atM()).getCoordinates();
                // The line in degrees is cut at the same shares of it, nearest to the vaults.
                Coordinate[] degrees = alongDegrees
                        .extractLine(
                                alongDegrees.project(from.vault().coordinates()[0]),
                                alongDegrees.project(to.vault().coordinates()[0]))
                        .getCoordinates();
                double lengthM = FACTORY.createLineString(plane).getLength();
                writer.add(route, from.vault(), to.vault(), degrees, lengthM);
            }
        }
        writer.end();
        return writer;
    }

    private static long report(String stage, long begun) {
        long now = System.nanoTime();
        System.err.printf("%-22s %6.2f s%n", stage, (now - begun) / 1e9);
        return now;
    }
}

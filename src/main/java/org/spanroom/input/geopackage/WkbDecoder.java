package org.spanroom.input.geopackage;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.jspecify.annotations.Nullable;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.SourceGeometry.Kind;
import org.spanroom.input.layer.VertexBuffer;
import org.spanroom.model.Counted;

/**
 * A geometry of a GeoPackage taken apart: the GeoPackage binary header (OGC 12-128r19, clause 2.1.3) and the well-known
 * binary after it (ISO 13249-3; OGC 06-103r4), with the codes for Z and M of ISO and of the older extended form. Counts are
 * checked against the bytes that are there before they are used.
 */
public final class WkbDecoder {
    private static final int DEEPEST = 16;
    private static final int EXTENDED_Z = 0x80000000;
    private static final int EXTENDED_M = 0x40000000;
    private static final int EXTENDED_SRID = 0x20000000;
    private static final int SRS_ID_AT = 4;
    private static final int[] ENVELOPE_BYTES = {0, 32, 48, 48, 64};
    private static final String[] NAMES = {
        "Geometry", "Point", "LineString", "Polygon", "MultiPoint", "MultiLineString", "MultiPolygon",
        "GeometryCollection", "CircularString", "CompoundCurve", "CurvePolygon", "MultiCurve", "MultiSurface", "Curve",
        "Surface", "PolyhedralSurface", "TIN", "Triangle"
    };

    private final VertexBuffer vertices = new VertexBuffer();
    private @Nullable Kind kind;
    private String typeName = "null";
    private ByteBuffer bytes = ByteBuffer.allocate(0);
    private int srsId;

    /** Reads the value of a geometry column; null where the feature has none. */
    public void decode(byte @Nullable [] blob) throws FeatureFault {
        vertices.clear();
        kind = null;
        typeName = "null";
        srsId = 0;
        if (blob == null) {
            return;
        }
        bytes = ByteBuffer.wrap(blob);
        try {
            if (!readHeader(blob)) {
                kind = Kind.OTHER;
                return;
            }
            typeName = geometry(1);
        } catch (BufferUnderflowException e) {
            throw FeatureFault.unreadable(
                    "its geometry is incomplete; it ends after " + Counted.of(blob.length, "byte"));
        }
    }

    public VertexBuffer vertices() {
        return vertices;
    }

    public Kind kind() {
        return kind == null ? Kind.NONE : kind;
    }

    /** Returns the reference system that the header names; 0 or -1 where it names none. */
    int srsId() {
        return srsId;
    }

    String typeName() {
        return typeName;
    }

    /** Goes past the header; returns false if the geometry is of an extension that only its authors can read. */
    private boolean readHeader(byte[] blob) throws FeatureFault {
        if (blob.length < 8 || blob[0] != 'G' || blob[1] != 'P') {
            throw FeatureFault.unreadable("its geometry does not start with a GeoPackage header");
        }
        int flags = blob[3];
        srsId = ByteBuffer.wrap(blob)
                .order((flags & 1) == 0 ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN)
                .getInt(SRS_ID_AT);
        int envelope = (flags >> 1) & 7;
        if (envelope >= ENVELOPE_BYTES.length) {
            throw FeatureFault.unreadable("its geometry has an envelope of unknown kind " + envelope);
        }
        if ((flags & 0x20) != 0) {
            typeName = "extended geometry";
            return false;
        }
        if (blob.length < 8 + ENVELOPE_BYTES[envelope]) {
            throw new BufferUnderflowException();
        }
        bytes.position(8 + ENVELOPE_BYTES[envelope]);
        return true;
    }

    private String geometry(int depth) throws FeatureFault {
        if (depth > DEEPEST) {
            throw FeatureFault.unreadable("geometries are nested more than " + DEEPEST + " deep");
        }
        byte order = bytes.get();
        if (order != 0 && order != 1) {
            throw FeatureFault.unreadable("a geometry has the byte order " + order + ", which is neither 0 nor 1");
        }
        bytes.order(order == 1 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        int code = bytes.getInt();
        int iso = code & 0x1FFFFFFF;
        boolean hasZ = (code & EXTENDED_Z) != 0 || iso / 1000 == 1 || iso / 1000 == 3;
        boolean hasM = (code & EXTENDED_M) != 0 || iso / 1000 == 2 || iso / 1000 == 3;
        if ((code & EXTENDED_SRID) != 0) {
            bytes.getInt();
        }
        int type = iso % 1000;
        if (iso >= 4000 || type >= NAMES.length) {
            throw FeatureFault.unreadable("its geometry has the unknown type " + Integer.toUnsignedString(code));
        }
        body(type, hasZ, hasM, depth);
        return NAMES[type] + (hasZ ? "Z" : "") + (hasM ? "M" : "");
    }

    private void body(int type, boolean hasZ, boolean hasM, int depth) throws FeatureFault {
        int stride = Double.BYTES * (2 + (hasZ ? 1 : 0) + (hasM ? 1 : 0));
        switch (type) {
            case 1 -> {
                demand(1, stride);
                point(hasZ, stride);
            }
            case 2 -> {
                vertices(Kind.LINES, hasZ, stride);
            }
            case 3 -> {
                vertices.startPolygon();
                int rings = count(4);
                for (int ring = 0; ring < rings; ring++) {
                    vertices(Kind.POLYGONS, hasZ, stride);
                }
            }
            case 4, 5, 6, 7 -> {
                int members = count(5);
                for (int member = 0; member < members && kind != Kind.OTHER; member++) {
                    geometry(depth + 1);
                }
            }
            default -> kind = Kind.OTHER; // a curve or surface; the rest of the geometry is left unread
        }
    }

    /** Reads a point; NaN for both ordinates means an empty one (OGC 12-128r19, clause 2.1.3.1.1). */
    private void point(boolean hasZ, int stride) throws FeatureFault {
        int next = bytes.position() + stride;
        double x = bytes.getDouble();
        double y = bytes.getDouble();
        if (!Double.isNaN(x) || !Double.isNaN(y)) {
            be(Kind.POINTS);
            vertices.add(x, y, hasZ ? bytes.getDouble() : Double.NaN);
            vertices.endPart();
        }
        bytes.position(next);
    }

    private void vertices(Kind found, boolean hasZ, int stride) throws FeatureFault {
        int count = count(stride);
        if (count == 0) {
            return;
        }
        be(found);
        int at = bytes.position();
        for (int vertex = 0; vertex < count; vertex++, at += stride) {
            vertices.add(
                    bytes.getDouble(at),
                    bytes.getDouble(at + Double.BYTES),
                    hasZ ? bytes.getDouble(at + 2 * Double.BYTES) : Double.NaN);
        }
        vertices.endPart();
        bytes.position(at);
    }

    private void be(Kind found) {
        kind = kind == null || kind == found ? found : Kind.OTHER;
    }

    private int count(int bytesEach) throws FeatureFault {
        int count = bytes.getInt();
        if (count < 0) {
            throw FeatureFault.unreadable("its geometry claims " + Integer.toUnsignedString(count) + " members");
        }
        demand(count, bytesEach);
        return count;
    }

    private void demand(int count, int bytesEach) throws FeatureFault {
        if ((long) count * bytesEach > bytes.remaining()) {
            throw FeatureFault.unreadable("its geometry claims " + Counted.of(count, "member") + ", more than its "
                    + Counted.of(bytes.remaining(), "byte") + " can hold");
        }
    }
}

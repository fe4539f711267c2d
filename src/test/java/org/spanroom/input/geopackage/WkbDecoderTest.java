package org.spanroom.input.geopackage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBWriter;
import org.locationtech.jts.io.WKTReader;
import org.spanroom.input.ReadLayer;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.SourceGeometry.Kind;

/** GeoPackage binary (OGC 12-128r19, clause 2.1.3) around well-known binary that JTS writes. */
class WkbDecoderTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "POINT (1 2)|POINTS [1.0, 2.0]",
                "POINT Z (1 2 3)|POINTS Z [1.0, 2.0, 3.0]",
                "POINT EMPTY|NONE",
                "LINESTRING (1 2, 3 4)|LINES [1.0, 2.0, 3.0, 4.0]",
                "LINESTRING Z (1 2 9, 3 4 8)|LINES Z [1.0, 2.0, 9.0, 3.0, 4.0, 8.0]",
                "LINESTRING EMPTY|NONE",
                "POLYGON ((0 0, 9 0, 9 9, 0 0), (5 1, 6 1, 6 2, 5 1))"
                        + "|POLYGONS +[0.0, 0.0, 9.0, 0.0, 9.0, 9.0, 0.0, 0.0] [5.0, 1.0, 6.0, 1.0, 6.0, 2.0, 5.0, 1.0]",
                "MULTIPOINT ((1 2), (3 4))|POINTS [1.0, 2.0] [3.0, 4.0]",
                "MULTILINESTRING ((1 2, 3 4), (5 6, 7 8))|LINES [1.0, 2.0, 3.0, 4.0] [5.0, 6.0, 7.0, 8.0]",
                "MULTIPOLYGON (((0 0, 1 0, 1 1, 0 0)), ((2 2, 3 2, 3 3, 2 2)))"
                        + "|POLYGONS +[0.0, 0.0, 1.0, 0.0, 1.0, 1.0, 0.0, 0.0] +[2.0, 2.0, 3.0, 2.0, 3.0, 3.0, 2.0, 2.0]",
                "MULTILINESTRING EMPTY|NONE",
                "GEOMETRYCOLLECTION (LINESTRING (1 2, 3 4), LINESTRING (5 6, 7 8))"
                        + "|LINES [1.0, 2.0, 3.0, 4.0] [5.0, 6.0, 7.0, 8.0]",
                "GEOMETRYCOLLECTION (LINESTRING (1 2, 3 4), POINT EMPTY)|LINES [1.0, 2.0, 3.0, 4.0]",
                "GEOMETRYCOLLECTION (POINT (1 2), LINESTRING (5 6, 7 8))|OTHER"
            })
    void geometriesAreReadInEveryDialect(String wkt, String expected) throws ParseException, FeatureFault {
        Geometry geometry = new WKTReader().read(wkt);
        boolean flat = !wkt.contains(" Z ");
        for (int order : new int[] {ByteOrderValues.BIG_ENDIAN, ByteOrderValues.LITTLE_ENDIAN}) {
            for (boolean withSrid : new boolean[] {false, true}) {
                byte[] wkb = new WKBWriter(flat ? 2 : 3, order, withSrid).write(geometry);
                for (int envelope = 0; envelope <= 4; envelope++) {
                    assertThat(read(blob(envelope << 1, wkb))).isEqualTo(expected);
                    assertThat(read(blob(envelope << 1 | 1, iso(wkb, withSrid))))
                            .isEqualTo(expected);
                }
            }
        }
    }

    /** Codes of ISO 13249-3: 2001 for a point with a measure, 3002 for a line with height and measure. */
    @Test
    void measuresAreDropped() throws FeatureFault {
        ByteBuffer pointM = ByteBuffer.allocate(29).put((byte) 0).putInt(2001);
        ByteBuffer lineZm = ByteBuffer.allocate(73).put((byte) 0).putInt(3002).putInt(2);
        for (double value : new double[] {1, 2, 7}) {
            pointM.putDouble(value);
        }
        for (double value : new double[] {1, 2, 3, 7, 4, 5, 6, 8}) {
            lineZm.putDouble(value);
        }

        assertThat(read(blob(0, pointM.array()))).isEqualTo("POINTS [1.0, 2.0]");
        assertThat(read(blob(0, lineZm.array()))).isEqualTo("LINES Z [1.0, 2.0, 3.0, 4.0, 5.0, 6.0]");
    }

    @ParameterizedTest
    @ValueSource(ints = {8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 1008, 2010, 3012})
    void curvesAndSurfacesAreOfAnotherKind(int code) throws FeatureFault {
        var decoder = new WkbDecoder();
        decoder.decode(blob(1, ByteBuffer.allocate(9).put((byte) 0).putInt(code).array()));

        assertThat(decoder.kind()).isEqualTo(Kind.OTHER);
        assertThat(decoder.typeName()).isNotEqualTo("null");
    }

    @Test
    void noBlobAndExtendedBlobAreTold() throws FeatureFault {
        assertThat(read(null)).isEqualTo("NONE");
        assertThat(read(blob(0x21, new byte[20]))).isEqualTo("OTHER");
    }

    @Test
    void everyTruncationAndLyingCountIsAFault() throws ParseException {
        byte[] whole = blob(
                1,
                new WKBWriter(2, ByteOrderValues.LITTLE_ENDIAN)
                        .write(new WKTReader().read("MULTILINESTRING ((1 2, 3 4))")));
        for (int length = 0; length < whole.length; length++) {
            byte[] cut = java.util.Arrays.copyOf(whole, length);
            assertThatThrownBy(() -> read(cut)).as("%d bytes", length).isInstanceOf(FeatureFault.class);
        }
        for (int at : List.of(13, 22)) {
            for (int count : new int[] {1_000_000_000, -1, Integer.MIN_VALUE}) {
                byte[] lying = whole.clone();
                ByteBuffer.wrap(lying).order(ByteOrder.LITTLE_ENDIAN).putInt(at, count);
                assertThatThrownBy(() -> read(lying)).isInstanceOf(FeatureFault.class);
            }
        }
    }

    @Test
    void nestingWithoutEndIsAFault() {
        ByteBuffer nested = ByteBuffer.allocate(9 * 100_000);
        while (nested.hasRemaining()) {
            nested.put((byte) 0).putInt(7).putInt(1);
        }

        assertThatThrownBy(() -> read(blob(1, nested.array())))
                .isInstanceOf(FeatureFault.class)
                .hasMessageContaining("nested");
    }

    private static String read(byte[] blob) throws FeatureFault {
        var decoder = new WkbDecoder();
        decoder.decode(blob);
        return ReadLayer.text(decoder.vertices().build(decoder.kind()));
    }

    private static byte[] blob(int flags, byte[] wkb) {
        int[] envelopes = {0, 32, 48, 48, 64};
        return ByteBuffer.allocate(8 + envelopes[flags >> 1 & 7] + wkb.length)
                .put(new byte[] {'G', 'P', 0, (byte) flags})
                .position(8 + envelopes[flags >> 1 & 7])
                .put(wkb)
                .array();
    }

    /** Turns the extended codes of the outermost geometry, as JTS writes them, into those of ISO. */
    private static byte[] iso(byte[] wkb, boolean withSrid) {
        ByteBuffer bytes = ByteBuffer.wrap(wkb.clone());
        bytes.order(wkb[0] == 1 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        int code = bytes.getInt(1);
        if (!withSrid && (code & 0x80000000) != 0) {
            bytes.putInt(1, (code & 0xFF) + 1000);
        }
        return bytes.array();
    }
}

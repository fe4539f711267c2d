package org.spanroom.output.sheet;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import java.util.Map;

/** Whether a reader finds a code in a picture of it: a pattern of data may look like one of the three marks that a reader looks for. */
final class QrReading {
    /** Pixels of a picture for each module, as cameras nearer and farther see them. */
    private static final double[] PIXELS_OF_A_MODULE = {2.6, 3.3, 4.1, 6};

    private static final int WHITE = 0xffffff;
    private static final Map<DecodeHintType, Object> HINTS = Map.of(DecodeHintType.TRY_HARDER, true);

    private QrReading() {}

    /**
     * Returns whether a code is found at every size.
     *
     * @param quiet white modules around it
     */
    static boolean isFound(ByteMatrix modules, int quiet) {
        for (double pixels : PIXELS_OF_A_MODULE) {
            if (!isFound(picture(modules, quiet, pixels))) {
                return false;
            }
        }
        return true;
    }

    private static boolean isFound(RGBLuminanceSource picture) {
        try {
            new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(picture)), HINTS);
            return true;
        } catch (ReaderException notFound) {
            return false;
        }
    }

    private static RGBLuminanceSource picture(ByteMatrix modules, int quiet, double pixelsOfAModule) {
        int size = (int) Math.ceil((modules.getWidth() + 2 * quiet) * pixelsOfAModule);
        int[] pixels = new int[size * size];
        for (int y = 0; y < size; y++) {
            for (int x = 0; x < size; x++) {
                int column = (int) (x / pixelsOfAModule) - quiet;
                int row = (int) (y / pixelsOfAModule) - quiet;
                pixels[y * size + x] = isDark(modules, column, row) ? 0 : WHITE;
            }
        }
        return new RGBLuminanceSource(size, size, pixels);
    }

    private static boolean isDark(ByteMatrix modules, int column, int row) {
        return column >= 0
                && row >= 0
                && column < modules.getWidth()
                && row < modules.getHeight()
                && modules.get(column, row) == 1;
    }
}

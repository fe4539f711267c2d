package org.spanroom.output.sheet;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import com.google.zxing.qrcode.encoder.QRCode;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.spanroom.model.fieldwork.SheetCode;

/** Draws the code of a page as a QR code (ISO/IEC 18004), which cameras read from paper. */
final class SheetQr {
    /** Cameras need so much white around it, in modules. */
    private static final int QUIET = 4;

    /** More would make modules smaller than a quarter of a millimeter, which a printer and a telephone do not keep apart. */
    private static final int MOST_MODULES = 73;

    /** Up to so many modules a code bears more damage; one of more uses its room for its text. */
    private static final int FEW_MODULES = 53;

    private static final Map<EncodeHintType, Object> HINTS = Map.of(EncodeHintType.CHARACTER_SET, "UTF-8");

    private SheetQr() {}

    /** Returns the drawing without a size of its own; empty for a code that is too long to be read from paper. */
    static Optional<String> draw(SheetCode code) {
        return encode(code, ErrorCorrectionLevel.M, FEW_MODULES)
                .or(() -> encode(code, ErrorCorrectionLevel.L, MOST_MODULES))
                .map(SheetQr::svg);
    }

    /** By the mask that the standard prefers, or another one where a reader does not find that code. */
    private static Optional<ByteMatrix> encode(SheetCode code, ErrorCorrectionLevel level, int mostModules) {
        try {
            ByteMatrix preferred = Encoder.encode(code.text(), level, HINTS).getMatrix();
            if (preferred.getWidth() > mostModules) {
                return Optional.empty();
            }
            return Optional.of(
                    QrReading.isFound(preferred, QUIET)
                            ? preferred
                            : found(code, level).orElse(preferred));
        } catch (WriterException tooLong) {
            return Optional.empty();
        }
    }

    private static Optional<ByteMatrix> found(SheetCode code, ErrorCorrectionLevel level) throws WriterException {
        for (int mask = 0; mask < QRCode.NUM_MASK_PATTERNS; mask++) {
            ByteMatrix modules = masked(code, level, mask);
            if (QrReading.isFound(modules, QUIET)) {
                return Optional.of(modules);
            }
        }
        return Optional.empty();
    }

    private static ByteMatrix masked(SheetCode code, ErrorCorrectionLevel level, int mask) throws WriterException {
        var hints = new EnumMap<EncodeHintType, Object>(HINTS);
        hints.put(EncodeHintType.QR_MASK_PATTERN, mask);
        return Encoder.encode(code.text(), level, hints).getMatrix();
    }

    private static String svg(ByteMatrix modules) {
        int size = modules.getWidth() + 2 * QUIET;
        var path = new StringBuilder();
        for (int y = 0; y < modules.getHeight(); y++) {
            for (int x = 0; x < modules.getWidth(); x++) {
                int length = run(modules, x, y);
                if (length > 0) {
                    path.append('M').append(x + QUIET).append(' ').append(y + QUIET);
                    path.append('h')
                            .append(length)
                            .append("v1h-")
                            .append(length)
                            .append('z');
                    x += length;
                }
            }
        }
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + size + "\" height=\"" + size + "\" viewBox=\"0 0 "
                + size + " " + size + "\" class=\"qr\" shape-rendering=\"crispEdges\"><path fill=\"#000000\" d=\""
                + path
                + "\"/></svg>";
    }

    /** Returns how many dark modules follow one another from a place on. */
    private static int run(ByteMatrix modules, int from, int y) {
        int to = from;
        while (to < modules.getWidth() && modules.get(to, y) == 1) {
            to++;
        }
        return to - from;
    }
}

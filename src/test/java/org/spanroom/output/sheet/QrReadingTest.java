package org.spanroom.output.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A code of the demo in whose data the library's own reader sees a mark, by the mask that the standard prefers and not by another. */
class QrReadingTest {
    private static final String CODE = "SR1|2bf94268|B68:V2-1003:V2-1010|B68-3:V2-1003:V2-1010|6";
    private static final int QUIET = 4;

    @Test
    void aCodeThatAReaderDoesNotFindIsNoticed() throws WriterException {
        assertThat(QrReading.isFound(modules(Map.of(EncodeHintType.CHARACTER_SET, "UTF-8")), QUIET))
                .isFalse();
        assertThat(QrReading.isFound(
                        modules(Map.of(EncodeHintType.CHARACTER_SET, "UTF-8", EncodeHintType.QR_MASK_PATTERN, 0)),
                        QUIET))
                .isTrue();
    }

    private static ByteMatrix modules(Map<EncodeHintType, Object> hints) throws WriterException {
        return Encoder.encode(CODE, ErrorCorrectionLevel.M, hints).getMatrix();
    }
}

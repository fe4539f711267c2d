package org.spanroom.config;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * The text of a config: UTF-8 or UTF-16, with a byte order mark or without, distinguished by the first two bytes as YAML demands (YAML
 * 1.2.2 section 5.2).
 */
final class ConfigText {
    private static final char MARK = '\uFEFF';

    private ConfigText() {}

    static String of(byte[] bytes) throws CharacterCodingException {
        String text = charset(bytes).newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        return !text.isEmpty() && text.charAt(0) == MARK ? text.substring(1) : text;
    }

    private static Charset charset(byte[] bytes) {
        int first = bytes.length < 2 ? -1 : bytes[0] & 0xFF;
        int second = bytes.length < 2 ? -1 : bytes[1] & 0xFF;
        if ((first == 0xFE && second == 0xFF) || (first == 0 && second > 0)) {
            return StandardCharsets.UTF_16BE;
        }
        return (first == 0xFF && second == 0xFE) || (first > 0 && second == 0)
                ? StandardCharsets.UTF_16LE
                : StandardCharsets.UTF_8;
    }
}

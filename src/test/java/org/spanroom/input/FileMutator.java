package org.spanroom.input;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Changes the bytes of a valid file at random, by the seed: blindly, and in the ways that lengths, counts and tokens can be. */
public final class FileMutator {
    private static final int[] WORDS = {
        0,
        1,
        -1,
        2,
        1000,
        Integer.MAX_VALUE,
        Integer.MIN_VALUE,
        0x3FFFFFFF,
        0x7FFFFFF0,
        0x80000002,
        0xC0000003,
        1001,
        3003,
        8,
        17
    };
    private static final double[] NUMBERS = {
        Double.NaN, Double.POSITIVE_INFINITY, -1e39, 1e300, Double.MIN_VALUE, -0.0, 181, 91
    };
    private static final List<String> TOKENS = List.of(
            "null",
            "NaN",
            "-Infinity",
            "1e999",
            "\"",
            "{",
            "}",
            "[",
            "]",
            ",",
            ":",
            "\\u0000",
            "\\ud800",
            "true",
            "[[",
            "]]",
            "\n",
            "\u001e",
            "{}",
            "[]",
            "\"type\":\"Point\",",
            "\"crs\":{},",
            "\"geometry\":null,",
            "9".repeat(400),
            ";",
            "\t",
            "|",
            "\"\"",
            "\r\n",
            "\"features\":[],",
            "//",
            "\uFEFF",
            "0x1",
            "-",
            "1-1/4");

    private FileMutator() {}

    public static byte[] mutated(byte[] bytes, Random random) {
        byte[] changed = random.nextInt(6) == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length)) : bytes.clone();
        for (int change = random.nextInt(6); change >= 0 && changed.length > 0; change--) {
            changed = once(changed, random);
        }
        return changed;
    }

    private static byte[] once(byte[] changed, Random random) {
        int at = random.nextInt(changed.length);
        int length = Math.min(1 + random.nextInt(8), changed.length - at);
        switch (random.nextInt(8)) {
            case 0 -> changed[at] ^= (byte) (1 << random.nextInt(8));
            case 1 -> changed[at] = (byte) random.nextInt(256);
            case 2 -> Arrays.fill(changed, at, at + length, random.nextBoolean() ? (byte) 0xFF : 0);
            case 3 -> System.arraycopy(changed, random.nextInt(changed.length - length + 1), changed, at, length);
            case 4 -> word(changed, random);
            case 5 -> number(changed, random);
            default -> {
                String token = TOKENS.get(random.nextInt(TOKENS.size()));
                return inserted(changed, at, random.nextInt(3) * length, token.getBytes(StandardCharsets.UTF_8));
            }
        }
        return changed;
    }

    /** Lengths and counts are at even places, in either byte order. */
    private static void word(byte[] changed, Random random) {
        if (changed.length >= 4) {
            int at = random.nextInt(changed.length / 2 - 1) * 2;
            buffer(changed, random).putInt(at, WORDS[random.nextInt(WORDS.length)]);
        }
    }

    private static void number(byte[] changed, Random random) {
        if (changed.length >= 8) {
            int at = random.nextInt(changed.length - 7);
            buffer(changed, random).putDouble(at, NUMBERS[random.nextInt(NUMBERS.length)]);
        }
    }

    private static ByteBuffer buffer(byte[] bytes, Random random) {
        return ByteBuffer.wrap(bytes).order(random.nextBoolean() ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
    }

    private static byte[] inserted(byte[] bytes, int at, int replaced, byte[] token) {
        int after = Math.min(bytes.length, at + replaced);
        var out = new ByteArrayOutputStream();
        out.write(bytes, 0, at);
        out.writeBytes(token);
        out.write(bytes, after, bytes.length - after);
        return out.toByteArray();
    }
}

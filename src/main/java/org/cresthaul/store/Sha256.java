package org.cresthaul.store;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4) of bytes, as bytes and in lower-case hexadecimal. */
final class Sha256 {
    private Sha256() {}

    static byte[] of(byte[] bytes, int from, int to) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(bytes, from, to - from);
            return digest.digest();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    static String hex(byte[] hash) {
        return HexFormat.of().formatHex(hash);
    }

    static byte[] parse(String hex) {
        return HexFormat.of().parseHex(hex);
    }

    static boolean isHex(String text) {
        return text.matches("[0-9a-f]{64}");
    }
}

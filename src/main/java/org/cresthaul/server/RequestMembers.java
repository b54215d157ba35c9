package org.cresthaul.server;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;

/**
 * SHA-256 of the members of a request as they were sent: every byte between the colon after the key and the comma or
 * brace that follows the value. A file set into a request byte for byte therefore has the hash of the file.
 */
final class RequestMembers {
    private static final JsonFactory FACTORY = new JsonFactory();

    private RequestMembers() {}

    /**
     * @param body one JSON object in UTF-8, already found to be sound
     * @return hash by key, lower-case hexadecimal
     */
    static Map<String, String> sha256(byte[] body) {
        Map<String, String> hashes = new HashMap<>();
        try (JsonParser parser = FACTORY.createParser(body)) {
            parser.nextToken();
            for (String key = parser.nextFieldName(); key != null; key = parser.nextFieldName()) {
                JsonToken value = parser.nextToken();
                int from = (int) parser.currentTokenLocation().getByteOffset();
                parser.skipChildren();
                if (value.isStructStart()) {
                    int to = (int) parser.currentLocation().getByteOffset();
                    hashes.put(key, sha256(body, widenedLeft(body, from), widenedRight(body, to)));
                }
            }
        } catch (IOException e) {
            throw new IllegalArgumentException("not sound JSON in UTF-8", e);
        }
        return hashes;
    }

    /** The bytes of a member that is an object or a list, as {@link #sha256(byte[])} counts them. */
    static Optional<byte[]> bytes(byte[] body, String key) {
        try (JsonParser parser = FACTORY.createParser(body)) {
            parser.nextToken();
            for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
                JsonToken value = parser.nextToken();
                int from = (int) parser.currentTokenLocation().getByteOffset();
                parser.skipChildren();
                if (name.equals(key) && value.isStructStart()) {
                    int to = (int) parser.currentLocation().getByteOffset();
                    return Optional.of(Arrays.copyOfRange(body, widenedLeft(body, from), widenedRight(body, to)));
                }
            }
            return Optional.empty();
        } catch (IOException e) {
            throw new IllegalArgumentException("not sound JSON in UTF-8", e);
        }
    }

    static int widenedLeft(byte[] body, int from) {
        int i = from;
        while (isBlank(body[i - 1])) {
            i--;
        }
        return i;
    }

    static int widenedRight(byte[] body, int to) {
        int i = to;
        while (isBlank(body[i])) {
            i++;
        }
        return i;
    }

    private static boolean isBlank(byte b) {
        return b == ' ' || b == '\n' || b == '\r' || b == '\t';
    }

    static String sha256(byte[] bytes, int from, int to) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(bytes, from, to - from);
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}

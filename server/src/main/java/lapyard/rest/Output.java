package lapyard.rest;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Bytes to hand out with the entity tag that goes with them.
 *
 * @param tag short form of the bytes' SHA-256, without quotes
 */
record Output(byte[] bytes, String tag) {
    static Output of(byte[] bytes) {
        return new Output(bytes, hash(bytes).substring(0, 24));
    }

    static Output of(String text) {
        return of(text.getBytes(StandardCharsets.UTF_8));
    }

    /** SHA-256 in hexadecimal. */
    static String hash(byte[] bytes) {
        return HexFormat.of().formatHex(sha256().digest(bytes));
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException everyJavaHasIt) {
            throw new AssertionError(everyJavaHasIt);
        }
    }
}

package lapyard.answers;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;

/**
 * Bytes to hand out, in memory or, where they are many, in a file that is gone once nobody holds the answer.
 *
 * @param bytes all of it; empty where it is in a file
 * @param tag   short form of the bytes' SHA-256: equal bytes, equal tags
 */
public record Answer(byte[] bytes, Optional<FileChannel> file, long length, String tag) {
    private static final int TAG_DIGITS = 24;
    private static final int PIECE_BYTES = 1 << 16;
    /** What an answer takes beside its bytes. */
    private static final long OVERHEAD_BYTES = 200;

    public static Answer of(byte[] bytes) {
        return of(bytes, hash(bytes));
    }

    /** @param hash of the bytes, in hexadecimal */
    static Answer of(byte[] bytes, String hash) {
        return new Answer(bytes, Optional.empty(), bytes.length, hash.substring(0, TAG_DIGITS));
    }

    public static Answer of(String text) {
        return of(text.getBytes(StandardCharsets.UTF_8));
    }

    /** @param hash of the file's bytes, in hexadecimal */
    static Answer of(FileChannel file, long length, String hash) {
        return new Answer(new byte[0], Optional.of(file), length, hash.substring(0, TAG_DIGITS));
    }

    public boolean isInMemory() {
        return file.isEmpty();
    }

    /** What it takes in memory. */
    long sizeBytes() {
        return bytes.length + OVERHEAD_BYTES;
    }

    /** Any number of threads may write it at once. */
    public void writeTo(OutputStream out) throws IOException {
        if (file.isEmpty()) {
            out.write(bytes);
            return;
        }
        ByteBuffer piece = ByteBuffer.allocate(PIECE_BYTES);
        for (long at = 0; at < length; ) {
            int read = file.get().read(piece.clear(), at);
            if (read < 0) throw new IOException("the file of the answer is shorter than it was");
            out.write(piece.array(), 0, read);
            at += read;
        }
    }

    /** SHA-256 in hexadecimal. */
    public static String hash(byte[] bytes) {
        return HexFormat.of().formatHex(sha256().digest(bytes));
    }

    public static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException everyJavaHasIt) {
            throw new AssertionError(everyJavaHasIt);
        }
    }
}

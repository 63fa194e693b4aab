package lapyard.answers;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Optional;

/**
 * Takes an answer as it is written, so that no turn waits for a slow reader: in memory up to a small share of the heap, what
 * is longer in a file without a name.
 */
final class Spool extends OutputStream {
    /** Share of the heap: 4 MB of 256. */
    private static final int SHARE = 64;

    private static final long IN_MEMORY_BYTES = Runtime.getRuntime().maxMemory() / SHARE;

    private final ByteArrayOutputStream memory = new ByteArrayOutputStream();
    private final MessageDigest digest = Answer.sha256();
    private Optional<FileChannel> file = Optional.empty();
    private long length;

    @Override
    public void write(int one) throws IOException {
        write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
        digest.update(bytes, from, count);
        length += count;
        if (file.isEmpty() && length <= IN_MEMORY_BYTES) {
            memory.write(bytes, from, count);
            return;
        }
        if (file.isEmpty()) {
            file = Optional.of(unnamed());
            put(memory.toByteArray(), 0, memory.size());
            memory.reset();
        }
        put(bytes, from, count);
    }

    private void put(byte[] bytes, int from, int count) throws IOException {
        ByteBuffer left = ByteBuffer.wrap(bytes, from, count);
        while (left.hasRemaining()) file.get().write(left);
    }

    /** The system drops it with its last channel, also where the process is killed. */
    private static FileChannel unnamed() throws IOException {
        Path path = Files.createTempFile("lapyard", ".print");
        return FileChannel.open(
                path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
    }

    Answer answer() {
        String hash = HexFormat.of().formatHex(digest.digest());
        return file.isEmpty() ? Answer.of(memory.toByteArray(), hash) : Answer.of(file.get(), length, hash);
    }

    /** Throws away what was written. */
    void discard() throws IOException {
        if (file.isPresent()) file.get().close();
    }
}

package lapyard.working;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Files that come with the program. */
public final class OwnFile {
    private OwnFile() {}

    /** What a file holds, by its place on the class path, such as {@code lapyard/json/garden.schema.json}. */
    public static byte[] bytes(ClassLoader loader, String file) {
        try (InputStream stream = loader.getResourceAsStream(file)) {
            return stream.readAllBytes();
        } catch (IOException damaged) {
            throw new UncheckedIOException("the program's own " + file + " cannot be read", damaged);
        }
    }

    /** A text in UTF-8, as above, of the program itself. */
    public static String text(String file) {
        return new String(bytes(OwnFile.class.getClassLoader(), file), StandardCharsets.UTF_8);
    }
}

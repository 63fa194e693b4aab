package lapyard.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Where the page's own files lie, seen from the server module. */
final class PageSources {
    static final Path WEB = Path.of("..", "web", "src").toAbsolutePath().normalize();
    static final Path PAGE = WEB.resolve("main/resources/META-INF/resources");
    static final Path TESTS = WEB.resolve("test");

    private PageSources() {}

    /** Files below a folder with this ending, as paths from the folder, in order. */
    static List<String> below(Path folder, String ending) {
        try (var files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString().replace('\\', '/'))
                    .filter(name -> name.endsWith(ending))
                    .sorted()
                    .toList();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}

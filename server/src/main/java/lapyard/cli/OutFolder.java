package lapyard.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** A folder that takes all files or none: they are written beside their names and moved when the last one is there. */
final class OutFolder implements AutoCloseable {
    private final String name;
    private final Path folder;
    private final Map<String, Path> parts = new LinkedHashMap<>();
    /** Folders that were made for it, the innermost first. */
    private final List<Path> made = new ArrayList<>();

    /** What a file holds, written to where it goes. */
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /** @param name made where it is not there */
    OutFolder(String name) throws UnusableInput {
        this.name = name;
        try {
            folder = Path.of(name).toAbsolutePath();
            for (Path missing = folder; missing != null && Files.notExists(missing); missing = missing.getParent()) made.add(missing);
            Files.createDirectories(folder);
        } catch (FileAlreadyExistsException e) {
            throw new UnusableInput(name + " is a file, not a folder. Name another folder with --out.");
        } catch (IOException | InvalidPathException e) {
            throw cannot(e);
        }
    }

    /** Writes one file in place of what stands under its name, whole or not at all. */
    static void replace(String file, String text) throws UnusableInput {
        try {
            Path target = Path.of(file).toAbsolutePath();
            Path part = target.resolveSibling("." + target.getFileName() + ".part");
            Files.writeString(part, text);
            Files.move(part, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException | InvalidPathException e) {
            throw new UnusableInput(file + " cannot be written: " + UnusableInput.why(e) + ". Name another file with --out.");
        }
    }

    void put(String file, Content content) throws IOException {
        Path part = folder.resolve("." + file + ".part");
        parts.put(file, part);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part), 1 << 16)) {
            content.writeTo(out);
        }
    }

    /** Takes back a file whose content could not be made. */
    void drop(String file) throws IOException {
        Path part = parts.remove(file);
        if (part != null) Files.deleteIfExists(part);
    }

    Set<String> files() {
        return parts.keySet();
    }

    /**
     * Gives all files their names.
     *
     * @param older files that an earlier run may have left behind and that are removed where this one did not write them
     */
    void keep(Predicate<String> older) throws IOException {
        for (Map.Entry<String, Path> part : parts.entrySet()) {
            Files.move(part.getValue(), folder.resolve(part.getKey()), StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        }
        List<Path> old = new ArrayList<>();
        try (Stream<Path> there = Files.list(folder)) {
            there.filter(file -> older.test(file.getFileName().toString()) && !parts.containsKey(file.getFileName().toString())).forEach(old::add);
        }
        for (Path file : old) Files.delete(file);
        made.clear();
    }

    UnusableInput cannot(Exception e) {
        return new UnusableInput(name + " cannot be written: " + UnusableInput.why(e) + ". Name another folder with --out.");
    }

    /** Removes what was not kept. */
    @Override
    public void close() {
        for (Path part : parts.values()) {
            try {
                Files.deleteIfExists(part);
            } catch (IOException left) {
                part.toFile().deleteOnExit();
            }
        }
        for (Path one : made) {
            try {
                Files.deleteIfExists(one);
            } catch (IOException holdsSomething) {
                return;
            }
        }
    }
}

package lapyard.rest;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URI;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.TreeSet;
import java.util.jar.JarFile;
import java.util.stream.Stream;

/** Lists what lies in a folder of the class path, in jars and in plain folders alike. */
final class Packed {
    private Packed() {}

    /**
     * @param folder ends with a slash
     * @return paths below the folder, sorted, each once
     */
    static List<String> files(ClassLoader loader, String folder) {
        TreeSet<String> files = new TreeSet<>();
        try {
            for (URL url : Collections.list(loader.getResources(folder))) {
                if (url.getProtocol().equals("file")) addFolder(files, Path.of(URI.create(url.toString())));
                else if (url.openConnection() instanceof JarURLConnection jar) addJar(files, jar, folder);
            }
        } catch (IOException damaged) {
            throw new UncheckedIOException("the program's own " + folder + " cannot be listed", damaged);
        }
        return List.copyOf(files);
    }

    private static void addFolder(TreeSet<String> files, Path root) throws IOException {
        try (Stream<Path> paths = Files.walk(root)) {
            paths.filter(Files::isRegularFile)
                    .forEach(path -> files.add(root.relativize(path).toString().replace(File.separatorChar, '/')));
        }
    }

    private static void addJar(TreeSet<String> files, JarURLConnection connection, String folder) throws IOException {
        connection.setUseCaches(false);
        try (JarFile jar = connection.getJarFile()) {
            jar.stream()
                    .map(entry -> entry.getName())
                    .filter(name -> name.startsWith(folder) && !name.endsWith("/"))
                    .forEach(name -> files.add(name.substring(folder.length())));
        }
    }
}

package lapyard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The table of packages: who may import whom. */
class ImportTest {
    private static final Path SOURCES = Path.of("src/main/java/lapyard");

    /** Package, then the packages it may import; {@code working} may be imported by all. */
    private static final String TABLE =
            """
            working       :
            geometry      :
            catalogue     : geometry
            order         : catalogue geometry
            cutting       :
            sheets        :
            plan          : geometry catalogue
            words         : plan catalogue geometry
            construction  : plan geometry
            fill          : construction geometry plan
            standing      : construction plan geometry catalogue
            ground        : plan geometry
            stages        :
            weekends      : stages construction plan geometry
            loadin        : plan geometry catalogue
            job           : weekends standing fill construction ground plan sheets cutting order catalogue geometry loadin
            sizes         : job plan geometry ground
            layout        : job plan geometry ground
            drawing       : geometry
            exchange      : geometry
            history       : plan
            diagrams      : drawing geometry catalogue plan construction ground cutting sheets order loadin weekends words working
            json          : exchange sizes layout job stages standing construction ground plan sheets cutting order catalogue geometry loadin weekends words
            store         : plan
            prints        : exchange weekends geometry working ground job diagrams drawing plan catalogue cutting order construction words
            answers       : exchange sizes layout prints json job drawing plan order words
            rest          : answers history prints store json diagrams drawing plan words
            cli           : answers exchange geometry prints rest store json job drawing plan order words
            """;

    private static final Pattern IMPORT = Pattern.compile("\\blapyard\\.([a-z]+)\\.");

    /** The same garden has the same answers on any machine: below what people see only the budgets of the three searches read a clock, for their time limits. */
    @Test
    void onlyBudgetsOfSearchesReadAClock() throws IOException {
        Pattern clock = Pattern.compile("nanoTime|currentTimeMillis|(Instant|Date|Time)\\.now|java\\.time\\.Clock|new Random\\(\\)|Math\\.random");
        Set<String> readers = new TreeSet<>();
        try (Stream<Path> files = Files.walk(SOURCES)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
                String below = SOURCES.relativize(file).toString().replace('\\', '/');
                boolean shown = List.of("answers/", "cli/", "rest/", "store/").stream().anyMatch(below::startsWith);
                if (!shown && clock.matcher(Files.readString(file)).find()) readers.add(below);
            }
        }
        assertEquals(Set.of("working/SearchBudget.java", "sheets/RollBudget.java"), readers);
    }

    @Test
    void everyPackageImportsOnlyWhatTheTableAllows() throws IOException {
        Map<String, Set<String>> allowed = table();
        List<String> wrong = new ArrayList<>();
        for (Path file : sources()) {
            String own = packageOf(file);
            Matcher used = IMPORT.matcher(Files.readString(file).replaceAll("(?m)^package .*$", ""));
            while (used.find()) {
                String other = used.group(1);
                if (!other.equals(own) && !other.equals("working") && allowed.containsKey(other)
                        && !allowed.getOrDefault(own, Set.of()).contains(other)) {
                    wrong.add(file + " may not import " + other);
                }
            }
        }
        assertEquals(List.of(), wrong.stream().distinct().toList());
    }

    /** A class is named once in the code base; a nested type is read together with its outer one. */
    @Test
    void everySimpleClassNameStandsOnce() throws IOException {
        Map<String, String> seen = new TreeMap<>();
        List<String> twice = new ArrayList<>();
        for (Path file : sources()) {
            String name = file.getFileName().toString();
            String other = name.equals("package-info.java") ? null : seen.putIfAbsent(name, packageOf(file));
            if (other != null) {
                twice.add(name + " in " + other + " and " + packageOf(file));
            }
        }
        assertEquals(List.of(), twice);
    }

    /** An edge that nobody uses allows what nobody meant. */
    @Test
    void everyEdgeOfTheTableIsUsed() throws IOException {
        Map<String, Set<String>> unused = table();
        for (Path file : sources()) {
            Matcher used = IMPORT.matcher(Files.readString(file).replaceAll("(?m)^package .*$", ""));
            while (used.find()) {
                unused.getOrDefault(packageOf(file), new TreeSet<>()).remove(used.group(1));
            }
        }
        unused.values().removeIf(Set::isEmpty);
        assertEquals(Map.of(), unused);
    }

    @Test
    void everyPackageStandsInTheTableAndSaysWhatItIs() throws IOException {
        Map<String, Set<String>> allowed = table();
        for (Path file : sources()) {
            assertTrue(allowed.containsKey(packageOf(file)), file + ": its package is not in the table");
            assertTrue(Files.exists(file.resolveSibling("package-info.java")), file + ": no package-info.java beside it");
        }
    }

    @Test
    void theTableItselfHasNoCircle() {
        Map<String, Set<String>> left = table();
        while (!left.isEmpty()) {
            Set<String> free = new TreeSet<>();
            left.forEach((name, imports) -> {
                if (imports.stream().noneMatch(left::containsKey)) {
                    free.add(name);
                }
            });
            assertTrue(!free.isEmpty(), "a circle among " + left.keySet());
            left.keySet().removeAll(free);
        }
    }

    private static Map<String, Set<String>> table() {
        Map<String, Set<String>> table = new TreeMap<>();
        TABLE.lines().filter(line -> !line.isBlank()).forEach(line -> {
            String[] sides = line.split(":", -1);
            Set<String> imports = new TreeSet<>(List.of(sides[1].strip().split("\\s+")));
            imports.remove("");
            table.put(sides[0].strip(), imports);
        });
        return table;
    }

    private static List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            return files.filter(file -> file.toString().endsWith(".java")).sorted().toList();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static String packageOf(Path file) {
        return SOURCES.relativize(file).getName(0).toString();
    }
}

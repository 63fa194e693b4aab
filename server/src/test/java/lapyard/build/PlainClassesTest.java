package lapyard.build;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;

/** The step of the build that makes lambdas and records plain: what Java itself makes of each form is what it is held against. */
class PlainClassesTest {
    private static final String STEP = "src/build/PlainClasses.java";

    @TempDir
    Path folder;

    private static Map<String, byte[]> files(Path folder) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.filter(Files::isRegularFile).toList()) {
                files.put(folder.relativize(each).toString(), Files.readAllBytes(each));
            }
        }
        return files;
    }

    private static void step(Path folder) throws Exception {
        Process java = new ProcessBuilder(System.getProperty("java.home") + "/bin/java", "-cp", System.getProperty("java.class.path"), STEP, folder.toString())
                .redirectErrorStream(true).start();
        String told = new String(java.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertEquals(0, java.waitFor(), told);
    }

    /** What Java links at the first run of a class. */
    private static Set<String> linked(byte[] code) {
        Set<String> names = new HashSet<>();
        new ClassReader(code).accept(new ClassVisitor(Opcodes.ASM9) {
            @Override
            public MethodVisitor visitMethod(int access, String method, String type, String generic, String[] thrown) {
                return new MethodVisitor(Opcodes.ASM9) {
                    @Override
                    public void visitInvokeDynamicInsn(String name, String asked, Handle how, Object... with) {
                        names.add(name);
                    }
                };
            }
        }, 0);
        return names;
    }

    /** A folder's own classes, loaded beside those of the same names. */
    private static final class Apart extends URLClassLoader {
        Apart(Path folder) throws IOException {
            super(new URL[] {folder.toUri().toURL()}, PlainClassesTest.class.getClassLoader());
        }

        @Override
        protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
            synchronized (getClassLoadingLock(name)) {
                Class<?> known = findLoadedClass(name);
                return known != null ? known : name.startsWith(PlainForms.class.getName()) ? findClass(name) : super.loadClass(name, resolve);
            }
        }
    }

    @Test
    void everyFormAnswersAsJavaHasIt() throws Exception {
        Path from = Path.of(PlainForms.class.getProtectionDomain().getCodeSource().getLocation().toURI()).resolve("lapyard/build");
        Path to = Files.createDirectories(folder.resolve("lapyard/build"));
        try (Stream<Path> forms = Files.list(from)) {
            for (Path each : forms.filter(file -> file.getFileName().toString().startsWith("PlainForms")).toList()) {
                Files.copy(each, to.resolve(each.getFileName()));
            }
        }

        step(folder);

        Map<String, byte[]> made = files(folder);
        made.forEach((name, code) -> assertTrue(Set.of("toString").containsAll(linked(code)), name));
        assertAnswersAsBefore();
        step(folder);
        files(folder).forEach((name, code) -> assertArrayEquals(made.get(name), code, name));

        // a class compiled anew finds its nest again, what was made of a class that is gone goes
        Files.copy(from.resolve("PlainForms.class"), to.resolve("PlainForms.class"), StandardCopyOption.REPLACE_EXISTING);
        Path left = Files.copy(to.resolve("PlainForms$$0.class"), to.resolve("Gone$$0.class"));
        step(folder);
        assertAnswersAsBefore();
        assertTrue(Files.notExists(left));
    }

    private void assertAnswersAsBefore() throws Exception {
        try (Apart apart = new Apart(folder)) {
            Class<?> plain = apart.loadClass(PlainForms.class.getName());
            assertNotSame(PlainForms.class, plain);
            assertEquals(new PlainForms().get(), ((Supplier<?>) plain.getDeclaredConstructor().newInstance()).get());
        }
    }
}

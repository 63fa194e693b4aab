package lapyard.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import lapyard.store.GardenStore;
import lapyard.store.NewGarden;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands that copy a store in use, put the copy back, and read what is left of a damaged one. */
class BackupAndRestoreTest {
    @TempDir
    private Path folder;

    private static GardenStore open(Path data) {
        return GardenStore.open(data);
    }

    @Test
    void whatWasCopiedWhileTheStoreWasOpenComesBackWhole() throws Exception {
        String data = folder.resolve("data").toString();
        String copy = folder.resolve("copy").toString();
        String back = folder.resolve("back").toString();
        try (GardenStore store = open(Path.of(data))) {
            store.create(new NewGarden("a", "A", "{\"beds\":[]}"));
            store.save("a", 1, "A", "{\"beds\":[],\"name\":\"A\"}");
            assertEquals(0, Lapyard.run("backup", "--data", data, "--out", copy));
            store.create(new NewGarden("later", "Later", "{}"));
            assertNotEquals(0, Lapyard.run("restore", copy, "--data", data), "a folder with gardens is left as it is");
        }
        assertEquals(0, Lapyard.run("restore", copy, "--data", back));
        try (GardenStore store = open(Path.of(back))) {
            assertEquals("{\"beds\":[],\"name\":\"A\"}", store.find("a").orElseThrow().document());
            assertEquals("{\"beds\":[]}", store.revision("a", 1).orElseThrow().document());
            assertFalse(store.find("later").isPresent());
        }
        try (GardenStore store = open(Path.of(data))) {
            assertEquals("Later", store.find("later").orElseThrow().name());
        }
    }

    @Test
    void gardensAndTheShelfAreListedWhileAServerHasTheFolder() throws Exception {
        String data = folder.resolve("data").toString();
        try (GardenStore store = open(Path.of(data))) {
            store.create(new NewGarden("a", "Alder yard", "{\"name\":\"Alder yard\",\"state\":\"ordered\",\"quote\":{\"client\":\"Mrs Birch\"},\"beds\":[]}"));
            store.create(new NewGarden("b", "Beech\nyard", "{\"beds\":[]}"));
            store.shelf().add("p", "crew", "Two of us", "{\"hours\":6}");
            assertEquals(List.of("a ordered 1 Mrs Birch Alder yard", "b pencilled 1  Beech yard"),
                    printed(0, "gardens", "--data", data).stream().map(line -> line.replaceFirst("\t[0-9T:.-]+Z", "").replace('\t', ' ')).toList());
            assertEquals(1, printed(0, "gardens", "--data", data, "--state", "ordered").size());
            assertEquals(List.of(), printed(1, "gardens", "--data", data, "--find", "birch,beech"));
            assertEquals(List.of("p\tcrew\t1\t0\tTwo of us"), printed(0, "shelf", "--data", data));
            assertEquals(List.of("{\"hours\":6}"), printed(0, "shelf", "--data", data, "--show", "p"));
            assertEquals(List.of(), printed(2, "shelf", "--data", data, "--show", "q"));
        }
        assertEquals(List.of(), printed(2, "gardens", "--data", folder.resolve("nowhere").toString()));
        assertFalse(Files.exists(folder.resolve("nowhere")), "a list makes no store");
    }

    @Test
    void aStoreThatCannotBeReadIsTold() throws Exception {
        Path data = folder.resolve("data");
        open(data).close();
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("gardens.db")); var statement = connection.createStatement()) {
            statement.execute("drop table shelf_item");
        }
        List<Exception> refused = new ArrayList<>();
        Lapyard.commands().setExecutionExceptionHandler((e, command, parsed) -> {
            refused.add(e);
            return Lapyard.REFUSED;
        }).execute("shelf", "--data", data.toString());
        assertTrue(refused.get(0) instanceof UnusableInput && refused.get(0).getMessage().startsWith("the gardens cannot be read: "), refused::toString);
    }

    private static List<String> printed(int exit, String... arguments) {
        StringWriter out = new StringWriter();
        var commands = Lapyard.commands();
        commands.setOut(new PrintWriter(out)).setErr(new PrintWriter(new StringWriter())).setCaseInsensitiveEnumValuesAllowed(true)
                .setExecutionExceptionHandler((e, command, parsed) -> Lapyard.REFUSED);
        assertEquals(exit, commands.execute(arguments), () -> String.join(" ", arguments));
        return out.toString().lines().toList();
    }

    @Test
    void whatIsNoCopyAndWhatIsThereAlreadyAreRefused() throws Exception {
        Path none = Files.writeString(folder.resolve("none"), "no store");
        assertNotEquals(0, Lapyard.run("restore", none.toString(), "--data", folder.resolve("new").toString()));
        assertNotEquals(0, Lapyard.run("backup", "--data", folder.resolve("nowhere").toString(), "--out", folder.resolve("x").toString()));
    }

    /** A photo that is not any more the one that was kept would keep its garden's whole file from being read in. */
    @Test
    void photosAreTakenOutOfADamagedFolderWithTheirGarden() throws Exception {
        Path data = folder.resolve("data");
        var jpeg = new java.io.ByteArrayOutputStream();
        javax.imageio.ImageIO.write(new java.awt.image.BufferedImage(40, 30, java.awt.image.BufferedImage.TYPE_INT_RGB), "jpeg", jpeg);
        byte[] bytes = lapyard.drawing.Photo.of(jpeg.toByteArray()).bytes();
        var whole = new lapyard.store.Photos.Kept(lapyard.answers.Answer.hash(bytes), "image/jpeg", java.time.Instant.EPOCH, bytes);
        try (GardenStore store = open(data)) {
            store.create(new NewGarden("g", "G", "{\"beds\":[]}"));
            store.photos().add("g", java.util.List.of(whole));
        }
        assertEquals(0, Lapyard.run("rescue", "--data", data.toString(), "--out", folder.resolve("all").toString()));
        assertEquals(whole.id(), lapyard.answers.Answer.hash(lapyard.rest.GardenFile.newest(Files.readString(folder.resolve("all/g.garden.json"))).photos().get(0).bytes()));
        try (GardenStore store = open(data)) {
            store.photos().add("g", java.util.List.of(new lapyard.store.Photos.Kept("0".repeat(64), "image/jpeg", java.time.Instant.EPOCH, new byte[] {1, 2, 3})));
        }
        assertEquals(1, Lapyard.run("rescue", "--data", data.toString(), "--out", folder.resolve("some").toString()));
        assertEquals(1, lapyard.rest.GardenFile.newest(Files.readString(folder.resolve("some/g.garden.json"))).photos().size());
    }

    @Test
    void whatCanBeReadOfADamagedFolderIsTakenOutAndTheExitSaysWhetherAnythingIsLost() throws Exception {
        Path data = folder.resolve("data");
        try (GardenStore store = open(data)) {
            for (int i = 0; i < 40; i++) store.create(new NewGarden("g" + i, "G", "{\"beds\":[],\"name\":\"" + "x".repeat(6000) + "\"}"));
        }
        assertEquals(0, Lapyard.run("rescue", "--data", data.toString(), "--out", folder.resolve("all").toString()));
        assertEquals(2, Lapyard.run("rescue", "--data", data.toString(), "--out", folder.resolve("all").toString()), "that folder is not empty");
        Path database = data.resolve("gardens.db");
        byte[] bytes = Files.readAllBytes(database);
        Arrays.fill(bytes, bytes.length / 2, bytes.length / 2 + 20_000, (byte) 0xa5);
        Files.write(database, bytes);
        assertEquals(1, Lapyard.run("rescue", "--data", data.toString(), "--out", folder.resolve("some").toString()));
        try (Stream<Path> files = Files.list(folder.resolve("some"))) {
            long read = files.count();
            assertTrue(read > 20 && read < 40, "gardens " + read);
        }
    }
}

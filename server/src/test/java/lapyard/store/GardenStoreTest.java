package lapyard.store;

import java.io.File;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import lapyard.plan.GardenState;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.api.io.TempDir;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

class GardenStoreTest extends StoreContract {
    @TempDir
    private Path folder;

    @Override
    GardenStore place(Clock clock) {
        return GardenStore.open(folder, clock);
    }

    @Test
    void gardensOfAnOlderStoreAreListedByClientAndState(@TempDir Path older) throws SQLException {
        List<GardenStore> opened = new ArrayList<>();
        olderGardenIsListed("jdbc:sqlite:" + older.resolve(DataFolder.DATABASE), Schema.SQLITE, () -> {
            opened.add(GardenStore.open(older));
            return opened.get(0);
        });
        opened.forEach(GardenStore::close);
    }

    /** One that was taken off comes back only where there is room for it. */
    @Test
    void aShelfHoldsNoMoreThanItMayAlsoWhereOneComesBack() {
        ShelfItems shelf = new ShelfItems(store, Clock.systemUTC());
        for (int i = 0; i <= ShelfItems.MOST; i++) {
            if (i == 1) shelf.remove("p0");
            shelf.add("p" + i, "crew", "Crew " + i, "{}");
        }
        assertThrows(IllegalArgumentException.class, () -> shelf.save("p0", 1, "Crew 0", "{}"));
        assertEquals(2, shelf.save("p1", 1, "Crew 1", "{}").orElseThrow().revision());
        shelf.remove("p1");
        assertEquals(2, shelf.save("p0", 1, "Crew 0", "{}").orElseThrow().revision());
        assertEquals(ShelfItems.MOST, shelf.list().size());
    }

    /** The tables as they were at version 4, with one garden, then opened by this program. */
    static void olderGardenIsListed(String url, Schema schema, Supplier<GardenStore> opened) throws SQLException {
        Flyway.configure().dataSource(url, null, null).locations(schema.places).target("4").load().migrate();
        try (Connection connection = DriverManager.getConnection(url); Statement statement = connection.createStatement()) {
            statement.execute("insert into garden (id, name, sort_key, revision, changed, deleted) values ('a', 'A', 'a', 1, '2026-05-02T10:00:00Z', 0)");
            statement.execute("insert into revision (garden, number, kind, name, saved, document) values ('a', 1, 'CREATED', 'A', '2026-05-02T10:00:00Z',"
                    + " '{\"state\":\"ordered\",\"quote\":{\"client\":\"Ms Oakes\"}}')");
        }
        GardenList.Row row = opened.get().list(new GardenList.Ask(9, Optional.empty(), GardenList.Place.STANDING, Optional.empty(), List.of(), GardenList.Order.NAME)).rows().get(0);
        assertEquals(List.of("Ms Oakes", GardenState.ORDERED), List.of(row.client(), row.state()));
    }

    @ParameterizedTest
    @EnumSource
    void theMigrationFilesEndAtTheVersionThatTheProgramLooksFor(Schema schema) {
        int newest = Arrays.stream(schema.places)
                .map(place -> Schema.class.getClassLoader().getResource(place.replace("classpath:", "")))
                .flatMap(folder -> Arrays.stream(new File(URI.create(folder.toString())).list()))
                .mapToInt(file -> Integer.parseInt(file.replaceAll("V([0-9]+)__.*", "$1")))
                .max()
                .orElseThrow();
        assertEquals(schema.newest, Math.max(newest, Integer.parseInt(new V8__ListOfOlderGardens().getVersion().getVersion())));
    }

    /** The migration library is what made every store before: what is made without it must be the same to it. */
    @Test
    void aNewFolderIsMadeAsTheMigrationLibraryMakesIt(@TempDir Path ours, @TempDir Path theirs) throws SQLException {
        String made = "jdbc:sqlite:" + ours.resolve("new.db");
        try (Connection connection = DriverManager.getConnection(made)) {
            NewTables.make(connection);
        }
        String migrated = "jdbc:sqlite:" + theirs.resolve("new.db");
        library(migrated).migrate();

        assertEquals(tables(migrated), tables(made));
        library(made).validate();
        assertEquals(0, library(made).migrate().migrationsExecuted);
    }

    private static Flyway library(String url) {
        return Flyway.configure().dataSource(url, null, null).locations(Schema.SQLITE.places).javaMigrations(new V8__ListOfOlderGardens()).load();
    }

    /** What stands in the catalogue of the database, and its history but for times. */
    private static List<String> tables(String url) throws SQLException {
        List<String> all = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection(url); Statement statement = connection.createStatement()) {
            for (String query : List.of("select type, name, sql from sqlite_master order by name",
                    "select installed_rank, version, description, type, script, checksum, installed_by, success from flyway_schema_history order by installed_rank")) {
                ResultSet row = statement.executeQuery(query);
                while (row.next()) {
                    StringBuilder line = new StringBuilder();
                    for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) line.append(row.getString(i)).append(" | ");
                    all.add(line.toString().replaceAll("\\s+", " "));
                }
            }
        }
        return all;
    }
}

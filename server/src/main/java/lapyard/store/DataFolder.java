package lapyard.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Savepoint;
import java.sql.Statement;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Properties;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.ReentrantLock;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * A folder with one SQLite file, held against every other process: one connection that writes, one write at a
 * time in the order of asking, and a few that read beside it.
 */
final class DataFolder extends GardenStore {
    private static final String ELSEWHERE = ": let this user write there, or give another folder with --data";
    static final String DATABASE = "gardens.db";
    static final String LOCK = "lapyard.lock";
    private static final System.Logger LOG = System.getLogger("lapyard.store");
    private static final int PROBE_BYTES = 65536;
    private static final int READERS = 4;
    private static final Set<SQLiteErrorCode> DAMAGE = Set.of(SQLiteErrorCode.SQLITE_CORRUPT, SQLiteErrorCode.SQLITE_NOTADB);
    private static final String WAY_OUT = "put a copy back, or take out what can be read with lapyard rescue";
    /** Folders held by this process. Opening and closing the lock file a second time would drop the first lock. */
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    private final Path folder;
    private final String url;
    private final FileChannel lockChannel;
    private Connection writer;
    private final ReentrantLock writing = new ReentrantLock(true);
    /** Odd while one writes. */
    private final AtomicLong moment = new AtomicLong();
    /** What the write under way will tell. */
    private final Map<String, Long> announced = new LinkedHashMap<>();
    private final Optional<Object> file;
    private volatile boolean damaged;
    private volatile boolean closed;
    /** After a clean end the file is looked through beside the work: a disk may have failed meanwhile. */
    private final Thread looking = new Thread(this::lookThroughBeside, "lapyard-look");
    private final Semaphore reading = new Semaphore(READERS, true);
    private final ConcurrentLinkedDeque<Connection> idleReaders = new ConcurrentLinkedDeque<>();

    private DataFolder(Path folder, FileChannel lockChannel, Connection writer, Clock clock) {
        super(clock);
        this.folder = folder;
        this.url = url(folder);
        this.lockChannel = lockChannel;
        this.writer = writer;
        this.file = fileNow();
        looking.setDaemon(true);
    }

    /** Of a folder that nobody holds, or that a server does. @throws IllegalArgumentException where there is none */
    static Path databaseIn(Path folder) {
        Path database = folder.resolve(DATABASE);
        if (!Files.isRegularFile(database)) throw new IllegalArgumentException(folder + " is not a data folder: it holds no " + DATABASE + ". Name the folder of the gardens with --data.");
        return database;
    }

    private static String url(Path folder) {
        return "jdbc:sqlite:" + folder.resolve(DATABASE);
    }

    /** Takes the lock, opens the database, brings its tables up to date. @throws IllegalArgumentException where the folder cannot be used */
    static DataFolder hold(Path asked, Clock clock) {
        Path folder;
        try {
            folder = Files.createDirectories(asked).toRealPath();
        } catch (IOException notUsable) {
            throw unusable(asked, "it cannot be made or entered (" + notUsable + ")" + ELSEWHERE);
        }
        if (!HELD.add(folder)) throw inUse(asked, OptionalLong.of(ProcessHandle.current().pid()));
        try {
            return holdFree(asked, folder, clock);
        } catch (RuntimeException refused) {
            HELD.remove(folder);
            throw refused;
        }
    }

    private static IllegalArgumentException unusable(Path asked, String why) {
        return unusable("data folder " + asked.toAbsolutePath().normalize(), why);
    }

    private static IllegalArgumentException inUse(Path asked, OptionalLong process) {
        return new IllegalArgumentException("data folder " + asked.toAbsolutePath().normalize() + " is in use by another Lapyard"
                + (process.isPresent() ? " (process " + process.getAsLong() + ")" : "") + ": stop that one, or give another folder with --data");
    }

    private static DataFolder holdFree(Path asked, Path folder, Clock clock) {
        FileChannel channel = null;
        try {
            channel = FileChannel.open(folder.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
            FileLock lock = channel.tryLock(Long.MAX_VALUE - 1, 1, false); // past the text, which others may read
            if (lock == null) {
                OptionalLong process = processIn(channel);
                channel.close();
                throw inUse(asked, process);
            }
            sign(channel);
            forOwnerOnly(folder.resolve(DATABASE));
            boolean cleanEnd = Files.notExists(folder.resolve(DATABASE + "-wal"));
            try (Connection first = SqliteDriver.open(url(folder))) {
                if (!cleanEnd) lookThrough(first);
                Schema.SQLITE.bringUp(first, url(folder), new Properties());
            }
            Connection writer = connect(url(folder), SQLiteConfig.TransactionMode.IMMEDIATE);
            DataFolder data = new DataFolder(folder, channel, writer, clock);
            if (cleanEnd) data.looking.start();
            return data;
        } catch (Schema.Unknown unknown) {
            closeQuietly(channel);
            throw unusable(asked, unknown.getMessage());
        } catch (IOException notUsable) {
            closeQuietly(channel);
            throw unusable(asked, "it cannot be written (" + notUsable + ")" + ELSEWHERE);
        } catch (SQLException broken) {
            closeQuietly(channel);
            throw unusable(asked, DATABASE + " cannot be read as a store of gardens: " + inOurWords(broken)
                    + "; it was left as it is" + (isDamage(broken) ? ": " + WAY_OUT : ""));
        }
    }

    /** A process that was killed leaves a whole file; a machine or disk that failed may not. */
    private static void lookThrough(Connection connection) throws SQLException, Schema.Unknown {
        String found = new Sql(connection, "pragma quick_check(1)").first(row -> row.text("quick_check")).orElse("ok");
        if (!found.equals("ok"))
            throw new Schema.Unknown(DATABASE + " is damaged (" + found.lines().findFirst().orElse("") + "); it was left as it is: " + WAY_OUT);
    }

    /** What the library says by a number. */
    static String inOurWords(SQLException failed) {
        if (!(failed instanceof SQLiteException sqlite)) return "it failed for a reason that is not known";
        return switch (SQLiteErrorCode.getErrorCode(sqlite.getResultCode().code & 0xff)) {
            case SQLITE_BUSY, SQLITE_LOCKED -> "it is locked by another program: close that program";
            case SQLITE_NOTADB -> "it is no database";
            case SQLITE_CORRUPT -> "it is damaged";
            case SQLITE_FULL -> "the disk is full";
            case SQLITE_READONLY, SQLITE_PERM, SQLITE_CANTOPEN, SQLITE_AUTH -> "it may not be opened or written: check the permissions of the folder and the file";
            case SQLITE_IOERR -> "the disk cannot be read or written: check the disk";
            default -> "it failed with code " + sqlite.getResultCode().code;
        };
    }

    /** Made where it is missing. Where the system knows owners: whoever runs the program reads and writes it, and nobody else. */
    static Path forOwnerOnly(Path file) throws IOException {
        if (Files.notExists(file)) Files.createFile(file);
        PosixFileAttributeView rights = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        if (rights != null) rights.setPermissions(PosixFilePermissions.fromString("rw-------"));
        return file;
    }

    private static boolean isDamage(SQLException failed) {
        return failed instanceof SQLiteException sqlite
                && DAMAGE.stream().anyMatch(code -> code.code == (sqlite.getResultCode().code & 0xff));
    }

    private void lookThroughBeside() {
        try (Connection connection = SqliteDriver.open(url)) {
            lookThrough(connection);
        } catch (Schema.Unknown found) {
            damaged = true;
            LOG.log(System.Logger.Level.WARNING, found.getMessage());
        } catch (SQLException elsewhere) {
            if (!isDamage(elsewhere)) return; // whoever reads or writes next is told
            damaged = true;
            LOG.log(System.Logger.Level.WARNING, DATABASE + " is damaged; " + WAY_OUT);
        }
    }

    private static void sign(FileChannel channel) throws IOException {
        byte[] line = (ProcessHandle.current().pid() + "\n").getBytes(StandardCharsets.US_ASCII);
        channel.truncate(0);
        channel.write(ByteBuffer.wrap(line), 0);
    }

    private static OptionalLong processIn(FileChannel channel) throws IOException {
        ByteBuffer text = ByteBuffer.allocate(32);
        channel.read(text, 0);
        String digits = new String(text.array(), 0, text.position(), StandardCharsets.US_ASCII).strip();
        return digits.matches("[0-9]{1,18}") ? OptionalLong.of(Long.parseLong(digits)) : OptionalLong.empty();
    }

    private static void closeQuietly(FileChannel channel) {
        try {
            if (channel != null) channel.close();
        } catch (IOException nothingMoreToDo) {
            // the folder is refused already, with its reason
        }
    }

    private static Connection connect(String url, SQLiteConfig.TransactionMode mode) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setTransactionMode(mode);
        config.enforceForeignKeys(true);
        config.setBusyTimeout(5000);
        Connection connection = config.createConnection(url);
        connection.setAutoCommit(false);
        return connection;
    }

    @Override
    public <T> T write(Work<T> work) {
        writing.lock();
        moment.incrementAndGet();
        try {
            refuseWhenClosed();
            refuseWhenDamagedOrGone();
            if (writer.isClosed()) writer = connect(url, SQLiteConfig.TransactionMode.IMMEDIATE);
            T result = work.on(writer);
            writer.commit();
            announced.forEach(this::saved);
            return result;
        } catch (SQLException | RuntimeException failed) {
            rollBack(failed);
            throw fault(failed);
        } finally {
            announced.clear();
            moment.incrementAndGet();
            writing.unlock();
        }
    }

    @Override
    public OptionalLong moment() {
        long now = moment.get();
        return now % 2 == 0 ? OptionalLong.of(now) : OptionalLong.empty();
    }

    /** Nobody else has the folder, and one writes at a time. */
    @Override
    public void aloneWith(Connection connection) {}

    @Override
    public void announce(Connection connection, String garden, long revision) {
        announced.put(garden, revision);
    }

    /** Something small is really written: reads and locks go on where the disk is full. */
    @Override
    public void probe() {
        write(connection -> {
            try (Statement statement = connection.createStatement()) {
                Savepoint before = connection.setSavepoint();
                statement.execute("create table probe as select zeroblob(" + PROBE_BYTES + ")");
                connection.rollback(before);
                statement.execute("pragma user_version = " + (int) (moment.get() % Integer.MAX_VALUE));
                return true;
            }
        });
    }

    @Override
    public String kind() {
        return "sqlite";
    }

    @Override
    public <T> T read(Work<T> work) {
        reading.acquireUninterruptibly();
        try {
            refuseWhenClosed();
            Connection idle = idleReaders.poll();
            Connection connection = idle == null ? connect(url, SQLiteConfig.TransactionMode.DEFERRED) : idle;
            try {
                T result = work.on(connection);
                connection.commit();
                idleReaders.push(connection);
                return result;
            } catch (SQLException | RuntimeException failed) {
                connection.close();
                throw failed;
            }
        } catch (SQLException failed) {
            throw fault(failed);
        } finally {
            reading.release();
        }
    }

    private void refuseWhenClosed() {
        if (closed) throw new StoreFault("the store is closed", false, null);
    }

    /**
     * SQLite may have ended the transaction by itself, as it does when the disk is full; the driver does not know, and
     * what it did next would stand alone, half a save on disk. So that connection is used no more.
     */
    private void rollBack(Exception because) {
        try {
            writer.rollback();
        } catch (SQLException ended) {
            because.addSuppressed(ended);
            try {
                writer.close();
            } catch (SQLException second) {
                because.addSuppressed(second);
            }
        }
    }

    /** What is damaged is not written to; and what is written to a file that was taken away is lost with the process. */
    private void refuseWhenDamagedOrGone() throws SQLException {
        if (damaged) throw new StoreFault(DATABASE + " is damaged: it takes no changes; " + WAY_OUT, false, null);
        if (!file.equals(fileNow()))
            throw new StoreFault(DATABASE + " was taken away or replaced: put it back, or start again", false, null);
    }

    /** What the operating system knows the file by; empty where it is gone, or where there is no such thing. */
    private Optional<Object> fileNow() {
        try {
            return Optional.ofNullable(Files.readAttributes(folder.resolve(DATABASE), BasicFileAttributes.class).fileKey());
        } catch (IOException gone) {
            return Optional.of("gone");
        }
    }

    private RuntimeException fault(Exception failed) {
        if (failed instanceof RuntimeException unchecked) return unchecked;
        if (failed instanceof SQLException sql && isDamage(sql)) {
            damaged = true;
            return new StoreFault(DATABASE + " is damaged (" + failed.getMessage() + "); " + WAY_OUT, false, failed);
        }
        boolean full = failed instanceof SQLiteException sqlite
                && (sqlite.getResultCode().code & 0xff) == SQLiteErrorCode.SQLITE_FULL.code;
        return new StoreFault("the store failed: " + failed.getMessage(), full, failed);
    }

    /** Waits for the write and the reads that are running, then lets the folder go. */
    @Override
    public void close() {
        writing.lock();
        reading.acquireUninterruptibly(READERS);
        try {
            if (closed) return;
            closed = true;
            looking.join();
            for (Connection reader : idleReaders) reader.close();
            writer.close();
            lockChannel.close();
            HELD.remove(folder);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } catch (SQLException | IOException failed) {
            throw fault(failed);
        } finally {
            reading.release(READERS);
            writing.unlock();
        }
    }
}

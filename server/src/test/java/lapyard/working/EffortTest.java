package lapyard.working;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lapyard.cutting.CuttingSolver;
import lapyard.cutting.NearMisses;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.json.GardenReader;
import lapyard.json.Reading;
import lapyard.sheets.RollSolver;
import lapyard.stages.StagingSolver;
import lapyard.weekends.WeekendPlanner;
import org.junit.jupiter.api.Test;

/** The same garden has the same plan on a busy machine: no clock ends a search that nobody bounded by seconds. */
class EffortTest {
    /** Where an effort may hold a clock: a search that is asked for with seconds, and parts of such a one. */
    private static final Set<String> ASKED_WITH_SECONDS = Set.of("json/SolveLine", "stages/StagingSolver",
            "cutting/BoardSets", "cutting/CuttingSolver", "cutting/Lacking", "sheets/RollSolver", "cutting/Retrim", "working/Effort");

    private static final Duration YEAR = Duration.ofDays(365);

    @Test
    void noClockIsSetButWhereSecondsAreAskedFor() throws IOException {
        Set<String> clocks = new TreeSet<>();
        Path main = Path.of("src/main/java/lapyard");
        Pattern made = Pattern.compile("new Effort\\(");
        try (Stream<Path> files = Files.walk(main)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
                String name = main.relativize(file).toString().replace(".java", "").replace('\\', '/');
                if (name.matches("(rest|cli|store)/.*")) continue;
                Matcher found = made.matcher(Files.readString(file));
                if (found.find()) clocks.add(name);
            }
        }
        assertEquals(new TreeSet<>(ASKED_WITH_SECONDS), clocks);
    }

    @Test
    void whatFollowsEachChangeHasNoClock() {
        for (Effort effort : List.of(CuttingSolver.QUICK, NearMisses.GLANCE, RollSolver.QUICK, StagingSolver.QUICK, WeekendPlanner.FOLLOWING)) {
            assertTrue(effort.limit().compareTo(YEAR) > 0, effort.toString());
            assertTrue(effort.steps() <= 500_000, "a follower of changes is quick: " + effort);
        }
    }

    /** A garden of a seed, prepared alone and while eight threads keep the processors busy. */
    @Test
    void aBusyMachinePlansAsAnIdleOne() throws Exception {
        Random random = new Random(20_31);
        StringBuilder beds = new StringBuilder();
        for (int i = 0; i < 7; i++) {
            beds.append(i == 0 ? "" : ",").append("{\"id\":\"").append((char) ('A' + i)).append("\",\"width\":").append(1000 + 50 * random.nextInt(50))
                    .append(",\"depth\":").append(800 + 50 * random.nextInt(15)).append(",\"courses\":").append(2 + random.nextInt(3))
                    .append(",\"at\":[").append(i * 4500).append(",0]}");
        }
        String document = "{\"beds\":[" + beds + "]}";
        String alone = told(document);
        AtomicBoolean over = new AtomicBoolean();
        List<Thread> busy = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            Thread thread = new Thread(() -> {
                double spin = 0;
                while (!over.get()) spin += Math.sqrt(spin + 1);
                if (spin < 0) throw new AssertionError();
            });
            thread.setDaemon(true);
            thread.start();
            busy.add(thread);
        }
        try {
            assertEquals(alone, told(document));
        } finally {
            over.set(true);
            for (Thread thread : busy) thread.join();
        }
    }

    private static String told(String document) throws Exception {
        JobSheet sheet = Job.prepare(((Reading.Read) GardenReader.read(document)).garden());
        return sheet.slip().lines() + "\n" + sheet.cutting().get(0).result().plan() + "\n" + sheet.weekends().days();
    }
}

package lapyard.bench;

import java.util.Random;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.JobSheet;

/**
 * Liners of made-up yards of 3 to 12 beds in their job sheets: how many are proved to cost least, and how far the others lie above
 * the bound. A main class. Arguments: seed (1), yards (100).
 */
public final class YardLiners {
    private YardLiners() {}

    public static void main(String[] arguments) {
        long seed = arguments.length > 0 ? Long.parseLong(arguments[0]) : 1;
        int yards = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 100;
        int liners = 0;
        int proved = 0;
        double gap = 0;
        double cost = 0;
        for (int i = 0; i < yards; i++) {
            JobSheet sheet = Job.prepare(Gardens.garden(yard(3 + i % 10, new Random(seed * 1000 + i))));
            for (JobSheet.MaterialRolls liner : sheet.rolls()) {
                liners++;
                if (liner.result().proven()) proved++;
                cost += liner.result().cost().doubleValue();
                gap += liner.result().cost().doubleValue() / liner.result().lowerBound().doubleValue() - 1;
            }
        }
        System.out.printf("%d of %d liners proved, %.2f %% above the bound on the mean, %.2f in all%n", proved, liners, 100 * gap / liners, cost);
    }

    /** Beds of one or several sizes on a grid of 10, 50 or 100; rectangles and Ls; all, some or none with an open base. */
    private static String yard(int beds, Random random) {
        int grid = new int[] {10, 50, 100}[random.nextInt(3)];
        int sizes = random.nextBoolean() ? beds : 1 + random.nextInt(beds);
        int courses = 1 + random.nextInt(4);
        int open = new int[] {100, 100, 50, 0}[random.nextInt(4)];
        String[] shapes = new String[sizes];
        for (int s = 0; s < sizes; s++) {
            int width = 1000 + grid * random.nextInt(3200 / grid);
            int depth = 800 + grid * random.nextInt(1500 / grid);
            String shape = random.nextInt(5) > 0 ? "\"width\":" + width + ",\"depth\":" + depth
                    : "\"outline\":[[0,0],[%d,0],[%d,%d],[%d,%d],[%d,%d],[0,%d]]".formatted(
                            width + 900, width + 900, depth, 900, depth, 900, depth + 900, depth + 900);
            shapes[s] = shape + ",\"courses\":" + (random.nextInt(3) > 0 ? courses : 1 + random.nextInt(4));
        }
        StringBuilder placed = new StringBuilder();
        for (int bed = 0; bed < beds; bed++) {
            placed.append(bed == 0 ? "" : ",").append("{").append(shapes[bed < sizes ? bed : random.nextInt(sizes)]);
            placed.append(random.nextInt(100) < open ? ",\"base\":\"open\"" : "");
            placed.append(",\"at\":[%d,%d]}".formatted(bed % 4 * 6200, bed / 4 * 4400));
        }
        return "{\"beds\":[" + placed + "]}";
    }
}

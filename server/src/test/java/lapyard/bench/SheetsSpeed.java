package lapyard.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Random;
import lapyard.job.Gardens;
import lapyard.job.Job;
import lapyard.job.JobSheet;
import lapyard.prints.PrintAsk;
import lapyard.prints.Prints;

/**
 * What sheets of beds that all differ take as PDF: processor time of their thread, twice each, with the bytes and their hash, so
 * that two states of the program can be compared. A main class. Arguments: the seed, the number of beds, then names of sheets,
 * for example {@code 7 200 plan setting-out}.
 */
public final class SheetsSpeed {
    private SheetsSpeed() {}

    public static void main(String[] args) throws IOException, NoSuchAlgorithmException {
        String beds = JobSheetSpeed.differing(Integer.parseInt(args[1]), new Random(Long.parseLong(args[0])));
        JobSheet sheet = Job.prepare(Gardens.garden(beds.replaceFirst("\\{", "{\"ground\":{\"baseline\":{\"from\":[-500,-800],\"to\":[30000,-800]}},")));
        for (int round = 0; round < 2; round++) {
            for (int i = 2; i < args.length; i++) {
                MessageDigest hash = MessageDigest.getInstance("SHA-256");
                Counted counted = new Counted();
                long from = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
                Prints.write(args[i], sheet, PrintAsk.usual("", ""), "pdf", 1, new DigestOutputStream(counted, hash));
                System.out.printf("%-14s %8.0f ms of its thread, %9d bytes, %.12s%n", args[i],
                        (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - from) / 1e6, counted.bytes, HexFormat.of().formatHex(hash.digest()));
            }
        }
    }

    private static final class Counted extends OutputStream {
        private long bytes;

        @Override
        public void write(int one) {
            bytes++;
        }

        @Override
        public void write(byte[] some, int from, int count) {
            bytes += count;
        }
    }
}

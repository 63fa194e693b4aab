package lapyard.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Roundings of lengths, each by name. */
public final class Lengths {
    private Lengths() {}

    /** To 0.1 mm, half up: what a saw stop can be set to, and what a piece is called. */
    public static double toTenth(double mm) {
        return Math.floor(mm * 10 + 0.5 + 1e-7) / 10;
    }

    /**
     * To a millionth of a millimetre: far below any tool, and it makes one number of the two that decimals such as
     * 1800.1 - 100 and 1600.1 + 100 give in binary, and of 0 and -0.
     */
    public static double steady(double mm) {
        return Math.rint(mm * 1e6) / 1e6 + 0.0;
    }

    /** As people read it: whole millimetres as {@code 2900}, others to one decimal as {@code 884.5}. */
    public static String text(double mm) {
        long tenths = Math.round(toTenth(mm) * 10);
        String sign = tenths < 0 ? "-" : "";
        long size = Math.abs(tenths);
        return sign + size / 10 + (size % 10 == 0 ? "" : "." + size % 10);
    }

    /** What no stretch takes from one place to another, in order; each from its first number to its second. */
    public static List<double[]> free(double from, double to, List<double[]> taken) {
        List<double[]> free = new ArrayList<>();
        double at = from;
        for (double[] next : taken.stream().sorted(Comparator.comparingDouble(one -> one[0])).toList()) {
            if (next[0] > at) free.add(new double[] {at, next[0]});
            at = Math.max(at, next[1]);
        }
        if (to > at) free.add(new double[] {at, to});
        return free;
    }
}

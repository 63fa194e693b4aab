package lapyard.working;

import java.time.LocalDate;
import java.util.Locale;

/** Days and months by the names of their constants, so that they are called the same on page and paper and on every Java. */
public final class DayNames {
    private DayNames() {}

    /** {@code Saturday}, {@code September}. */
    public static String full(Enum<?> dayOrMonth) {
        String name = dayOrMonth.name();
        return name.charAt(0) + name.substring(1).toLowerCase(Locale.ROOT);
    }

    /** {@code Sat}, {@code Sep}. */
    public static String brief(Enum<?> dayOrMonth) {
        return full(dayOrMonth).substring(0, 3);
    }

    /** {@code Saturday 5 September 2026}. */
    public static String full(LocalDate date) {
        return full(date.getDayOfWeek()) + " " + date.getDayOfMonth() + " " + full(date.getMonth()) + " " + date.getYear();
    }

    /** {@code Sat 5 Sep}. */
    public static String brief(LocalDate date) {
        return brief(date.getDayOfWeek()) + " " + date.getDayOfMonth() + " " + brief(date.getMonth());
    }
}

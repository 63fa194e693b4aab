package lapyard.rest;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/**
 * The Date header in the fixed form of RFC 9110, section 5.6.7, whose names are English everywhere. Written out here,
 * since a formatter with patterns loads the language data of the whole runtime, a tenth of a second of the start.
 */
final class HttpDate {
    private static final String[] DAYS = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
    private static final String[] MONTHS = {
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"
    };

    private HttpDate() {}

    static String now() {
        return of(OffsetDateTime.now(ZoneOffset.UTC));
    }

    /** @param time in UTC */
    static String of(OffsetDateTime time) {
        return DAYS[time.getDayOfWeek().getValue() - 1] + ", " + two(time.getDayOfMonth()) + ' '
                + MONTHS[time.getMonthValue() - 1] + ' ' + time.getYear() + ' ' + two(time.getHour()) + ':'
                + two(time.getMinute()) + ':' + two(time.getSecond()) + " GMT";
    }

    private static String two(int number) {
        return number < 10 ? "0" + number : Integer.toString(number);
    }
}

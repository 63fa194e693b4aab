package lapyard.working;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.Month;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Against the English names that Java takes from the Unicode Common Locale Data Repository. */
class DayNamesTest {
    @Test
    void daysAndMonthsHaveTheirEnglishNames() {
        for (DayOfWeek day : DayOfWeek.values()) {
            assertEquals(day.getDisplayName(TextStyle.FULL, Locale.ENGLISH), DayNames.full(day));
            assertEquals(day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH), DayNames.brief(day));
        }
        for (Month month : Month.values()) {
            assertEquals(month.getDisplayName(TextStyle.FULL, Locale.ENGLISH), DayNames.full(month));
            assertEquals(month.getDisplayName(TextStyle.SHORT, Locale.ENGLISH), DayNames.brief(month));
        }
    }

    @Test
    void datesAreWrittenDayFirst() {
        LocalDate date = LocalDate.of(2026, 9, 5);
        assertEquals(DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.ENGLISH).format(date), DayNames.full(date));
        assertEquals("Sat 5 Sep", DayNames.brief(date));
    }
}

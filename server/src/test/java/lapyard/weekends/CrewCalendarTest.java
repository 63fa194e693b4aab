package lapyard.weekends;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import lapyard.job.Gardens;
import lapyard.plan.Crew;
import lapyard.stages.StagingProblem;
import org.junit.jupiter.api.Test;

/** A crew's days counted by hand: two people on Saturdays and Sundays, 6 hours each, where nothing else is said. */
class CrewCalendarTest {
    private static Crew crew(String crew) {
        return Gardens.sheet("{\"beds\":[{\"width\":1800,\"depth\":900}],\"crew\":{" + crew + "}}").garden().people().crew();
    }

    /** Day 0 is a Saturday; 20 days are three whole weeks. */
    @Test
    void weekendsAreCountedFromTheFirstSaturday() {
        CrewCalendar calendar = new CrewCalendar(crew(""), 20);
        assertEquals(21, calendar.days);
        assertEquals(List.of(1, 1, 1, 2, 2, 3), List.of(calendar.weekend(0), calendar.weekend(1), calendar.weekend(6), calendar.weekend(7), calendar.weekend(13), calendar.weekend(20)));
        assertEquals(List.of(4, 4, 5), List.of(calendar.weekend(21), calendar.weekend(27), calendar.weekend(28)), "the pattern goes on");
        assertEquals(List.of(0, 1, 7, 8, 14, 15), List.of(calendar.firstDay(1), calendar.lastDay(1), calendar.firstDay(2), calendar.lastDay(2), calendar.firstDay(3), calendar.lastDay(3)));
        assertEquals(List.of(20, 20), List.of(calendar.firstDay(9), calendar.lastDay(9)), "one that never comes is the last day");
        assertEquals(List.of(2, 2, 0), List.of(calendar.hands(0), calendar.hands(22), calendar.hands(2)));
        assertEquals(12, calendar.hoursThere(1));
        assertEquals("Sunday of weekend 2", calendar.said(8));
        assertEquals(Optional.empty(), calendar.date(0));
        assertTrue(calendar.anyoneEver());
    }

    /** A Monday: the days before the first Saturday belong to no weekend. */
    @Test
    void nothingIsWorkedBeforeTheFirstWeekend() {
        CrewCalendar calendar = new CrewCalendar(crew("\"start\":\"2027-03-08\",\"wet\":[\"2027-03-14\"],\"holidays\":[\"2027-03-20\"]"), 14);
        assertEquals(List.of(0, 0, 1, 1, 2), List.of(calendar.weekend(0), calendar.weekend(4), calendar.weekend(5), calendar.weekend(6), calendar.weekend(13)));
        assertEquals("Sat 13 Mar", calendar.said(5));
        assertEquals(List.of(false, true), List.of(calendar.wet(5), calendar.wet(6)));
        assertEquals(List.of(0, 2), List.of(calendar.hands(12), calendar.hands(13)), "a holiday");
        assertEquals(List.of(13, 13), List.of(calendar.firstDay(2), calendar.lastDay(2)));
    }

    /** A day of 6 hours is 24 quarters and the night: 25 units. */
    @Test
    void aDayIsItsQuartersAndTheNight() {
        CrewCalendar calendar = new CrewCalendar(crew("\"start\":\"2027-03-06\",\"wet\":[\"2027-03-07\"],\"people\":[{\"name\":\"Ana\"},{\"name\":\"Bo\",\"hours\":2,\"lifts\":false}]"), 7);
        assertEquals(25, calendar.unitsADay);
        assertEquals(List.of(0, 0, 1, 2), List.of(calendar.dayOf(0), calendar.dayOf(24), calendar.dayOf(25), calendar.dayOf(50)));
        StagingProblem.Calendar units = calendar.calendar();
        List<List<Integer>> there = units.there();
        assertEquals(7 * 25, there.get(CrewCalendar.HANDS).size());
        assertEquals(List.of(2, 2, 1, 1, 0), List.of(0, 7, 8, 23, 24).stream().map(there.get(CrewCalendar.HANDS)::get).toList());
        assertEquals(List.of(1, 1, 0), List.of(0, 23, 24).stream().map(there.get(CrewCalendar.LIFTERS)::get).toList());
        assertEquals(List.of(1, 1), List.of(0, 24).stream().map(there.get(CrewCalendar.SAW)::get).toList());
        assertTrue(there.get(CrewCalendar.DRY).get(0) > 0 && there.get(CrewCalendar.DRY).get(24) == 0 && there.get(CrewCalendar.DRY).get(25) == 0);
        assertTrue(there.get(CrewCalendar.NIGHT).get(0) == 0 && there.get(CrewCalendar.NIGHT).get(24) > 0);
        assertEquals(1, calendar.lifters());
        assertEquals(8, calendar.hoursThere(0));
    }

    /** Three times the hours over 24 a weekend, the days of waiting, ten weeks more, and a week for each day off. */
    @Test
    void enoughDaysAreLaidOut() {
        assertEquals(7 * (3 * 48 / 24 + 2 + 10), CrewCalendar.enough(crew(""), 48, 14, 0).days);
        assertEquals(7 * (3 * 48 / 24 + 2 + 10) + 7 * 2, CrewCalendar.enough(crew("\"start\":\"2027-03-06\",\"wet\":[\"2027-03-07\"],\"holidays\":[\"2027-03-13\"]"), 48, 14, 0).days);
        assertEquals(7 * 52 * 6, CrewCalendar.enough(crew(""), 1e6, 0, 0).days, "six years at most");
        String named = "\"start\":\"2027-03-06\",\"people\":[{\"name\":\"Ana\"},{\"name\":\"Bo\",\"comes\":[\"2028-03-04\"]}]";
        assertEquals(7 * 53, CrewCalendar.enough(crew(named), 1, 0, 0).days, "a day that is named, 364 days on");
        int least = CrewCalendar.enough(crew(""), 1, 0, 0).days;
        assertEquals(7 * 39 + least, CrewCalendar.enough(crew(""), 1, 0, 40).days, "as much room behind weekend 40");
    }

    /** Two share a coat only where the second hardly ever has to be waited for. */
    @Test
    void twoPaintWhereTwoCome() {
        assertEquals(2, new CrewCalendar(crew(""), 70).painters());
        assertEquals(1, new CrewCalendar(crew("\"people\":[{\"name\":\"Ana\"},{\"name\":\"Bo\",\"days\":[\"sat\"]}]"), 70).painters());
        // 20 days of work in ten weekends: Bo is away on two of them, then on three
        assertEquals(2, new CrewCalendar(crew("\"start\":\"2027-03-06\",\"people\":[{\"name\":\"Ana\"},{\"name\":\"Bo\",\"away\":[\"2027-03-06\",\"2027-03-07\"]}]"), 70).painters());
        assertEquals(1, new CrewCalendar(crew("\"start\":\"2027-03-06\",\"people\":[{\"name\":\"Ana\"},{\"name\":\"Bo\",\"away\":[\"2027-03-06\",\"2027-03-07\",\"2027-03-13\"]}]"), 70).painters());
    }

    @Test
    void whoComesOnNamedDaysAloneIsThereOnThoseAlone() {
        CrewCalendar calendar = new CrewCalendar(crew("\"start\":\"2027-03-06\",\"people\":[{\"name\":\"Ana\",\"comes\":[\"2027-03-14\"]}]"), 14);
        assertEquals(List.of(0, 0, 1), List.of(calendar.hands(0), calendar.hands(7), calendar.hands(8)));
        assertTrue(calendar.anyoneEver());
        assertFalse(new CrewCalendar(crew("\"start\":\"2027-03-06\",\"people\":[{\"name\":\"Ana\",\"comes\":[\"2028-03-11\"]}]"), 14).anyoneEver());
    }
}

package lapyard.plan;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Who builds and when.
 *
 * @param described whether the garden says anything of it; if not, all of it is our guess
 * @param rates     minutes, every rate present
 */
public record Crew(boolean described, Dates dates, List<Person> people, Map<Rate, Double> rates, Waits waits) {
    public Crew {
        people = List.copyOf(people);
        rates = Map.copyOf(rates);
    }

    /**
     * When work is done.
     *
     * @param start    first day of work; empty where only weekends are counted
     * @param zone     IANA name of the time zone, empty for the time of wherever one is
     * @param from     when a day begins
     * @param hours    of a day
     * @param holidays days off for everybody
     * @param wet      days on which no finish goes on
     */
    public record Dates(
            Optional<LocalDate> start,
            String zone,
            Set<DayOfWeek> days,
            LocalTime from,
            double hours,
            Set<LocalDate> holidays,
            Set<LocalDate> wet) {
        public Dates {
            days = Set.copyOf(days);
            holidays = Set.copyOf(holidays);
            wet = Set.copyOf(wet);
        }
    }

    /**
     * What cannot be hurried.
     *
     * @param leadDays         from order to delivery where the supplier names none
     * @param cureDays         from the pour to the first timber on it
     * @param coatGapHours     between two coats
     * @param beforeLinerHours from the last coat to the liner
     * @param settleDays       from filling to topping up
     */
    public record Waits(int leadDays, int cureDays, double coatGapHours, double beforeLinerHours, int settleDays) {
        public static final Waits USUAL = new Waits(7, 7, 24, 48, 28);

        public Waits withLead(int days) {
            return new Waits(days, cureDays, coatGapHours, beforeLinerHours, settleDays);
        }
    }

    /**
     * @param days  on which they come, among those of the crew
     * @param hours from the beginning of the day
     * @param lifts whether they can take an end of a heavy timber
     * @param away  days on which they do not come
     * @param comes the only days on which they come; empty for no such limit
     */
    public record Person(String name, Set<DayOfWeek> days, double hours, boolean lifts, Set<LocalDate> away, Set<LocalDate> comes) {
        public Person {
            days = Set.copyOf(days);
            away = Set.copyOf(away);
            comes = Set.copyOf(comes);
        }
    }

    private static final Set<DayOfWeek> WEEKEND = Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY);

    /** Two people, both can lift, Saturdays and Sundays, six hours a day. */
    public static final Crew USUAL = new Crew(
            false,
            new Dates(Optional.empty(), "", WEEKEND, LocalTime.of(9, 0), 6, Set.of(), Set.of()),
            List.of(new Person("You", WEEKEND, 6, true, Set.of(), Set.of()), new Person("Helper", WEEKEND, 6, true, Set.of(), Set.of())),
            Stream.of(Rate.values()).collect(Collectors.toMap(rate -> rate, rate -> rate.usualMinutes)),
            Waits.USUAL);

    public double minutes(Rate rate) {
        return rates.get(rate);
    }
}

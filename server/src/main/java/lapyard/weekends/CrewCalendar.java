package lapyard.weekends;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import lapyard.plan.Crew;
import lapyard.plan.Crew.Person;
import lapyard.stages.StagingProblem;
import lapyard.working.DayNames;
import lapyard.working.Whole;

/**
 * The crew's days as units of one clock: a day has its hours in quarters, and one unit for the night behind them, in
 * which waits of whole days run.
 */
final class CrewCalendar {
    static final int UNIT_MINUTES = 15;
    /** Resources in the order in which tasks use them. */
    static final int HANDS = 0;
    static final int LIFTERS = 1;
    static final int SAW = 2;
    static final int DRY = 3;
    static final int NIGHT = 4;
    private static final int PLENTY = 1_000_000;
    static final int MOST_DAYS = 7 * 52 * 6;

    final Crew crew;
    final int unitsADay;
    final int days;
    private final int[] weekend;
    /** Where nobody ever comes who can lift, wheels do, as the finding about lifts says. */
    private final boolean wheels;
    private final List<List<Person>> there = new ArrayList<>();

    /** @param days that are laid out; the pattern repeats behind them */
    CrewCalendar(Crew crew, int days) {
        this.crew = crew;
        this.days = Math.min(MOST_DAYS, (days + 6) / 7 * 7);
        unitsADay = (int) Whole.up(crew.dates().hours() * 60 / UNIT_MINUTES) + 1;
        for (int day = 0; day < this.days; day++) there.add(thereOn(day));
        wheels = lifters() == 0;
        weekend = new int[this.days];
        int number = 0;
        int week = Integer.MIN_VALUE;
        for (int day = 0; day < this.days; day++) {
            int own = weekOf(day);
            if (hands(day) > 0 && own != week) {
                number++;
                week = own;
            }
            weekend[day] = number;
        }
    }

    /**
     * A number of days that is enough for this much work, with waits and days off, every day that somebody has named to come on, and as much room behind
     * the last weekend that a bed is fixed for.
     *
     * @param last 0 where none is fixed
     */
    static CrewCalendar enough(Crew crew, double personHours, int waitDays, int last) {
        double weekly = 0;
        for (Person person : crew.people()) weekly += person.hours() * person.days().stream().filter(crew.dates().days()::contains).count();
        double weeks = 3 * personHours / Math.max(0.25, weekly) + waitDays / 7.0 + 10;
        int off = crew.dates().holidays().size() + crew.dates().wet().size();
        int enough = (int) Math.min(MOST_DAYS, 7 * Math.ceil(weeks) + 7L * off);
        int named = crew.dates().start().map(start -> crew.people().stream().flatMap(person -> person.comes().stream())
                .mapToInt(date -> (int) ChronoUnit.DAYS.between(start, date) + 1).max().orElse(0)).orElse(0);
        CrewCalendar reached = new CrewCalendar(crew, Math.max(named, enough));
        if (reached.comes(last)) return reached;
        CrewCalendar longest = new CrewCalendar(crew, MOST_DAYS);
        return longest.comes(last) ? new CrewCalendar(crew, longest.firstDay(last) + enough) : reached;
    }

    /** Whether a weekend of that number is laid out. */
    boolean comes(int number) {
        return number <= weekend(days - 1);
    }

    private LocalDate anchor() {
        // without dates the count begins on a Saturday, or on the first day that is worked after one
        LocalDate saturday = LocalDate.of(2000, 1, 1);
        while (!crew.dates().days().contains(saturday.getDayOfWeek())) saturday = saturday.plusDays(1);
        return saturday;
    }

    private LocalDate counted(int day) {
        return crew.dates().start().orElseGet(this::anchor).plusDays(day);
    }

    /** Weeks begin on Mondays; day 0 of the epoch is a Thursday. */
    private int weekOf(int day) {
        return (int) Math.floorDiv(counted(day).toEpochDay() + 3, 7);
    }

    Optional<LocalDate> date(int day) {
        return crew.dates().start().map(start -> start.plusDays(day));
    }

    DayOfWeek dayOfWeek(int day) {
        return counted(day).getDayOfWeek();
    }

    /** Number of the weekend, or working week, from 1; before the first working day 0. */
    int weekend(int day) {
        return day < days ? weekend[day] : weekend[days - 1] + 1 + (day - days) / 7;
    }

    /** The first and the last day of a weekend; the last day laid out for one that never comes. */
    int firstDay(int number) {
        for (int day = 0; day < days; day++) if (weekend[day] == number && hands(day) > 0) return day;
        return days - 1;
    }

    int lastDay(int number) {
        for (int day = days - 1; day >= 0; day--) if (weekend[day] == number && hands(day) > 0) return day;
        return days - 1;
    }

    boolean wet(int day) {
        return date(day).map(crew.dates().wet()::contains).orElse(false);
    }

    List<Person> there(int day) {
        return day < days ? there.get(day) : thereOn(day);
    }

    private List<Person> thereOn(int day) {
        if (!crew.dates().days().contains(dayOfWeek(day)) || date(day).map(crew.dates().holidays()::contains).orElse(false)) return List.of();
        return crew.people().stream().filter(person -> person.days().contains(dayOfWeek(day))
                && date(day).map(date -> !person.away().contains(date) && (person.comes().isEmpty() || person.comes().contains(date)))
                        .orElse(true)).toList();
    }

    int hands(int day) {
        return there(day).size();
    }

    /** Those who are there in one unit of a day, or those of them who can lift; nobody in the night behind it. */
    int hands(int day, int unit, boolean lifting) {
        int hands = 0;
        for (Person person : unit == unitsADay - 1 ? List.<Person>of() : there(day)) {
            if (unit * UNIT_MINUTES < person.hours() * 60 - 1e-9 && (!lifting || wheels || person.lifts())) hands++;
        }
        return hands;
    }

    double hoursThere(int day) {
        return there(day).stream().mapToDouble(Person::hours).sum();
    }

    /** The most people who can lift together at some time. */
    int lifters() {
        int most = 0;
        for (List<Person> day : there) {
            int lifters = 0;
            for (Person person : day) if (person.lifts()) lifters++;
            most = Math.max(most, lifters);
        }
        return most;
    }

    /** Number of people who share a coat: 2 if two or more come on nine of ten days of work, else 1, so that work does not wait for the second. */
    int painters() {
        int worked = 0;
        int shared = 0;
        for (int day = 0; day < days; day++) {
            worked += hands(day) > 0 ? 1 : 0;
            shared += hands(day) > 1 ? 1 : 0;
        }
        return worked > 0 && 10 * shared >= 9 * worked ? 2 : 1;
    }

    boolean anyoneEver() {
        for (int day = 0; day < days; day++) if (hands(day) > 0) return true;
        return false;
    }

    List<Integer> capacities() {
        return List.of(crew.people().size(), crew.people().size(), 1, PLENTY, PLENTY);
    }

    StagingProblem.Calendar calendar() {
        int units = days * unitsADay;
        List<List<Integer>> there = new ArrayList<>();
        for (int r = 0; r < 5; r++) there.add(new ArrayList<>(units));
        List<Integer> none = Collections.nCopies(unitsADay, 0);
        List<Integer> dry = dayAndNight(PLENTY, 0);
        List<Integer> night = dayAndNight(0, PLENTY);
        for (int day = 0; day < days; day++) {
            there.get(HANDS).addAll(hands(day) == 0 ? none : handsOf(day, false));
            there.get(LIFTERS).addAll(hands(day) == 0 ? none : handsOf(day, true));
            there.get(DRY).addAll(wet(day) ? none : dry);
            there.get(NIGHT).addAll(night);
        }
        there.set(SAW, Collections.nCopies(units, 1));
        return new StagingProblem.Calendar(Collections.nCopies(units, true), there);
    }

    private List<Integer> dayAndNight(int byDay, int byNight) {
        List<Integer> units = new ArrayList<>(Collections.nCopies(unitsADay - 1, byDay));
        units.add(byNight);
        return units;
    }

    private List<Integer> handsOf(int day, boolean lifting) {
        List<Integer> hands = new ArrayList<>();
        for (int unit = 0; unit < unitsADay; unit++) hands.add(hands(day, unit, lifting));
        return hands;
    }

    int dayOf(int unit) {
        return unit / unitsADay;
    }

    /** The day as one says it: with its date where there is one, else counted. */
    String said(int day) {
        return date(day).map(DayNames::brief).orElseGet(() -> DayNames.full(dayOfWeek(day)) + " of weekend " + weekend(day));
    }
}

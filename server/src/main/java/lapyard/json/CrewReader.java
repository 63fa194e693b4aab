package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import lapyard.plan.Crew;
import lapyard.plan.Fact;
import lapyard.plan.FindingKind;
import lapyard.plan.Rate;
import lapyard.plan.WayKind;

/** Reads {@code crew} but for its lift limit: who builds, when, and how long work takes. */
final class CrewReader {
    /** Begin of a day of work. */
    static final LocalTime LATEST = LocalTime.of(22, 0);
    private static final List<String> DAYS = List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun");

    private CrewReader() {}

    /** @param barrowMinutes what an older document says elsewhere of a barrow */
    static Crew read(Cursor crew, OptionalDouble barrowMinutes) {
        Crew.Dates usual = Crew.USUAL.dates();
        boolean described = false;
        for (String field : List.of("start", "days", "hours", "people")) described |= crew.has(field);
        Optional<LocalDate> start = date(crew, "start");
        String zone = zone(crew, "");
        Set<DayOfWeek> days = days(crew, "days", usual.days());
        LocalTime from = time(crew, "from", usual.from());
        double hours = crew.number("hours", usual.hours());
        List<Crew.Person> people = people(crew, days, hours, start);
        Set<LocalDate> holidays = dates(crew, "holidays", start);
        Set<LocalDate> wet = dates(crew, "wet", start);
        int leadDays = crew.count("leadDays");
        Crew.Waits waits = crew.like("waits", Crew.Waits.USUAL.withLead(leadDays));
        return new Crew(
                described,
                new Crew.Dates(start, zone, days, from, hours, holidays, wet),
                people,
                crew.read("rates", rates -> rates(rates, barrowMinutes)),
                waits);
    }

    private static Map<Rate, Double> rates(Cursor cursor, OptionalDouble barrowMinutes) {
        Map<Rate, Double> rates = new EnumMap<>(Rate.class);
        for (Rate rate : Rate.values()) {
            double usual = rate == Rate.BARROW ? barrowMinutes.orElse(rate.usualMinutes) : rate.usualMinutes;
            rates.put(rate, cursor.number(rate.field, usual));
        }
        return rates;
    }

    private static List<Crew.Person> people(Cursor crew, Set<DayOfWeek> days, double hours, Optional<LocalDate> start) {
        AtomicInteger number = new AtomicInteger();
        List<Crew.Person> people = crew.each("people", "person", person -> {
            int before = number.getAndIncrement();
            String name = person.text("name", before == 0 ? "You" : "Helper " + before);
            Set<DayOfWeek> own = days(person, "days", days);
            double stays = person.number("hours", hours);
            boolean lifts = person.flag("lifts");
            return new Crew.Person(name, own, Math.min(stays, hours), lifts, dates(person, "away", start), dates(person, "comes", start));
        });
        if (people.isEmpty()) {
            for (Crew.Person usual : Crew.USUAL.people()) {
                people.add(new Crew.Person(usual.name(), days, hours, usual.lifts(), Set.of(), Set.of()));
            }
            crew.defaulted("people");
        }
        if (people.stream().noneMatch(person -> person.days().stream().anyMatch(days::contains))) {
            crew.add(crew.fault(FindingKind.CREW_NOBODY, "people").way(WayKind.COME_ON, Fact.name(words(days))));
        }
        return people;
    }

    private static Set<DayOfWeek> days(Cursor cursor, String field, Set<DayOfWeek> usual) {
        List<JsonNode> given = cursor.list(field);
        if (given.isEmpty()) {
            if (cursor.has(field)) cursor.few(field, 0, 1, "days");
            else cursor.defaulted(field);
            return usual;
        }
        Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
        for (JsonNode one : given) {
            int at = one.isTextual() ? DAYS.indexOf(one.textValue()) : -1;
            if (at < 0) cursor.misshapen(field, "days of the week", one, "[\"sat\", \"sun\"]");
            else days.add(DayOfWeek.of(at + 1));
        }
        return days.isEmpty() ? usual : days;
    }

    static String words(Set<DayOfWeek> days) {
        return new TreeSet<>(days).stream()
                .map(day -> day.name().substring(0, 3).toLowerCase(Locale.ROOT))
                .reduce((a, b) -> a + ", " + b)
                .orElse("none");
    }

    /** An IANA name, or {@code otherwise}, which the field may say too. */
    static String zone(Cursor cursor, String otherwise) {
        String zone = cursor.text("zone");
        try {
            return zone.equals(otherwise) ? zone : ZoneId.of(zone).getId();
        } catch (DateTimeException e) {
            cursor.misshapen("zone", "a time zone by its IANA name", cursor.raw("zone"), "\"Europe/London\"");
            return otherwise;
        }
    }

    static Optional<LocalDate> date(Cursor cursor, String field) {
        String text = cursor.text(field, "");
        return text.isEmpty() ? Optional.empty() : date(cursor, field, text);
    }

    private static Optional<LocalDate> date(Cursor cursor, String field, String text) {
        try {
            LocalDate date = LocalDate.parse(text);
            if (date.getYear() >= 1970 && date.getYear() <= 2200) return Optional.of(date);
        } catch (DateTimeException e) {
            // told below, as a date out of reach is
        }
        misdated(cursor, field, text);
        return Optional.empty();
    }

    static void misdated(Cursor cursor, String field, String text) {
        cursor.misshapen(field, "a date from 1970 to 2200", TextNode.valueOf(text), "\"2027-03-06\"");
    }

    /** A date of the crew or the tally that lies before the plan begins. */
    static void past(Cursor cursor, String field, LocalDate date, LocalDate start) {
        cursor.add(cursor.fault(FindingKind.DATE_PAST, field).with("date", new Fact.Day(date)).with("start", new Fact.Day(start))
                .by(Fact.count(ChronoUnit.DAYS.between(date, start), "days")).way(WayKind.TAKE_OUT).way(WayKind.BEGIN_EARLIER));
    }

    private static Set<LocalDate> dates(Cursor cursor, String field, Optional<LocalDate> start) {
        Set<LocalDate> dates = new TreeSet<>();
        for (JsonNode one : cursor.list(field)) {
            Optional<LocalDate> date = one.isTextual() ? date(cursor, field, one.textValue()) : Optional.empty();
            if (!one.isTextual()) {
                cursor.misshapen(field, "dates", one, "\"2027-03-06\"");
            } else if (date.isPresent() && start.isPresent() && date.get().isBefore(start.get())) {
                past(cursor, field, date.get(), start.get());
            }
            date.ifPresent(dates::add);
        }
        if (!dates.isEmpty() && start.isEmpty()) cursor.add(cursor.fault(FindingKind.DATE_NO_START, field).way(WayKind.GIVE_START));
        return dates;
    }

    private static LocalTime time(Cursor cursor, String field, LocalTime usual) {
        String text = cursor.text(field, usual.toString());
        try {
            LocalTime time = LocalTime.parse(text);
            if (time.isAfter(LATEST)) {
                cursor.misshapen(field, "a time up to " + LATEST, TextNode.valueOf(text), "\"09:00\"");
            }
            return time;
        } catch (DateTimeException e) {
            cursor.misshapen(field, "a time of day", TextNode.valueOf(text), "\"09:00\"");
            return usual;
        }
    }
}

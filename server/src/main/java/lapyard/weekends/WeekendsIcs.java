package lapyard.weekends;

import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.DaylightSavingsTime;
import biweekly.component.Observance;
import biweekly.component.StandardTime;
import biweekly.component.VEvent;
import biweekly.component.VTimezone;
import biweekly.io.TimezoneAssignment;
import biweekly.io.text.ICalWriter;
import biweekly.property.DateStart;
import biweekly.property.DateEnd;
import biweekly.property.Method;
import biweekly.property.Transparency;
import biweekly.util.DateTimeComponents;
import biweekly.util.ICalDate;
import biweekly.util.UtcOffset;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.TimeZone;
import java.util.stream.Collectors;
import lapyard.plan.Crew;

/** The days of work as RFC 5545 text. */
public final class WeekendsIcs {
    /** {@code sequence} grows with each revision, so that a later file replaces the events of an earlier one. */
    public record Stamp(String gardenId, String gardenName, Instant made, int sequence, LocalDate assumedStart) {}

    /** By when something is to be ordered. */
    public record BuyBy(String id, String label, int day) {}

    private static final int LINE = 60;

    private WeekendsIcs() {}

    /**
     * One event a day of work, one all-day event for each thing to order. An event keeps its UID as long as its day of
     * the plan is that day, so that the calendar moves it when the file is read again. Without a time zone times are
     * those of wherever one is; without a first day of work it is {@code assumedStart}.
     */
    public static String write(Weekends weekends, Crew crew, List<BuyBy> buy, Stamp stamp) {
        LocalDate first = crew.dates().start().orElse(stamp.assumedStart());
        ICalendar calendar = calendar("Weekends", stamp);
        ZoneId zone = crew.dates().zone().isEmpty() ? ZoneOffset.UTC : ZoneId.of(crew.dates().zone());
        if (!crew.dates().zone().isEmpty()) {
            LocalDate last = first.plusDays(weekends.endDay() + 1L);
            TimezoneAssignment assigned = new TimezoneAssignment(TimeZone.getTimeZone(zone), timezone(zone, first, last));
            calendar.getTimezoneInfo().setDefaultTimezone(assigned);
        } else {
            calendar.getTimezoneInfo().setGlobalFloatingTime(true);
        }
        Map<String, Weekends.Task> tasks = weekends.byId();
        for (Weekends.Day day : weekends.days()) {
            if (!day.parts().isEmpty()) calendar.addEvent(event(day, tasks, crew, first.plusDays(day.number()), zone, stamp));
        }
        for (BuyBy one : buy) calendar.addEvent(order(one, first.plusDays(one.day()), stamp));
        return text(calendar);
    }

    public static ICalendar calendar(String kind, Stamp stamp) {
        ICalendar calendar = new ICalendar();
        calendar.setVersion(ICalVersion.V2_0);
        calendar.setProductId("-//Lapyard//" + kind + "//EN");
        calendar.setMethod(Method.publish());
        calendar.setName(stamp.gardenName());
        return calendar;
    }

    public static String text(ICalendar calendar) {
        StringWriter text = new StringWriter();
        try (ICalWriter writer = new ICalWriter(text, ICalVersion.V2_0)) {
            // the standard counts octets, the writer characters: names with accents take two
            writer.getVObjectWriter().getFoldedLineWriter().setLineLength(LINE);
            writer.write(calendar);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    private static VEvent event(Weekends.Day day, Map<String, Weekends.Task> tasks, Crew crew, LocalDate date, ZoneId zone, Stamp stamp) {
        int from = day.parts().stream().mapToInt(Weekends.Part::fromMinute).min().orElse(0);
        int to = day.parts().stream().mapToInt(Weekends.Part::toMinute).max().orElse(0);
        VEvent event = stamped("work-day-" + (day.number() + 1), stamp);
        LocalDateTime begin = date.atTime(crew.dates().from());
        event.setDateStart(new DateStart(time(begin.plusMinutes(from), crew, zone)));
        event.setDateEnd(new DateEnd(time(begin.plusMinutes(to), crew, zone)));
        List<String> places = day.parts().stream().map(part -> tasks.get(part.task()).work().place()).distinct().toList();
        event.setSummary(stamp.gardenName() + ", weekend " + day.weekend() + ": " + String.join(", ", places.subList(0, Math.min(4, places.size())))
                + (places.size() > 4 ? " and " + (places.size() - 4) + " more" : ""));
        event.setDescription(day.parts().stream()
                .map(part -> begin.plusMinutes(part.fromMinute()).toLocalTime() + " " + tasks.get(part.task()).work().words()
                        + (part.of() > 1 ? ", part " + part.number() + " of " + part.of() : ""))
                .collect(Collectors.joining("\n")) + "\nWho: " + String.join(", ", day.people()));
        event.addCategories("Weekend " + day.weekend());
        return event;
    }

    private static VEvent order(BuyBy buy, LocalDate date, Stamp stamp) {
        VEvent event = stamped("order-" + buy.id(), stamp);
        event.setDateStart(wholeDay(date));
        event.setSummary(stamp.gardenName() + ": order " + buy.label() + " by today");
        event.setTransparency(Transparency.transparent());
        return event;
    }

    public static DateStart wholeDay(LocalDate date) {
        return new DateStart(new ICalDate(new DateTimeComponents(date.getYear(), date.getMonthValue(), date.getDayOfMonth()), false));
    }

    public static VEvent stamped(String id, Stamp stamp) {
        VEvent event = new VEvent();
        event.setUid(id + "." + stamp.gardenId() + "@lapyard");
        event.setDateTimeStamp(Date.from(stamp.made()));
        event.setSequence(stamp.sequence());
        return event;
    }

    /** An instant if the time zone is known, else the local time alone. */
    private static ICalDate time(LocalDateTime local, Crew crew, ZoneId zone) {
        if (crew.dates().zone().isEmpty()) {
            return new ICalDate(components(local), true);
        }
        return new ICalDate(Date.from(local.atZone(zone).toInstant()), true);
    }

    private static DateTimeComponents components(LocalDateTime local) {
        return new DateTimeComponents(local.getYear(), local.getMonthValue(), local.getDayOfMonth(), local.getHour(),
                local.getMinute(), local.getSecond(), false);
    }

    /** The zone's clock changes from a year before to a year after, one by one: no rule to be read wrongly. */
    private static VTimezone timezone(ZoneId zone, LocalDate first, LocalDate last) {
        ZoneRules rules = zone.getRules();
        VTimezone timezone = new VTimezone(zone.getId());
        Instant from = first.minusYears(1).atStartOfDay(zone).toInstant();
        Instant until = last.plusYears(1).atStartOfDay(zone).toInstant();
        ZoneOffset before = rules.getOffset(from);
        observe(timezone, rules, from, LocalDateTime.ofInstant(from, before), before, before);
        for (ZoneOffsetTransition change = rules.nextTransition(from); change != null && change.getInstant().isBefore(until);
                change = rules.nextTransition(change.getInstant())) {
            observe(timezone, rules, change.getInstant(), change.getDateTimeBefore(), change.getOffsetBefore(), change.getOffsetAfter());
        }
        return timezone;
    }

    private static void observe(VTimezone timezone, ZoneRules rules, Instant at, LocalDateTime local, ZoneOffset from, ZoneOffset to) {
        Observance observance;
        if (rules.isDaylightSavings(at)) {
            DaylightSavingsTime daylight = new DaylightSavingsTime();
            timezone.addDaylightSavingsTime(daylight);
            observance = daylight;
        } else {
            StandardTime standard = new StandardTime();
            timezone.addStandardTime(standard);
            observance = standard;
        }
        observance.setDateStart(components(local));
        observance.setTimezoneOffsetFrom(new UtcOffset(from.getTotalSeconds() * 1000L));
        observance.setTimezoneOffsetTo(new UtcOffset(to.getTotalSeconds() * 1000L));
    }
}

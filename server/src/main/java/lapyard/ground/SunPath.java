package lapyard.ground;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Point;
import lapyard.plan.SunDay;
import net.e175.klaus.solarpositioning.DeltaT;
import net.e175.klaus.solarpositioning.SPA;
import net.e175.klaus.solarpositioning.SolarPosition;
import net.e175.klaus.solarpositioning.SunriseResult;

/** Where the sun stands on a day, by the solar position algorithm. */
final class SunPath {
    /** Lower than this it is no use to plants; common practice, no source. */
    static final double LEAST_ALTITUDE_DEG = 3;

    /** Sea level, 1013 hPa and 10 degrees: refraction matters only near the horizon. */
    private static final double ELEVATION_M = 0;

    private static final double PRESSURE_HPA = 1013;
    private static final double TEMPERATURE_C = 10;

    private SunPath() {}

    /**
     * One look at the sun.
     *
     * @param way     towards it in the yard, of length 1
     * @param tangent of its altitude
     */
    record Look(Point way, double tangent) {}

    /** Empty where the sun does not rise or set on that day. */
    record Times(Optional<ZonedDateTime> rise, Optional<ZonedDateTime> set) {}

    /** Altitude and azimuth, degrees; azimuth clockwise from north. */
    record Position(double altitudeDeg, double azimuthDeg) {}

    static Position position(ZonedDateTime at, double latitudeDeg, double longitudeDeg) {
        SolarPosition sun = SPA.calculateSolarPosition(
                at, latitudeDeg, longitudeDeg, ELEVATION_M, DeltaT.estimate(at.toLocalDate()), PRESSURE_HPA, TEMPERATURE_C);
        return new Position(90 - sun.zenithAngle(), sun.azimuth());
    }

    /** The day runs from midnight to midnight by the sun at that longitude, so that it holds one rise and one set. */
    static ZonedDateTime begins(SunDay day) {
        return ZonedDateTime.of(day.day(), LocalTime.MIDNIGHT, ZoneOffset.UTC)
                .minus(Duration.ofSeconds(Math.round(day.longitudeDeg() / 15 * 3600)));
    }

    /** Those in which it stands high enough to matter. */
    static List<Look> looks(SunDay day, double northDeg, int stepMinutes) {
        List<Look> looks = new ArrayList<>();
        ZonedDateTime begins = begins(day);
        for (int minute = stepMinutes / 2; minute < 24 * 60; minute += stepMinutes) {
            Position sun = position(begins.plusMinutes(minute), day.latitudeDeg(), day.longitudeDeg());
            if (sun.altitudeDeg() >= LEAST_ALTITUDE_DEG) {
                // North lies northDeg counter-clockwise from y; azimuth runs clockwise from north.
                double angle = Math.toRadians(90 + northDeg - sun.azimuthDeg());
                Point way = new Point(Math.cos(angle), Math.sin(angle));
                looks.add(new Look(way, Math.tan(Math.toRadians(sun.altitudeDeg()))));
            }
        }
        return looks;
    }

    /** Of the place's own day: the algorithm works on the day of Greenwich, so the days beside it are asked too. */
    static Times times(SunDay day) {
        ZonedDateTime noon = begins(day).plusHours(12);
        Optional<ZonedDateTime> rise = Optional.empty();
        Optional<ZonedDateTime> set = Optional.empty();
        for (int off = -1; off <= 1; off++) {
            LocalDate date = noon.toLocalDate().plusDays(off);
            SunriseResult result = SPA.calculateSunriseTransitSet(
                    date.atStartOfDay(ZoneOffset.UTC), day.latitudeDeg(), day.longitudeDeg(), DeltaT.estimate(date));
            if (result instanceof SunriseResult.RegularDay regular) {
                rise = rise.or(() -> within(regular.sunrise(), noon));
                set = set.or(() -> within(regular.sunset(), noon));
            }
        }
        return new Times(rise.map(at -> at.withZoneSameInstant(day.zone())), set.map(at -> at.withZoneSameInstant(day.zone())));
    }

    private static Optional<ZonedDateTime> within(ZonedDateTime at, ZonedDateTime noon) {
        return Duration.between(noon, at).abs().compareTo(Duration.ofHours(12)) <= 0 ? Optional.of(at) : Optional.empty();
    }
}

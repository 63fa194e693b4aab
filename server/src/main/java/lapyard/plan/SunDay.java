package lapyard.plan;

import java.time.LocalDate;
import java.time.ZoneId;

/**
 * Where and when the sun is asked after.
 *
 * @param latitudeDeg  north above 0
 * @param longitudeDeg east above 0
 * @param zone         time zone of the times shown
 */
public record SunDay(double latitudeDeg, double longitudeDeg, ZoneId zone, LocalDate day) {}

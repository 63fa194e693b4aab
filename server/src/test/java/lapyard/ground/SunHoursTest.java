package lapyard.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.AccessStandard;
import lapyard.plan.Garden;
import lapyard.plan.Ground;
import lapyard.plan.Preparation;
import lapyard.plan.SunDay;
import lapyard.plan.Tall;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SunHoursTest {
    /**
     * Reda and Andreas, NREL/TP-560-34302, worked example (seen): zenith 50.111622, azimuth 194.340241 at 1830 m and
     * 820 mbar. Ours takes sea level, which shifts the altitude by refraction and parallax of a few thousandths.
     */
    @Test
    void theSunStandsWhereThePublishedExampleHasIt() {
        SunPath.Position sun = SunPath.position(ZonedDateTime.parse("2003-10-17T12:30:30-07:00"), 39.742476, -105.1786);
        assertEquals(90 - 50.111622, sun.altitudeDeg(), 0.006);
        assertEquals(194.340241, sun.azimuthDeg(), 0.0005);
    }

    /**
     * Rise and set, minutes after local midnight. US Naval Observatory times (seen, to a minute); Greenwich by another
     * program (seen); the first by the report of the algorithm, its set recomputed for the place's own day (the
     * report's 17:20:19 is that of the evening before).
     */
    @ParameterizedTest(name = "{0} at {1}, {2}")
    @CsvSource({
        "2003-10-17, 39.742476, -105.1786, -07:00, 372.72, 1038.8, 1",
        "2020-06-25, 61.216667, -149.866667, -08:00, 262, 1422, 1.5",
        "2020-12-25, 61.216667, -149.866667, -09:00, 615, 944, 1.5",
        "2020-06-25, -36.833333, 174.8, +12:00, 454, 1033, 1.5",
        "2020-03-25, 1.283333, 103.833333, +08:00, 427, 1154, 1.5",
        "2020-01-05, -15.8, -47.85, -03:00, 346, 1128, 1.5",
        "2013-06-21, 51.466667, 0, +00:00, 223, 1221, 2"
    })
    void itRisesAndSetsAsPublished(
            String day, double latitude, double longitude, String zone, double rise, double set, double tolerance) {
        SunDay asked = new SunDay(latitude, longitude, ZoneId.of(zone), LocalDate.parse(day));
        SunPath.Times times = SunPath.times(asked);
        ZonedDateTime midnight = asked.day().atStartOfDay(asked.zone());
        assertEquals(rise, minutes(midnight, times.rise().orElseThrow()), tolerance);
        assertEquals(set, minutes(midnight, times.set().orElseThrow()), tolerance);
    }

    private static double minutes(ZonedDateTime midnight, ZonedDateTime at) {
        return java.time.Duration.between(midnight, at).toSeconds() / 60.0;
    }

    /** Noon altitude is 90 less the latitude's distance from the declination (geometry): 73.44 at 40 north in June. */
    @Test
    void atNoonInJuneItStandsHighInTheSouth() {
        SunDay june = new SunDay(40, 0, ZoneId.of("UTC"), LocalDate.parse("2000-06-21"));
        SunPath.Look highest = SunPath.looks(june, 0, 10).stream()
                .max(java.util.Comparator.comparingDouble(SunPath.Look::tangent)).orElseThrow();
        assertEquals(73.44, Math.toDegrees(Math.atan(highest.tangent())), 0.1);
        assertEquals(-1, highest.way().y(), 0.01, "towards the house, which stands south where north is straight away from it");
        SunPath.Look turned = SunPath.looks(june, 90, 10).stream()
                .max(java.util.Comparator.comparingDouble(SunPath.Look::tangent)).orElseThrow();
        assertEquals(1, turned.way().x(), 0.01, "north to the left puts the sun on the right");
        assertTrue(SunPath.looks(june, 0, 10).get(0).way().x() > 0, "it rises in the east, which is right where north is straight away");
        assertEquals(24 * 6, SunPath.looks(new SunDay(75, 0, ZoneId.of("UTC"), LocalDate.parse("2000-06-21")), 0, 10).size(),
                "at 75 north it stands 90 - 75 - 23.4 degrees under north at midnight: 8.4 up");
    }

    /** Reach square to a long fence is h / tan(alt) x |sin(az - fence)| (geometry): 1800 at 30 and 60 degrees off, 2700. */
    @Test
    void theShadeOfALongFenceReachesAsFarAsGeometrySays() {
        Tall fence = new Tall("fence", Beds.points(-500_000, 0, 500_000, 0), 1800, 0, 0);
        SunHours.Shade shade = new SunHours.Shade(List.of(fence), Optional.empty());
        double angle = Math.toRadians(60);
        SunPath.Look look = new SunPath.Look(new Point(Math.cos(angle), -Math.sin(angle)), Math.tan(Math.toRadians(30)));
        assertTrue(shade.falls(new Point(0, 2699), 0, look));
        assertTrue(!shade.falls(new Point(0, 2701), 0, look));
        assertTrue(!shade.falls(new Point(0, -1), 0, look), "in front of it the sun shines");
        assertTrue(!shade.falls(new Point(0, 2699 - 900), 601, look), "601 up, the shade is two thirds as long");
    }

    @Test
    void aCrownOnAStemLetsLowSunThrough() {
        Tall tree = new Tall("tree", Beds.points(0, 0), 6000, 3000, 2000);
        SunHours.Shade shade = new SunHours.Shade(List.of(tree), Optional.empty());
        SunPath.Look low = new SunPath.Look(new Point(0, -1), Math.tan(Math.toRadians(45)));
        assertTrue(!shade.falls(new Point(0, 400), 0, low), "under the crown, the ray leaves below it: 1900 up at its edge");
        assertTrue(shade.falls(new Point(0, 3000), 0, low));
        assertTrue(!shade.falls(new Point(0, 7600), 0, low), "beyond its top");
        assertTrue(!shade.falls(new Point(1501, 3000), 0, low), "beside it");
    }

    /** Full sun from 6 hours, part shade from 3: garden references (seen). */
    @ParameterizedTest
    @CsvSource({"6.0,full sun", "5.99,part shade", "3.0,part shade", "2.99,shade"})
    void hoursAreNamedAsPublished(double hours, String words) {
        assertEquals(words, SunHours.Light.of(hours).words);
    }

    @Test
    void aBedBehindAHighWallToTheSouthLiesInShade() {
        Garden bare = garden(List.of());
        Garden walled = garden(List.of(new Tall("wall", Beds.points(-50_000, -100, 50_000, -100), 20_000, 0, 0)));
        SunHours open = SunHours.of(bare, Optional.empty()).orElseThrow();
        SunHours dark = SunHours.of(walled, Optional.empty()).orElseThrow();
        assertEquals(12, open.beds().get(0).meanHours(), 1, "the equinox, less the hours in which it stands low");
        assertEquals(SunHours.Light.SHADE, dark.beds().get(0).light());
        assertEquals(16, open.cells().size(), "2 x 2 m in squares of 500");
        assertTrue(open.cells().get(0).hours() > 6);
        SunHours large = SunHours.of(garden(Outline.rectangle(60_000, 40_000), List.of()), Optional.empty()).orElseThrow();
        assertEquals(2000, large.cellMm(), "2400 squares of 1000 are too many");
        assertEquals(600, large.cells().size());
    }

    private static Garden garden(List<Tall> tall) {
        return garden(Outline.rectangle(2000, 2000), tall);
    }

    private static Garden garden(Outline yard, List<Tall> tall) {
        SunDay day = new SunDay(51.5, 0, ZoneId.of("UTC"), LocalDate.parse("2026-03-20"));
        return Beds.garden(
                new Ground(
                        List.of(yard), List.of(), List.of(), List.of(), 0, Optional.empty(),
                        Optional.empty(), Preparation.USUAL, List.of(), AccessStandard.USUAL, tall, Optional.of(day)),
                Beds.box("A", 300, 300, 1200, 1200));
    }

    private static boolean marched(Tall thing, Fall ground, Point place, double upMm, SunPath.Look look, double grownMm) {
        double own = upMm - ground.dropMm(place);
        for (double d = 0; d < 12_000; d += 5) {
            Point at = place.moved(look.way(), d, 0);
            double up = own + d * look.tangent();
            Point first = thing.shape().get(0);
            if (thing.shape().size() == 1) {
                double foot = -ground.dropMm(first);
                if (at.distanceMm(first) < thing.spreadMm() / 2 + grownMm && up < foot + thing.heightMm() + grownMm && up > foot + thing.stemMm() - grownMm) return true;
            }
            for (int i = 1; i < thing.shape().size(); i++) {
                Point a = thing.shape().get(i - 1);
                Point b = thing.shape().get(i);
                // as near to the fence as its thickness: its two ends together are hardly further than they are apart
                double detour = at.distanceMm(a) + at.distanceMm(b) - a.distanceMm(b);
                double off = Math.abs((b.x() - a.x()) * (at.y() - a.y()) - (b.y() - a.y()) * (at.x() - a.x())) / a.distanceMm(b);
                if (off < 20 && detour < 20 + grownMm && up < thing.heightMm() - ground.dropMm(at) + grownMm) return true;
            }
        }
        return false;
    }

    /** A ray followed in steps of 5 mm past a tree or a fence of three posts on a slope; what a hand's breadth would decide is left out. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void aRayFollowedStepByStepMeetsTheSameThings(long seed) {
        Random random = new Random(seed);
        int shaded = 0;
        int lit = 0;
        for (int run = 0; run < 150; run++) {
            Fall ground = new Fall((random.nextInt(200) - 100) / 1000.0, (random.nextInt(200) - 100) / 1000.0, 500, List.of());
            Point place = new Point(random.nextInt(4000) - 2000, random.nextInt(4000) - 2000);
            Tall thing = run % 2 == 0
                    ? new Tall("tree", Beds.points(random.nextInt(6000) - 3000, random.nextInt(6000) - 3000), 2000 + random.nextInt(3000), 1500 + random.nextInt(3000), random.nextInt(2000))
                    : new Tall("fence", Beds.points(random.nextInt(6000) - 3000, random.nextInt(6000) - 3000, random.nextInt(6000) - 3000, random.nextInt(6000) - 3000,
                            random.nextInt(6000) - 3000, random.nextInt(6000) - 3000), 1500 + random.nextInt(2500), 0, 0);
            double angle = Math.toRadians(random.nextInt(360));
            SunPath.Look look = new SunPath.Look(new Point(Math.cos(angle), Math.sin(angle)), Math.tan(Math.toRadians(5 + random.nextInt(60))));
            double up = random.nextInt(900);
            boolean small = marched(thing, ground, place, up, look, -100);
            if (small != marched(thing, ground, place, up, look, 100)) continue;
            assertEquals(small, new SunHours.Shade(List.of(thing), Optional.of(ground)).falls(place, up, look), "seed " + seed + ", run " + run + ": " + thing + " from " + place);
            if (small) shaded++;
            else lit++;
        }
        assertTrue(shaded > 10 && lit > 40, shaded + " shaded, " + lit + " lit");
    }

    /**
     * Behind or beside a fence of 1500 on ground that falls one in ten away from the house: the hours of a bed at the height of its level rim,
     * looked at on a grid of 30 by 30.
     */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void hoursOfABedAreThoseOfAFinerLookAtItsRim(boolean beside) {
        Tall fence = new Tall("fence", beside ? Beds.points(-400, -50_000, -400, 50_000) : Beds.points(-50_000, -400, 50_000, -400), 1500, 0, 0);
        Fall ground = new Fall(0.02, 0.1, 300, List.of());
        Garden garden = garden(List.of(fence));
        SunHours.BedSun bed = SunHours.of(garden, Optional.of(ground)).orElseThrow().beds().get(0);
        SunHours.Shade shade = new SunHours.Shade(List.of(fence), Optional.of(ground));
        List<SunPath.Look> looks = SunPath.looks(garden.ground().sun().orElseThrow(), 0, 10);
        double rim = 600 - ground.dropMm(new Point(1500, 1500));
        double sum = 0;
        double least = 24;
        double most = 0;
        for (int i = 0; i < 900; i++) {
            Point place = new Point(300 + 40 * (i % 30 + 0.5), 300 + 40 * (i / 30 + 0.5));
            double hours = looks.stream().filter(look -> !shade.falls(place, rim + ground.dropMm(place), look)).count() / 6.0;
            sum += hours / 900;
            least = Math.min(least, hours);
            most = Math.max(most, hours);
        }
        assertEquals(sum, bed.meanHours(), 0.15);
        assertEquals(least, bed.leastHours(), 0.7);
        assertEquals(most, bed.mostHours(), 0.7);
        assertTrue(most - least > 1, "the fence matters: " + least + " to " + most);
        assertEquals(List.of(bed.meanHours(), bed.leastHours(), bed.mostHours()), bed.quantities().stream().map(one -> one.value()).toList());
    }
}

package lapyard.ground;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import lapyard.geometry.Jts;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Garden;
import lapyard.plan.SunDay;
import lapyard.plan.Tall;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/**
 * Direct sun on one day.
 *
 * @param rise  empty where the sun does not rise or does not set
 * @param beds  hours on each, in the order of the document
 * @param cells hours on the ground of the yard, square by square; none where no yard is drawn
 */
public record SunHours(
        SunDay day,
        Optional<ZonedDateTime> rise,
        Optional<ZonedDateTime> set,
        List<BedSun> beds,
        double cellMm,
        List<Cell> cells) {
    /** Minutes between two looks at the sun. */
    static final int STEP_MINUTES = 10;

    /** Most squares of the yard that are looked at. */
    private static final int MOST_CELLS = 2_000;

    private static final double LEAST_CELL_MM = 500;

    /** Places along each side of the box round a bed. */
    private static final int PLACES = 6;

    public SunHours {
        beds = List.copyOf(beds);
        cells = List.copyOf(cells);
    }

    /** Full sun from 6 hours, part shade from 3; garden references, the extension service's own limits differ. */
    public enum Light {
        FULL_SUN("full sun"),
        PART_SHADE("part shade"),
        SHADE("shade");

        public final String words;

        Light(String words) {
            this.words = words;
        }

        public static Light of(double hours) {
            return hours >= 6 - 1e-9 ? FULL_SUN : hours >= 3 - 1e-9 ? PART_SHADE : SHADE;
        }
    }

    /**
     * @param quantities {@code sun.mean}, {@code sun.least}, {@code sun.most}, hours over the places looked at, at the
     *                   height of the rim
     */
    public record BedSun(String bed, double meanHours, double leastHours, double mostHours, Light light, List<Quantity> quantities) {
        public BedSun {
            quantities = List.copyOf(quantities);
        }
    }

    /** A square of the yard by its middle. */
    public record Cell(Point middle, double hours) {}

    /** Empty where the garden says no place and day. */
    public static Optional<SunHours> of(Garden garden, Optional<Fall> fall) {
        return garden.ground().sun().map(day -> of(garden, day, fall));
    }

    private static SunHours of(Garden garden, SunDay day, Optional<Fall> fall) {
        List<SunPath.Look> looks = SunPath.looks(day, garden.ground().northDeg(), STEP_MINUTES);
        Shade shade = new Shade(garden.ground().tall(), fall);
        List<BedSun> beds = garden.beds().stream().map(bed -> bed(bed, looks, shade, fall)).toList();
        List<Cell> cells = new ArrayList<>();
        double cell = LEAST_CELL_MM;
        if (!garden.ground().outline().isEmpty()) {
            Outline yard = garden.ground().outline().get(0);
            while (yard.areaMm2() / (cell * cell) > MOST_CELLS) cell *= 2;
            cells(yard, cell, looks, shade, cells);
        }
        SunPath.Times times = SunPath.times(day);
        return new SunHours(day, times.rise(), times.set(), beds, cell, cells);
    }

    private static void cells(Outline yard, double cell, List<SunPath.Look> looks, Shade shade, List<Cell> cells) {
        Geometry area = Shapes.area(yard);
        PreparedGeometry prepared = PreparedGeometryFactory.prepare(area);
        Envelope bounds = area.getEnvelopeInternal();
        for (double y = bounds.getMinY() + cell / 2; y - cell / 2 < bounds.getMaxY(); y += cell) {
            for (double x = bounds.getMinX() + cell / 2; x - cell / 2 < bounds.getMaxX(); x += cell) {
                Geometry square = Shapes.FACTORY.toGeometry(new Envelope(x - cell / 2, x + cell / 2, y - cell / 2, y + cell / 2));
                // At the edge only the part within the yard counts.
                Geometry part = prepared.contains(square) ? square : prepared.intersects(square)
                        ? Jts.common(area, square) : Shapes.FACTORY.createPolygon();
                if (part.getArea() == 0) continue;
                Coordinate own = part == square ? new Coordinate(x, y) : part.getCentroid().getCoordinate();
                cells.add(new Cell(new Point(x, y), hours(new Point(own.x, own.y), 0, looks, shade)));
            }
        }
    }

    private static BedSun bed(Bed bed, List<SunPath.Look> looks, Shade shade, Optional<Fall> fall) {
        Geometry area = Shapes.area(bed.inYard());
        IndexedPointInAreaLocator inside = new IndexedPointInAreaLocator(area);
        Envelope bounds = area.getEnvelopeInternal();
        // The rim is level; above the ground at a place it stands less high where that lies higher.
        double lowest = fall.map(plane -> plane.lowestMm(bed)).orElse(0.0);
        DoubleSummaryStatistics hours = new DoubleSummaryStatistics();
        for (int i = 0; i < PLACES; i++) {
            for (int j = 0; j < PLACES; j++) {
                double x = bounds.getMinX() + bounds.getWidth() * (i + 0.5) / PLACES;
                double y = bounds.getMinY() + bounds.getHeight() * (j + 0.5) / PLACES;
                if (inside.locate(new Coordinate(x, y)) != Location.INTERIOR) continue;
                Point place = new Point(x, y);
                double up = bed.heightMm() - fall.map(plane -> lowest - plane.dropMm(place)).orElse(0.0);
                hours.accept(hours(place, up, looks, shade));
            }
        }
        double mean = hours.getAverage();
        double least = hours.getCount() == 0 ? 0 : hours.getMin();
        double most = hours.getCount() == 0 ? 0 : hours.getMax();
        Working working = Working.of(
                "looks in which the sun stands over 3 degrees and nothing shades the rim, x minutes between looks / 60",
                "sun by the solar position algorithm, Reda and Andreas, NREL/TP-560-34302; 3 degrees common practice",
                Working.Input.of("places", hours.getCount(), ""),
                Working.Input.of("looks", looks.size(), ""),
                Working.Input.of("minutes between looks", STEP_MINUTES, "min"));
        return new BedSun(
                bed.id(),
                mean,
                least,
                most,
                Light.of(mean),
                List.of(
                        new Quantity(QuantityKind.SUN_MEAN, mean, "h", working),
                        new Quantity(QuantityKind.SUN_LEAST, least, "h", working),
                        new Quantity(QuantityKind.SUN_MOST, most, "h", working)));
    }

    private static double hours(Point place, double upMm, List<SunPath.Look> looks, Shade shade) {
        int lit = 0;
        for (SunPath.Look look : looks) lit += shade.falls(place, upMm, look) ? 0 : 1;
        return lit * STEP_MINUTES / 60.0;
    }

    /** What throws shade, asked place by place. */
    record Shade(List<Tall> tall, Optional<Fall> fall) {
        /** @param upMm the place's height above the ground there */
        boolean falls(Point place, double upMm, SunPath.Look look) {
            double own = upMm - dropMm(place);
            for (Tall thing : tall) {
                if (thing.shape().size() == 1 ? crown(thing, place, own, look) : line(thing, place, own, look)) return true;
            }
            return false;
        }

        private double dropMm(Point place) {
            return fall.map(plane -> plane.dropMm(place)).orElse(0.0);
        }

        /** The ray towards the sun meets a side at some distance; there it must pass over the top. */
        private boolean line(Tall thing, Point place, double own, SunPath.Look look) {
            List<Point> shape = thing.shape();
            for (int i = 0; i + 1 < shape.size(); i++) {
                Point a = shape.get(i);
                Point b = shape.get(i + 1);
                Point side = b.minus(a);
                double cross = look.way().cross(side);
                if (Math.abs(cross) < 1e-12) continue;
                Point off = a.minus(place);
                double away = off.cross(side) / cross;
                double share = off.cross(look.way()) / cross;
                boolean met = away >= 0 && share >= 0 && share <= 1;
                if (met && own + away * look.tangent() < thing.heightMm() - dropMm(a.towards(b, share))) return true;
            }
            return false;
        }

        /** A crown is an upright drum from its stem to its top. */
        private boolean crown(Tall tree, Point place, double own, SunPath.Look look) {
            Point stem = tree.shape().get(0);
            double middle = stem.minus(place).dot(look.way());
            double aside = Math.abs(stem.minus(place).cross(look.way()));
            double radius = tree.spreadMm() / 2;
            if (aside >= radius) return false;
            double half = Math.sqrt(radius * radius - aside * aside);
            double near = Math.max(0, middle - half);
            double far = middle + half;
            if (far < 0) return false;
            double foot = -dropMm(stem);
            return own + near * look.tangent() < foot + tree.heightMm() && own + far * look.tangent() > foot + tree.stemMm();
        }
    }
}

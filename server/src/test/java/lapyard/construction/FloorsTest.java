package lapyard.construction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import lapyard.geometry.FewestRectangles;
import lapyard.geometry.Inset;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.RandomOutlines;
import lapyard.geometry.Rectangle;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Lap;
import lapyard.plan.Saw;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Floors as they are drawn, measured by JTS. */
class FloorsTest {
    private static final GeometryFactory JTS = new GeometryFactory();
    private static final Base BASE = Base.USUAL.slatted(true);

    static List<Outline> outlines() {
        Random random = new Random(4);
        List<Outline> all = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            int sides = 5 + i % 4;
            double turn = random.nextDouble();
            List<Point> corners = new ArrayList<>();
            for (int k = 0; k < sides; k++) {
                double angle = 2 * Math.PI * (k + turn) / sides;
                corners.add(new Point(Math.rint((1500 + 100 * i) * Math.cos(angle)), Math.rint((1200 + 80 * i) * Math.sin(angle))));
            }
            all.add(new Outline(corners));
        }
        return all;
    }

    private static Polygon shape(List<Point> corners) {
        List<Coordinate> ring = new ArrayList<>(corners.stream().map(at -> new Coordinate(at.x(), at.y())).toList());
        ring.add(ring.get(0));
        return JTS.createPolygon(ring.toArray(Coordinate[]::new));
    }

    /** Bearers are 50 wide, each wall that slants has one along it, and all lie inside but for ends that are sawn off. */
    @ParameterizedTest
    @MethodSource("outlines")
    void bearersLieUnderSlatsAndAlongSlantedWalls(Outline outline) {
        BedWork work = Beds.work(Beds.bed("X", outline, 3, Lap.TURNING), lapyard.plan.Saw.USUAL, 20_000, Map.of(), Optional.empty(), 2400, 25);
        Polygon floor = shape(work.frame().inner().corners());
        int along = 0;
        for (FloorBay bay : work.bottom().bays()) {
            for (FloorBay.Laid bearer : bay.bearersLaid()) {
                Polygon bar = shape(bearer.corners());
                assertEquals(50 * bearer.lengthMm(), bar.getArea(), 1e-3);
                assertEquals(2 * (50 + bearer.lengthMm()), bar.getLength(), 1e-6);
                assertTrue(floor.intersection(bar).getArea() > bar.getArea() / 4, outline + " " + bearer);
                assertTrue(bearer.lengthMm() >= 150);
                Point way = bearer.corners().get(1);
                Point from = bearer.corners().get(0);
                boolean slanted = Math.abs(way.x() - from.x()) > 1e-6 && Math.abs(way.y() - from.y()) > 1e-6;
                if (!slanted) continue;
                along++;
                assertEquals(0, floor.getExteriorRing().distance(JTS.createPoint(new Coordinate(from.x(), from.y()))), 1e-6);
                assertEquals(0, floor.getExteriorRing().distance(JTS.createPoint(new Coordinate(way.x(), way.y()))), 1e-6);
            }
            double last = bay.bearersAtMm().get(bay.bearersAtMm().size() - 1);
            assertEquals(bay.alongY() ? bay.floor().widthMm() : bay.floor().depthMm(), last, 0.1);
            assertEquals(0, bay.bearersAtMm().get(0));
            assertTrue(bay.spacingMm() <= BASE.bearers().bearerEveryMm() + 0.1 && bay.spacingMm() > Math.min(last, BASE.bearers().bearerEveryMm() / 2) - 0.1, bay.bearersAtMm().toString());
        }
        Outline inner = work.frame().inner();
        int slants = 0;
        for (int side = 0; side < inner.sides(); side++) {
            Point way = inner.direction(side);
            if (way.x() != 0 && way.y() != 0) slants++;
        }
        assertEquals(slants, along);
    }

    /** Slats lie in rows with even gaps; of each row the floor's own width, less the clearance at its ends, is covered. */
    @ParameterizedTest
    @MethodSource("outlines")
    void slatsCoverEveryRow(Outline outline) {
        BedWork work = Beds.work(Beds.bed("X", outline, 3, Lap.TURNING), lapyard.plan.Saw.USUAL, 20_000, Map.of(), Optional.empty(), 2400, 25);
        Polygon floor = shape(work.frame().inner().corners());
        for (FloorBay bay : work.bottom().bays()) {
            double pieces = bay.slats().rowsMm().stream().flatMap(List::stream).mapToDouble(mm -> mm).sum();
            assertEquals(pieces, bay.slatsLaid().stream().mapToDouble(FloorBay.Laid::lengthMm).sum(), 1e-6);
            double covered = 0;
            for (FloorBay.Laid slat : bay.slatsLaid()) {
                Polygon bar = shape(slat.corners());
                covered += floor.intersection(bar).getArea();
            }
            double pitch = BASE.slats().slatWidthMm() + bay.slats().gapMm();
            assertTrue(bay.slats().gapMm() >= 0 && bay.slats().gapMm() <= BASE.slats().slatMaxGapMm() + 1e-9);
            Polygon own = shape(List.of(new Point(bay.floor().x(), bay.floor().y()), new Point(bay.floor().right(), bay.floor().y()),
                    new Point(bay.floor().right(), bay.floor().top()), new Point(bay.floor().x(), bay.floor().top())));
            double all = floor.intersection(own).getArea();
            // a corner of less than some rows has no mean
            if (all > 500_000) assertEquals(all * BASE.slats().slatWidthMm() / pitch, covered, 0.06 * all, outline.toString());
        }
    }

    /** Between upright walls a bearer lies with its middle at its place, the outer two along the walls. */
    @Test
    void bearersBetweenUprightWallsLieAtTheirPlaces() {
        for (Outline outline : List.of(Beds.M, Beds.N, Beds.U)) {
            BedWork work = Beds.built(Beds.bed("X", outline, 3, Lap.TURNING));
            for (FloorBay bay : work.bottom().bays()) {
                double across = bay.alongY() ? bay.floor().widthMm() : bay.floor().depthMm();
                double first = bay.alongY() ? bay.floor().x() : bay.floor().y();
                assertEquals(bay.bearersAtMm().size(), bay.bearers());
                for (int i = 0; i < bay.bearers(); i++) {
                    Polygon bar = shape(bay.bearersLaid().get(i).corners());
                    double middle = bay.alongY() ? bar.getCentroid().getX() : bar.getCentroid().getY();
                    assertEquals(first + Math.min(Math.max(bay.bearersAtMm().get(i), 25), across - 25), middle, 1e-6);
                    assertEquals((bay.alongY() ? bay.floor().depthMm() : bay.floor().widthMm()) - BASE.bearers().drainGapMm(), bay.bearersLaid().get(i).lengthMm(), 0.1);
                }
            }
        }
    }

    /** Where no fall is known: the way with the fewest slat boards, of those the one with the fewest metres of bearer. */
    @Test
    void withoutAFallTheCheapestWayIsTaken() {
        Random random = new Random(7);
        int byMetres = 0;
        for (int i = 0; i < 400; i++) {
            Rectangle floor = new Rectangle(100, 100, 300 + random.nextInt(2000), 300 + random.nextInt(2000));
            Outline inner = Outline.rectangle(floor.widthMm(), floor.depthMm());
            FloorBay up = FloorBay.laid(floor, inner, true, BASE);
            FloorBay across = FloorBay.laid(floor, inner, false, BASE);
            FloorBay taken = FloorBay.of(floor, inner, Optional.empty(), BASE, 4);
            assertEquals(Math.min(up.slatBoards(BASE, 4), across.slatBoards(BASE, 4)), taken.slatBoards(BASE, 4));
            if (up.slatBoards(BASE, 4) != across.slatBoards(BASE, 4)) continue;
            if (Math.abs(up.lengthMm() - across.lengthMm()) > 1) byMetres++;
            double metres = taken.bearersLaid().stream().mapToDouble(FloorBay.Laid::lengthMm).sum();
            assertEquals(Math.min(up.lengthMm(), across.lengthMm()), metres, 1e-6);
            assertEquals(metres, taken.lengthMm(), 1e-6);
        }
        assertTrue(byMetres > 10, "the metres decided " + byMetres + " times");
    }

    /** Strips that pieces take, the longest first into the first strip with room. */
    private static int strips(List<Double> lengths, double stripMm, double kerfMm) {
        List<Double> left = new ArrayList<>();
        for (double length : lengths.stream().sorted(Comparator.reverseOrder()).toList()) {
            int at = 0;
            while (at < left.size() && left.get(at) < length - 1e-6) at++;
            if (at == left.size()) left.add(stripMm);
            left.set(at, left.get(at) - length - kerfMm);
        }
        return left.size();
    }

    /** All splits counted out: the fewest strips of 2400 less two trims of 10, then the least liner, then the lowest level cut, then the leftmost. */
    @Test
    void theSplitOfTheFloorIsTheOneWithTheFewestStripsAndTheLeastLiner() {
        Random random = new Random(2108);
        int choice = 0;
        int byLiner = 0;
        int byCut = 0;
        for (int i = 0; i < 80; i++) {
            // steps of one length give splits that are told apart by their cuts alone
            Bed bed = Beds.bed("X", i % 2 == 0 ? RandomOutlines.of(random, 450, 1100) : RandomOutlines.of(random, 600, 600), 3, Lap.TURNING);
            Outline inner = Inset.of(bed.outline(), 100);
            if (inner.insideCorners() > 4) continue;
            Base base = bed.inside().base();
            Floor floor = Floor.of(bed, inner, new LowSide(Optional.empty(), List.of()), Saw.USUAL, 2400);
            List<FewestRectangles.Split> splits = FewestRectangles.splits(inner);
            List<Integer> counts = new ArrayList<>();
            List<Double> liner = new ArrayList<>();
            FewestRectangles.Split best = null;
            for (FewestRectangles.Split split : splits) {
                List<Double> runs = new ArrayList<>();
                for (Rectangle rectangle : split.rectangles()) runs.addAll(FloorBay.of(rectangle, inner, Optional.empty(), base, 4).bearersMm());
                split.cuts().forEach(cut -> runs.add(cut.lengthMm()));
                List<Double> parts = new ArrayList<>();
                for (double run : runs) {
                    int n = 1;
                    while (run / n > 2380) n++;
                    for (int k = 0; k < n; k++) parts.add(Math.round(10 * run / n) / 10.0);
                }
                counts.add(strips(parts, 2380, 4));
                liner.add(LinerCut.pieces(bed, split.rectangles(), "R", new LowSide(Optional.empty(), List.of())).stream().mapToDouble(piece -> piece.widthMm() * piece.heightMm()).sum());
                int own = counts.size() - 1;
                int of = best == null ? own : splits.indexOf(best);
                int order = Integer.compare(counts.get(own), counts.get(of));
                if (order == 0 && Math.abs(liner.get(own) - liner.get(of)) > 1000) order = Double.compare(liner.get(own), liner.get(of));
                if (order == 0 && own != of) byCut++;
                for (boolean level : new boolean[] {true, false}) if (order == 0) order = Double.compare(lowest(split, level), lowest(splits.get(of), level));
                if (best == null || order < 0) best = split;
            }
            String name = bed.outline() + ": strips " + counts + ", liner " + liner;
            int at = splits.indexOf(best);
            assertEquals(best.rectangles(), floor.rectangles(), name);
            assertEquals(counts.get(at), floor.stripBoards(), name);
            counts.remove(at);
            assertEquals(counts.stream().mapToInt(one -> one).min(), floor.otherStripBoards(), name);
            choice += counts.isEmpty() ? 0 : 1;
            byLiner += counts.contains(floor.stripBoards()) && liner.stream().distinct().count() > 1 ? 1 : 0;
        }
        assertTrue(choice > 15 && byLiner > 3 && byCut > 3, choice + " choices, " + byLiner + " by the liner, " + byCut + " by the cuts");
    }

    private static double lowest(FewestRectangles.Split split, boolean level) {
        return split.cuts().stream().filter(cut -> cut.level() == level).mapToDouble(cut -> level ? cut.from().y() : cut.from().x()).min().orElse(Double.POSITIVE_INFINITY);
    }

    private static Map<String, Double> inputs(BedWork work, QuantityKind kind) {
        return work.quantities().stream().filter(one -> one.is(kind)).findFirst().orElseThrow().working().inputs().stream().collect(Collectors.toMap(Working.Input::name, Working.Input::value));
    }

    /** Whoever follows the workings with their own numbers comes to the metres of bearer, and each rectangle's rows fill it. */
    @Test
    void theWorkingsOfAFloorGiveIt() {
        for (Outline outline : List.of(Beds.M, Beds.N, Beds.U)) {
            BedWork work = Beds.built(Beds.bed("X", outline, 3, Lap.TURNING));
            Map<String, Double> bearers = inputs(work, QuantityKind.BEARERS);
            Map<String, Double> slats = inputs(work, QuantityKind.SLATS);
            List<FloorBay> bays = work.bottom().bays();
            double metres = 0;
            for (int i = 1; i <= bays.size(); i++) {
                FloorBay bay = bays.get(i - 1);
                metres += bearers.get("R" + i + " bearers") * bearers.get("R" + i + " bearer length") / 1000;
                double rows = slats.get("R" + i + " rows");
                assertEquals(bay.alongY() ? bay.floor().depthMm() : bay.floor().widthMm(), rows * slats.get("slat width") + (rows - 1) * slats.get("R" + i + " gap"), 0.1 * rows);
                assertEquals((bay.alongY() ? bay.floor().widthMm() : bay.floor().depthMm()) - BASE.slats().slatClearanceMm(), slats.get("R" + i + " row"), 0.1);
                assertEquals(bay.slatBoards(BASE, 4), slats.get("R" + i + " boards this way"));
                assertEquals(FloorBay.laid(bay.floor(), work.frame().inner(), !bay.alongY(), BASE).slatBoards(BASE, 4), slats.get("R" + i + " boards the other way"));
            }
            Floor floor = Floor.of(work.bed(), work.frame().inner(), new LowSide(Beds.TO_REAR, List.of()), Saw.USUAL, 2400);
            assertEquals(floor.otherStripBoards().isPresent() ? 1.0 * floor.otherStripBoards().getAsInt() : null, bearers.get("strips with the other split"));
            for (int i = 1; bearers.containsKey("beam " + i); i++) metres += bearers.get("beam " + i) / 1000;
            assertEquals(Beds.value(work.quantities(), "base.bearers"), metres, 1e-3 * work.bottom().strips().size());
            assertEquals(bays.size() - 1, bearers.keySet().stream().filter(name -> name.startsWith("beam")).count());
            int pooled = SlatRows.boards(bays.stream().map(FloorBay::slats).toList(), BASE, 4);
            assertEquals(pooled, Beds.value(work.quantities(), "base.slats"));
            assertEquals(work.bottom().slats().stream().mapToInt(SlatCut::count).sum(), bays.stream().mapToInt(bay -> bay.slatsLaid().size()).sum());
            // a slat stands off both walls by half the clearance
            for (FloorBay bay : bays) {
                double low = bay.slatsLaid().stream().flatMap(slat -> slat.corners().stream()).mapToDouble(at -> bay.alongY() ? at.x() : at.y()).min().orElseThrow();
                double high = bay.slatsLaid().stream().flatMap(slat -> slat.corners().stream()).mapToDouble(at -> bay.alongY() ? at.x() : at.y()).max().orElseThrow();
                assertEquals(bay.alongY() ? bay.floor().x() : bay.floor().y(), low - BASE.slats().slatClearanceMm() / 2, 0.1);
                assertEquals(bay.alongY() ? bay.floor().right() : bay.floor().top(), high + BASE.slats().slatClearanceMm() / 2, 0.1);
            }
        }
    }

    /** Without a gap at the ends of bearers a beam across the fall dams it, and so does every floor that falls both ways. */
    @Test
    void aBeamAcrossTheFallDamsIt() {
        int rips = 0;
        for (double gap : new double[] {0, 30}) {
            Base base = new Base(true, new Base.Bearers("50x75", 23, 400, gap), new Base.Slats(95, 22, 1200, 15, 5, 300), 0, false);
            for (Outline outline : List.of(Outline.rectangle(2400, 1200), Beds.M, Beds.outline(0, 0, 2400, 0, 2400, 380, 1200, 380, 1200, 2000, 0, 2000))) {
                Bed bed = Beds.filled(Beds.bed("X", outline, 3, Lap.TURNING), base, lapyard.plan.Liner.USUAL, lapyard.plan.Fill.USUAL, lapyard.plan.Finish.NONE);
                Outline inner = Inset.of(bed.outline(), 100);
                for (Point fall : List.of(new Point(0.01, 0), new Point(0, 0.01), new Point(0.01, 0.01), new Point(0, 0))) {
                    Optional<Point> toward = fall.x() == 0 && fall.y() == 0 ? Optional.empty() : Optional.of(fall);
                    Floor floor = Floor.of(bed, inner, new LowSide(toward, List.of()), Saw.USUAL, 2400);
                    List<Finding> found = new ArrayList<>();
                    floor.findings(bed, toward, found);
                    boolean across = floor.cuts().stream().anyMatch(cut -> cut.level() ? fall.y() != 0 : fall.x() != 0);
                    boolean dams = gap == 0 && (across || fall.x() != 0 && fall.y() != 0);
                    assertEquals(dams, found.stream().anyMatch(one -> one.kind() == FindingKind.DRAIN_DAMMED), outline + ", fall " + fall + ", gap " + gap);
                    List<String> ripped = new ArrayList<>();
                    for (int i = 0; i < floor.bays().size(); i++) if (floor.bays().get(i).slats().rippedMm() > 0) ripped.add("bed X, base R" + (i + 1));
                    rips += ripped.size();
                    assertEquals(ripped, found.stream().filter(one -> one.kind() == FindingKind.SLATS_RIPPED).map(Finding::where).toList());
                }
            }
        }
        assertTrue(rips > 0, "no row is ripped");
    }

    /** A run longer than a strip is in equal parts, told apart by letters; a shorter one is whole. */
    @Test
    void longRunsAreInEqualPartsNamedByLetters() {
        for (Outline outline : List.of(Outline.rectangle(1200, 6000), Outline.rectangle(6000, 1200), Outline.rectangle(2400, 1200))) {
            Bed bed = Beds.bed("X", outline, 3, Lap.TURNING);
            Floor floor = Floor.of(bed, Inset.of(outline, 100), new LowSide(Optional.of(new Point(0, 0.01)), List.of()), Saw.USUAL, 2400);
            List<String> names = new ArrayList<>();
            List<Double> lengths = new ArrayList<>();
            List<Double> runs = floor.bays().get(0).bearersMm();
            for (int i = 0; i < runs.size(); i++) {
                int parts = (int) Math.ceil(runs.get(i) / 2380);
                for (int part = 0; part < parts; part++) {
                    names.add("X-R1 bearer " + (i + 1) + (parts == 1 ? "" : List.of("a", "b", "c").get(part)));
                    lengths.add(Math.rint(10 * runs.get(i) / parts) / 10);
                }
            }
            assertEquals(names, floor.strips().stream().map(Strip::id).toList());
            assertEquals(lengths, floor.strips().stream().map(Strip::lengthMm).toList());
        }
    }
}

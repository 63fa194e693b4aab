package lapyard.construction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import lapyard.geometry.FewestRectangles;
import lapyard.geometry.FewestRectangles.Cut;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.geometry.UprightCover;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.Saw;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Whole;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/**
 * The floor of a bed in the fewest rectangles, with what carries it.
 *
 * @param bays        one a rectangle in the order R1, R2 ...; empty for an open base
 * @param strips      bearers and beams, none longer than a strip
 * @param stripBoards strips of full length that these take
 * @param otherStripBoards what the best of the other splits would take; empty where there is one way only
 */
record Floor(List<Rectangle> rectangles, List<Cut> cuts, List<FloorBay> bays, List<Strip> strips, int stripBoards, OptionalInt otherStripBoards) {
    /** One split as it would be laid. */
    private record Candidate(FewestRectangles.Split split, List<FloorBay> bays, List<Strip> strips, int stripBoards, double linerMm2) {
        private double lowest(boolean level) {
            return split.cuts().stream().filter(cut -> cut.level() == level).mapToDouble(cut -> level
                    ? cut.from().y() : cut.from().x())
                    .min().orElse(Double.POSITIVE_INFINITY);
        }
    }

    /**
     * The split with the fewest bearer strips, then the least liner, then the lowest level cut, then the leftmost
     * upright cut.
     *
     * @param bearerStockMm length of the strips that bearers are cut from
     */
    static Floor of(Bed bed, Outline inner, LowSide low, Saw saw, double bearerStockMm) {
        double usable = bearerStockMm - 2 * saw.endTrimMm();
        Map<Rectangle, FloorBay> known = new HashMap<>();
        List<Candidate> all = FewestRectangles.splits(UprightCover.of(inner)).stream()
                .map(split -> candidate(bed, inner, split, low, saw, usable, known))
                .toList();
        Candidate best = all.stream()
                .min(Comparator.comparingInt(Candidate::stripBoards)
                        .thenComparingDouble(candidate -> Lengths.toTenth(candidate.linerMm2()))
                        .thenComparingDouble(candidate -> candidate.lowest(true))
                        .thenComparingDouble(candidate -> candidate.lowest(false)))
                .orElseThrow();
        return new Floor(
                best.split().rectangles(),
                best.split().cuts(),
                best.bays(),
                best.strips(),
                best.stripBoards(),
                all.stream().filter(other -> other != best).mapToInt(Candidate::stripBoards).min());
    }

    private static Candidate candidate(
            Bed bed,
            Outline inner,
            FewestRectangles.Split split,
            LowSide low,
            Saw saw,
            double usableMm,
            Map<Rectangle, FloorBay> known) {
        double liner = bed.inside().liner().wanted() && bed.inside().liner().overFloor(bed.inside().base()) ? LinerCut.areaMm2(bed, split.rectangles()) : 0;
        if (!bed.inside().base().slatted()) return new Candidate(split, List.of(), List.of(), 0, liner);
        List<FloorBay> bays = split.rectangles().stream().map(rectangle -> known.computeIfAbsent(
                rectangle, floor -> FloorBay.of(floor, inner, low.toward(), bed.inside().base(), saw.kerfMm()))).toList();
        List<Strip> strips = strips(bed, split, bays, usableMm);
        FirstFit fit = new FirstFit();
        strips.forEach(strip -> fit.add(strip.lengthMm(), 1));
        return new Candidate(split, bays, strips, fit.boards(usableMm, saw.kerfMm()), liner);
    }

    private static List<Strip> strips(Bed bed, FewestRectangles.Split split, List<FloorBay> bays, double usableMm) {
        List<Strip> strips = new ArrayList<>();
        for (int i = 0; i < bays.size(); i++) {
            FloorBay bay = bays.get(i);
            for (int k = 1; k <= bay.bearers(); k++) {
                add(strips, bed.id() + "-R" + (i + 1) + " bearer " + k, "bearer", bay.bearersMm().get(k - 1), usableMm);
            }
        }
        for (int i = 0; i < split.cuts().size(); i++) add(strips, bed.id() + " beam " + (i + 1), "beam", split.cuts().get(i).lengthMm(), usableMm);
        return strips;
    }

    /** A run longer than a strip is laid in equal parts, butted on the ground. */
    private static void add(List<Strip> strips, String id, String use, double lengthMm, double usableMm) {
        int parts = usableMm <= 0 ? 1 : (int) Whole.up(lengthMm / usableMm);
        for (int i = 0; i < parts; i++) strips.add(new Strip(id + (parts == 1 ? "" : Bed.smallLetter(i)), use, Lengths.toTenth(lengthMm / parts)));
    }

    void quantities(Bed bed, Outline inner, Saw saw, double bearerStockMm, List<Quantity> quantities) {
        if (bays.isEmpty()) return;
        quantities.add(bearers(bed, bearerStockMm));
        quantities.add(slats(bed, inner, saw));
    }

    private Quantity bearers(Bed bed, double bearerStockMm) {
        List<Input> inputs = new ArrayList<>();
        for (int i = 0; i < bays.size(); i++) {
            inputs.add(Input.of("R" + (i + 1) + " bearers", bays.get(i).bearers(), ""));
            inputs.add(Input.of("R" + (i + 1) + " bearer length", bays.get(i).bearerMm(), "mm"));
        }
        for (int i = 0; i < cuts.size(); i++) inputs.add(Input.of("beam " + (i + 1), cuts.get(i).lengthMm(), "mm"));
        inputs.add(Input.of("greatest spacing", bed.inside().base().bearers().bearerEveryMm(), "mm"));
        inputs.add(Input.of("drain gap", bed.inside().base().bearers().drainGapMm(), "mm"));
        inputs.add(Input.of("strip length", bearerStockMm, "mm"));
        inputs.add(Input.of("strips", stripBoards, ""));
        otherStripBoards.ifPresent(other -> inputs.add(Input.of("strips with the other split", other, "")));
        return Quantity.of(QuantityKind.BEARERS, strips.stream().mapToDouble(Strip::lengthMm).sum() / 1000, "m",
                "for each rectangle bearers = ceil(run / greatest spacing) + 1 and one under each joint of the"
                        + " slats, each its length less the drain gap; + a beam along each cut; strips filled longest first",
                Working.COMMON_PRACTICE, inputs.toArray(Input[]::new));
    }

    private Quantity slats(Bed bed, Outline inner, Saw saw) {
        Base base = bed.inside().base();
        List<Input> inputs = new ArrayList<>();
        for (int i = 0; i < bays.size(); i++) {
            FloorBay bay = bays.get(i);
            String name = "R" + (i + 1);
            inputs.add(Input.of(name + " rows", bay.slats().rows(), ""));
            inputs.add(Input.of(name + " gap", Lengths.toTenth(bay.slats().gapMm()), "mm"));
            inputs.add(Input.of(name + " row", bay.slats().piecesMm().stream().mapToDouble(p -> p).sum(), "mm"));
            inputs.add(Input.of(name + " boards this way", bay.slatBoards(base, saw.kerfMm()), "slats"));
            inputs.add(Input.of(name + " boards the other way",
                    FloorBay.laid(bay.floor(), inner, !bay.alongY(), base).slatBoards(base, saw.kerfMm()), "slats"));
        }
        inputs.add(Input.of("slat width", base.slats().slatWidthMm(), "mm"));
        inputs.add(Input.of("slat length", base.slats().slatLengthMm(), "mm"));
        inputs.add(Input.of("greatest gap", base.slats().slatMaxGapMm(), "mm"));
        return Quantity.of(QuantityKind.SLATS, slatBoards(bed, saw), "slats",
                "rows = ceil((width + greatest gap) / (slat width + greatest gap)), gap = (width - rows x slat width) / (rows - 1);"
                        + " each row in whole slats and a rest; rests cut from slats, longest first",
                Working.COMMON_PRACTICE, inputs.toArray(Input[]::new));
    }

    int slatBoards(Bed bed, Saw saw) {
        return SlatRows.boards(bays.stream().map(FloorBay::slats).toList(), bed.inside().base(), saw.kerfMm());
    }

    /** Slat lengths of the whole floor, longest first. */
    List<SlatCut> slats() {
        FirstFit fit = new FirstFit();
        bays.forEach(bay -> bay.slats().addTo(fit));
        return fit.pieces().entrySet().stream()
                .map(one -> new SlatCut(one.getKey(), one.getValue()))
                .toList();
    }

    void findings(Bed bed, Optional<Point> toward, List<Finding> findings) {
        for (int i = 0; i < bays.size(); i++) {
            if (bays.get(i).slats().rippedMm() > 0) {
                findings.add(Finding.of(FindingKind.SLATS_RIPPED, Place.bed(bed.id()).then(What.BASE, "R" + (i + 1)))
                        .by(Fact.mm(bays.get(i).slats().rippedMm())));
            }
        }
        boolean fallsAlongX = toward.filter(fall -> Math.abs(fall.x()) > 1e-12).isPresent();
        boolean fallsAlongY = toward.filter(fall -> Math.abs(fall.y()) > 1e-12).isPresent();
        boolean beamAcross = cuts.stream().anyMatch(cut -> cut.level() ? fallsAlongY : fallsAlongX);
        if (!bays.isEmpty() && bed.inside().base().bearers().drainGapMm() <= 0 && (beamAcross || fallsAlongX && fallsAlongY)) {
            findings.add(Finding.of(FindingKind.DRAIN_DAMMED, Place.bed(bed.id()).then(What.BASE)).way(WayKind.DRAIN_GAP, Fact.mm(30)));
        }
    }
}

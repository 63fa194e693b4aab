package lapyard.construction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import lapyard.geometry.FewestRectangles;
import lapyard.geometry.FewestRectangles.Cut;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.plan.Bed;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Saw;
import lapyard.working.Quantity;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/**
 * The floor of a bed in the fewest rectangles, with what carries it.
 *
 * @param bays        one a rectangle in the order R1, R2 ...; empty for an open base
 * @param strips      bearers and beams, none longer than a strip
 * @param stripBoards strips of full length that these take
 */
record Floor(
        List<Rectangle> rectangles, List<Cut> cuts, List<FloorBay> bays, List<Strip> strips, int stripBoards,
        double linerMm2) {

    /**
     * The split with the fewest bearer strips, then the least liner, then the lowest level cut, then the leftmost
     * upright cut.
     *
     * @param bearerStockMm length of the strips that bearers are cut from
     */
    static Floor of(Bed bed, Outline inner, LowSide low, Saw saw, double bearerStockMm) {
        List<FewestRectangles.Split> splits = FewestRectangles.splits(inner);
        if (splits.size() == 1) {
            return laid(bed, splits.get(0), low, saw, bearerStockMm);
        }
        return splits.stream()
                .map(split -> laid(bed, split, low, saw, bearerStockMm))
                .min(Comparator.comparingInt(Floor::stripBoards)
                        .thenComparingDouble(floor -> Lengths.toTenth(floor.linerMm2()))
                        .thenComparingDouble(floor -> lowest(floor.cuts(), true))
                        .thenComparingDouble(floor -> lowest(floor.cuts(), false)))
                .orElseThrow();
    }

    private static double lowest(List<Cut> cuts, boolean level) {
        return cuts.stream()
                .filter(cut -> cut.level() == level)
                .mapToDouble(cut -> level ? cut.from().y() : cut.from().x())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static Floor laid(Bed bed, FewestRectangles.Split split, LowSide low, Saw saw, double bearerStockMm) {
        double liner = bed.liner().wanted() ? LinerCut.areaMm2(bed, split.rectangles()) : 0;
        if (!bed.base().slatted()) {
            return new Floor(split.rectangles(), split.cuts(), List.of(), List.of(), 0, liner);
        }
        double usable = bearerStockMm - 2 * saw.endTrimMm();
        List<FloorBay> bays = new ArrayList<>();
        List<Strip> strips = new ArrayList<>();
        for (int i = 0; i < split.rectangles().size(); i++) {
            FloorBay bay = FloorBay.of(split.rectangles().get(i), low.toward(), bed.base(), saw.kerfMm());
            bays.add(bay);
            for (int k = 1; k <= bay.bearers(); k++) {
                add(strips, bed.id() + "-R" + (i + 1) + " bearer " + k, "bearer", bay.bearerMm(), usable);
            }
        }
        for (int i = 0; i < split.cuts().size(); i++) {
            add(strips, bed.id() + " beam " + (i + 1), "beam", split.cuts().get(i).lengthMm(), usable);
        }
        List<Double> lengths = strips.stream().map(Strip::lengthMm).toList();
        return new Floor(
                split.rectangles(), split.cuts(), bays, strips,
                FirstFit.boards(lengths, Math.max(usable, longest(lengths)), saw.kerfMm()), liner);
    }

    /** A run longer than a strip is laid in equal parts, butted on the ground. */
    private static void add(List<Strip> strips, String id, String use, double lengthMm, double usableMm) {
        int parts = usableMm <= 0 ? 1 : (int) Math.ceil(lengthMm / usableMm - 1e-9);
        for (int i = 0; i < parts; i++) {
            strips.add(new Strip(
                    parts == 1 ? id : id + (char) ('a' + i % 26), use, Lengths.toTenth(lengthMm / parts)));
        }
    }

    private static double longest(List<Double> lengths) {
        return lengths.stream().mapToDouble(Double::doubleValue).max().orElse(0);
    }

    void quantities(Bed bed, Saw saw, double bearerStockMm, List<Quantity> quantities) {
        if (bays.isEmpty()) {
            return;
        }
        double metres = strips.stream().mapToDouble(Strip::lengthMm).sum() / 1000;
        List<Input> bearers = new ArrayList<>();
        List<Input> slats = new ArrayList<>();
        for (int i = 0; i < bays.size(); i++) {
            FloorBay bay = bays.get(i);
            String name = "R" + (i + 1);
            bearers.add(Input.of(name + " bearers", bay.bearers(), ""));
            bearers.add(Input.of(name + " bearer length", bay.bearerMm(), "mm"));
            slats.add(Input.of(name + " rows", bay.slats().rows(), ""));
            slats.add(Input.of(name + " gap", Lengths.toTenth(bay.slats().gapMm()), "mm"));
            slats.add(Input.of(name + " row", bay.slats().piecesMm().stream().mapToDouble(p -> p).sum(), "mm"));
            slats.add(Input.of(name + " boards this way", bay.slatBoards(bed.base(), saw.kerfMm()), "slats"));
            slats.add(Input.of(
                    name + " boards the other way",
                    FloorBay.laid(bay.floor(), !bay.alongY(), bed.base()).slatBoards(bed.base(), saw.kerfMm()),
                    "slats"));
        }
        for (int i = 0; i < cuts.size(); i++) {
            bearers.add(Input.of("beam " + (i + 1), cuts.get(i).lengthMm(), "mm"));
        }
        bearers.add(Input.of("greatest spacing", bed.base().bearerEveryMm(), "mm"));
        bearers.add(Input.of("drain gap", bed.base().drainGapMm(), "mm"));
        bearers.add(Input.of("strip length", bearerStockMm, "mm"));
        bearers.add(Input.of("strips", stripBoards, ""));
        quantities.add(new Quantity("base.bearers", metres, "m", new Working(
                bearers,
                "for each rectangle bearers = ceil(run / greatest spacing) + 1, each its length less the drain gap;"
                        + " + a beam along each cut; strips filled longest first",
                Working.COMMON_PRACTICE)));
        slats.add(Input.of("slat width", bed.base().slatWidthMm(), "mm"));
        slats.add(Input.of("slat length", bed.base().slatLengthMm(), "mm"));
        slats.add(Input.of("greatest gap", bed.base().slatMaxGapMm(), "mm"));
        quantities.add(new Quantity("base.slats", slatBoards(bed, saw), "slats", new Working(
                slats,
                "rows = ceil((width + greatest gap) / (slat width + greatest gap)), gap = (width - rows x slat width) / (rows - 1);"
                        + " each row in whole slats and a rest; rests cut from slats, longest first",
                Working.COMMON_PRACTICE)));
    }

    private int slatBoards(Bed bed, Saw saw) {
        return SlatRows.boards(bays.stream().map(FloorBay::slats).toList(), bed.base(), saw.kerfMm());
    }

    /** Slat lengths of the whole floor, longest first. */
    List<SlatCut> slats() {
        Map<Double, Integer> counts = new TreeMap<>(Comparator.reverseOrder());
        for (FloorBay bay : bays) {
            bay.slats().piecesMm().forEach(piece -> counts.merge(piece, bay.slats().rows(), Integer::sum));
        }
        return counts.entrySet().stream().map(one -> new SlatCut(one.getKey(), one.getValue())).toList();
    }

    void findings(Bed bed, Optional<Point> toward, List<Finding> findings) {
        for (int i = 0; i < bays.size(); i++) {
            if (bays.get(i).slats().rippedMm() > 0) {
                findings.add(Finding.note(
                        "bed " + bed.id() + ", base R" + (i + 1),
                        Lengths.text(bays.get(i).slats().rippedMm()) + " wide is the last row of slats: rip it to fit",
                        new Amount(bays.get(i).slats().rippedMm(), "mm")));
            }
        }
        boolean beamAcross = toward.isPresent() && cuts.stream().anyMatch(cut -> cut.level()
                ? Math.abs(toward.get().y()) > 1e-12
                : Math.abs(toward.get().x()) > 1e-12);
        boolean bearersAcross = toward.isPresent() && Math.abs(toward.get().x()) > 1e-12 && Math.abs(toward.get().y()) > 1e-12;
        if (!bays.isEmpty() && bed.base().drainGapMm() <= 0 && (beamAcross || bearersAcross)) {
            findings.add(Finding.snag(
                    "bed " + bed.id() + ", base",
                    "0 of drain gap: bearers or beams lie across the fall and dam it",
                    new Amount(0, "mm"),
                    "leave a gap of 30 at an end of each bearer"));
        }
    }
}

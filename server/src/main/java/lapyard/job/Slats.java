package lapyard.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import lapyard.construction.Construction;
import lapyard.geometry.Lengths;
import lapyard.geometry.Point;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Garden;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.SlatBoards;
import lapyard.plan.WayKind;
import lapyard.working.Quantity;
import lapyard.working.QuantityKind;
import lapyard.working.Working;
import lapyard.working.Working.Input;

/**
 * Slat boards on hand, given to the floors of the beds: one kind a bed, so that its floor is level. The largest floors
 * choose first, the kind that takes fewest boards and is enough, else the one that leaves fewest to find.
 */
record Slats(Map<String, Lot> lots, List<Finding> findings) {
    /** What a bed lays: {@code need} boards, {@code onHand} of them there. */
    private record Lot(Optional<SlatBoards> kind, int need, int onHand) {}

    static Slats of(Garden garden, Function<Bed, Optional<Point>> downhill) {
        Map<String, Lot> lots = new LinkedHashMap<>();
        List<Finding> findings = new ArrayList<>();
        if (garden.goods().slatBoards().isEmpty()) return new Slats(lots, findings);
        Map<String, Integer> left = new HashMap<>();
        for (SlatBoards kind : garden.goods().slatBoards()) {
            left.put(kind.id(), kind.treatment().nowhere ? 0 : kind.count());
            barred(kind, garden).ifPresent(findings::add);
        }
        List<Bed> slatted = garden.beds().stream()
                .filter(bed -> bed.inside().base().slatted())
                .sorted(Comparator.comparingDouble((Bed bed) -> -bed.outline().areaMm2()))
                .toList();
        for (Bed bed : slatted) {
            Lot best = new Lot(Optional.empty(), need(garden, bed, downhill), 0);
            for (SlatBoards kind : garden.goods().slatBoards()) {
                if (left.get(kind.id()) > 0 && !(bed.planting().food() && kind.treatment().notFood)) {
                    int need = need(garden, bed.withInside(bed.inside().withBase(bed.inside().base().of(kind))), downhill);
                    Lot lot = new Lot(Optional.of(kind), need, Math.min(need, left.get(kind.id())));
                    best = better(lot, best) ? lot : best;
                }
            }
            int taken = best.onHand();
            best.kind().ifPresent(kind -> left.merge(kind.id(), -taken, Integer::sum));
            lots.put(bed.id(), best);
        }
        List<String> shortOf = garden.beds().stream()
                .map(Bed::id)
                .filter(id -> lots.containsKey(id) && lots.get(id).need() > lots.get(id).onHand())
                .toList();
        if (!shortOf.isEmpty()) {
            int need = lots.values().stream().mapToInt(Lot::need).sum();
            int there = lots.values().stream().mapToInt(Lot::onHand).sum();
            findings.add(Finding.of(FindingKind.SLATS_SHORT, Place.beds(shortOf).then(What.FIELD, "slats"))
                    .with("need", Fact.count(need, "slat boards")).with("there", Fact.count(there, "slat boards")).by(Fact.count(need - there, "slats"))
                    .way(WayKind.FIND_SLATS, Fact.count(need - there, "slat boards")).way(WayKind.OPEN_BASE));
        }
        return new Slats(lots, findings);
    }

    private static int need(Garden garden, Bed bed, Function<Bed, Optional<Point>> downhill) {
        return Construction.slatBoards(bed, garden.goods().saw(), downhill.apply(bed), Bearers.longestStockMm(garden, bed));
    }

    private static boolean better(Lot lot, Lot than) {
        int missing = lot.need() - lot.onHand();
        int than0 = than.need() - than.onHand();
        return missing != than0 ? missing < than0 : lot.need() < than.need();
    }

    private static Optional<Finding> barred(SlatBoards kind, Garden garden) {
        boolean food = garden.beds().stream().anyMatch(bed -> bed.planting().food() && bed.inside().base().slatted());
        if (kind.treatment().nowhere) {
            return Optional.of(Finding.of(FindingKind.BOARD_BARRED, Place.of(What.SLAT_BOARDS, kind.id()))
                    .with("why", Fact.name(kind.treatment().words)).way(WayKind.LICENSED_TIP));
        }
        return food && kind.treatment().notFood
                ? Optional.of(Finding.of(FindingKind.SLATS_NOT_FOOD, Place.of(What.SLAT_BOARDS, kind.id()))
                        .with("why", Fact.name(kind.treatment().words)).way(WayKind.LOOK_FOR_HT))
                : Optional.empty();
    }

    /** The bed with its floor of the boards that it got. */
    Bed laid(Bed bed) {
        return Optional.ofNullable(lots.get(bed.id()))
                .flatMap(Lot::kind)
                .map(kind -> bed.withInside(bed.inside().withBase(bed.inside().base().of(kind))))
                .orElse(bed);
    }

    /** What of a bed's slats must still be bought, where any boards are on hand. */
    Optional<Quantity> toBuy(Bed bed) {
        return Optional.ofNullable(lots.get(bed.id()))
                .map(lot -> Quantity.of(QuantityKind.SLATS_BOUGHT, lot.need() - lot.onHand(), "slats",
                        "slats - on hand" + lot.kind().map(kind -> "; of " + kind.id() + ", " + Lengths.text(kind.widthMm()) + " x "
                                + Lengths.text(kind.thicknessMm()) + " x " + Lengths.text(kind.lengthMm())).orElse(""), Working.GEOMETRY,
                        Input.of("slats", lot.need(), ""), Input.of("on hand", lot.onHand(), "")));
    }
}

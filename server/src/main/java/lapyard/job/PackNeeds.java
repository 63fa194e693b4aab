package lapyard.job;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.catalogue.Catalogue;
import lapyard.construction.BedWork;
import lapyard.geometry.Lengths;
import lapyard.job.JobSheet.PathSheet;
import lapyard.order.Ordering;
import lapyard.order.SlipLine;
import lapyard.order.Wanted;
import lapyard.plan.Bed;
import lapyard.plan.Fill;
import lapyard.plan.GardenPath;
import lapyard.plan.Screws;
import lapyard.plan.Ties;
import lapyard.working.Quantity;
import org.joda.money.CurrencyUnit;

/** What is bought in packs: each quantity goes to the goods that serve it, bed by bed and path by path. */
final class PackNeeds {
    private static final int MOST_WITH_DEARER = 40;

    private record Need(String unit, List<SlipLine.Use> each) {}

    private final Map<String, Need> needs = new LinkedHashMap<>();

    private PackNeeds() {}

    /** @param amounts of each bed, as {@code works} has them */
    static PackNeeds of(List<BedWork> works, List<List<Quantity>> amounts, List<PathSheet> paths) {
        PackNeeds all = new PackNeeds();
        for (int i = 0; i < works.size(); i++) {
            Bed bed = works.get(i).bed();
            all.take("bed " + bed.id(), items(bed), toBuy(amounts.get(i)));
        }
        for (PathSheet sheet : paths) {
            all.take("path " + sheet.path().id(), items(sheet.path()), sheet.quantities());
        }
        return all;
    }

    /** The goods that each of a bed's quantities asks for, by the quantity's key. */
    /** Where slat boards are on hand, only what is missing of them is bought. */
    static List<Quantity> toBuy(List<Quantity> quantities) {
        if (quantities.stream().noneMatch(quantity -> quantity.key().equals(Slats.BOUGHT))) {
            return quantities;
        }
        return quantities.stream()
                .filter(quantity -> !quantity.key().equals("base.slats"))
                .map(quantity -> quantity.key().equals(Slats.BOUGHT)
                        ? new Quantity("base.slats", quantity.value(), quantity.unit(), quantity.working())
                        : quantity)
                .toList();
    }

    static Map<String, String> items(Bed bed) {
        Map<String, String> items = new LinkedHashMap<>();
        items.put("screws", screws(bed));
        items.put("brackets", "brackets");
        items.put("brackets.fixings", fixings(bed));
        items.put("ties.course", courseTies(bed));
        items.put("ties.course.fixings", fixings(bed));
        items.put("ties.cross", "cross.ties");
        items.put("posts", "posts");
        items.put("seam.plates", "seam.plates");
        items.put("seam.screws", "seam.screws");
        items.put("staples", "staples");
        items.put("base.slats", "slats");
        items.put("finish.litres", "finish");
        items.put("seal.litres", bed.making().seal().item());
        items.put("mulch", "mulch");
        items.put("concrete", "concrete");
        items.put("sub-base", "sub-base");
        for (Fill.Layer layer : bed.planting().fill().layers()) {
            items.put(layer.item(), layer.item());
        }
        return items;
    }

    static Map<String, String> items(GardenPath path) {
        Map<String, String> items = new LinkedHashMap<>();
        for (GardenPath.Layer layer : path.layers()) {
            items.put(layer.item(), layer.item());
        }
        if (!path.edging().isEmpty()) {
            items.put("edging.length", path.edging());
            items.put("edging.pegs", "edging.pegs");
        }
        return items;
    }

    static double amount(List<Quantity> quantities, String key) {
        return quantities.stream().filter(quantity -> quantity.key().equals(key)).mapToDouble(Quantity::value).sum();
    }

    /** Screws of another length than the usual are other goods. */
    private static String screws(Bed bed) {
        return bed.making().screws().lengthMm() == Screws.PLAIN_MM ? "screws" : "screws." + Lengths.text(bed.making().screws().lengthMm());
    }

    private static String courseTies(Bed bed) {
        double height = bed.section().heightMm();
        return bed.making().ties().strapped(height) ? "course.ties" : "course.screws." + Lengths.text(Ties.courseScrewMm(height));
    }

    private static String fixings(Bed bed) {
        return bed.making().ties().fixingMm() == Ties.USUAL.fixingMm() ? "fixings" : "fixings." + Lengths.text(bed.making().ties().fixingMm());
    }

    private void take(String owner, Map<String, String> items, List<Quantity> quantities) {
        Map<String, Double> own = new LinkedHashMap<>();
        Map<String, String> units = new LinkedHashMap<>();
        for (Quantity quantity : quantities) {
            String item = items.get(quantity.key());
            if (item != null && quantity.value() > 0) {
                own.merge(item, quantity.value(), Double::sum);
                units.put(item, quantity.unit());
            }
        }
        own.forEach((item, amount) ->
                needs.computeIfAbsent(item, i -> new Need(units.get(i), new ArrayList<>())).each().add(new SlipLine.Use(owner, amount)));
    }

    /**
     * What each bed and path would buy by itself. Where they are many, dearer mixes that lift an order over a limit of free
     * delivery are not looked at, and what they could save is not proved.
     */
    void apart(Catalogue catalogue, BigDecimal reach, BuyersApart buyers, CurrencyUnit currency) {
        long owners = needs.values().stream().flatMap(need -> need.each().stream()).map(SlipLine.Use::owner).distinct().count();
        boolean few = owners <= MOST_WITH_DEARER;
        Set<String> told = new HashSet<>();
        Map<List<Object>, Wanted> known = new HashMap<>();
        needs.forEach((item, need) -> catalogue.packs(item).ifPresent(goods -> need.each().forEach(use -> {
            Wanted wanted = known.computeIfAbsent(List.of(item, use.amount()),
                    same -> Ordering.packWays(goods, List.of(use), few ? reach : BigDecimal.ZERO, currency));
            Optional<BigDecimal> cheapest = wanted.ways().stream().flatMap(way -> way.cost().stream()).min(BigDecimal::compareTo);
            if (cheapest.isEmpty()) {
                return;
            }
            buyers.wanted(use.owner(), wanted);
            Ordering.leastCost(goods, use.amount(), currency).ifPresent(least -> buyers.unproved(use.owner(), cheapest.get().subtract(least)));
            if (!few && told.add(use.owner())) buyers.unproved(use.owner(), reach);
        })));
    }

    /** @param reach what all delivery charges that can fall away come to */
    List<Wanted> lines(Catalogue catalogue, BigDecimal reach, CurrencyUnit currency) {
        List<Wanted> lines = new ArrayList<>();
        needs.forEach((item, need) -> lines.add(catalogue
                .packs(item)
                .map(goods -> Ordering.packWays(goods, need.each(), reach, currency))
                .orElseGet(() -> Wanted.only(Ordering.unpriced(
                                item, item, need.each().stream().mapToDouble(SlipLine.Use::amount).sum(), need.unit())
                        .usedBy(need.each())))));
        return lines;
    }
}

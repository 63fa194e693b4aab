package lapyard.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Roll;
import lapyard.catalogue.Section;
import lapyard.catalogue.SectionGoods;
import lapyard.loadin.Load;
import lapyard.loadin.LoadIn;
import lapyard.order.Slip;
import lapyard.order.SlipLine;
import lapyard.plan.Garden;
import lapyard.sheets.RollResult.RollLayout;

/** The slip's packs as things with weight and size. It is worked out where it is shown. */
public final class Loads {
    private Loads() {}

    public static LoadIn of(JobSheet sheet) {
        return of(sheet.garden(), sheet.slip(), sheet.rolls());
    }

    static LoadIn of(Garden garden, Slip slip, List<JobSheet.MaterialRolls> rolls) {
        Map<String, JobSheet.MaterialRolls> byMaterial = new HashMap<>();
        rolls.forEach(one -> byMaterial.put(one.material(), one));
        List<LoadIn.Coming> coming = new ArrayList<>();
        for (Slip.Order order : slip.orders()) {
            List<Load> loads = new ArrayList<>();
            for (Slip.Part part : order.lines()) {
                JobSheet.MaterialRolls laid = byMaterial.get(part.line().item());
                if (laid != null && !part.packs().isEmpty()) {
                    loads.addAll(rolls(part.line(), laid, garden));
                } else {
                    part.packs().forEach(pack -> loads.add(load(part.line(), pack, garden)));
                }
            }
            if (!loads.isEmpty()) coming.add(new LoadIn.Coming(order.supplier(), loads));
        }
        List<LoadIn.Wheeled> wheeled = slip.lines().stream()
                .filter(line -> line.unit().equals("m3") && line.need() > 0)
                .map(line -> new LoadIn.Wheeled(line.item(), line.label(), line.need()))
                .toList();
        return LoadIn.of(garden, JobSheet.lifting(garden), coming, wheeled);
    }

    private static Load load(SlipLine line, SlipLine.PackCount count, Garden garden) {
        Catalogue catalogue = garden.goods().catalogue();
        String name = PackCode.words(count.pack(), garden.imperial());
        Optional<Section> section = SectionGoods.section(line.item()).flatMap(catalogue::section);
        if (section.isPresent()) return board(line, count, section.get(), name);
        Optional<PackGoods> goods = catalogue.packs(line.item());
        Optional<Pack> pack = goods.flatMap(of -> of.packs().stream()
                .filter(one -> one.name().equals(count.pack()) && one.supplier().equals(count.supplier()))
                .findFirst());
        OptionalDouble mass = pack.isPresent() ? goods.get().massKg(pack.get()) : OptionalDouble.empty();
        double content = pack.map(Pack::content).orElse(0.0);
        double volume = line.unit().equals("m3") ? content : line.unit().equals("l") ? content / 1000 : 0;
        // lengths sold by the metre are as long as they hold
        double length = line.unit().equals("m") ? content * 1000 : 0;
        return new Load(line.item(), line.label(), name, count.count(), mass, volume, length, length > 0 ? 1 : 0);
    }

    private static Load board(SlipLine line, SlipLine.PackCount count, Section section, String name) {
        double length = section.stock().stream()
                .filter(stock -> count.pack().equals(PackCode.board(stock.lengthMm())))
                .mapToDouble(stock -> stock.lengthMm())
                .findFirst()
                .orElse(0);
        double volume = section.thicknessMm() * section.heightMm() * length / 1e9;
        return new Load(
                line.item(), line.label(), name, count.count(), OptionalDouble.of(volume * section.densityKgM3()), volume,
                length, Math.min(section.thicknessMm(), section.heightMm()));
    }

    /** A roll is as long as it is wide, and bends. */
    private static List<Load> rolls(SlipLine line, JobSheet.MaterialRolls laid, Garden garden) {
        Map<String, Double> metres = new java.util.LinkedHashMap<>();
        for (RollLayout layout : laid.result().rolls()) metres.merge(layout.roll(), layout.boughtMm() / 1000, Double::sum);
        List<Load> loads = new ArrayList<>();
        metres.forEach((id, length) -> {
            Roll roll = garden.goods().catalogue().rolls(line.item()).stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
            OptionalDouble mass = roll.gramsPerM2().isPresent()
                    ? OptionalDouble.of(roll.gramsPerM2().getAsDouble() / 1000 * length * roll.widthMm() / 1000)
                    : OptionalDouble.empty();
            loads.add(new Load(
                    line.item(), line.label(), PackCode.words(PackCode.roll(length, roll.widthMm()), garden.imperial()), 1, mass, 0,
                    roll.widthMm(), 0));
        });
        return loads;
    }
}

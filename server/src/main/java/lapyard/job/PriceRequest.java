package lapyard.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Roll;
import lapyard.catalogue.Section;
import lapyard.catalogue.StockLength;
import lapyard.geometry.Lengths;
import lapyard.order.SlipLine;

/**
 * What merchants are asked to price: each size of what the garden needs, how much of it and by when, and no price. Sizes that
 * the present plan does not take are asked for too, as another price would change the plan.
 *
 * @param rows     timber, rolls, then packs, in the order of the catalogue
 * @param answerBy the day on which the first of it must be ordered; empty where the garden names no first day of work
 */
public record PriceRequest(List<Row> rows, Optional<LocalDate> answerBy) {
    public PriceRequest {
        rows = List.copyOf(rows);
    }

    /** What a price is for. */
    public enum Each {
        BOARD,
        METRE,
        PACK
    }

    /**
     * One size.
     *
     * @param item      as a merchant's list names it: the section's id, the material or the goods
     * @param sectionMm thickness and height of a section; empty for all else
     * @param lengthMm  of a board
     * @param widthMm   of a roll
     * @param pack      name of the pack, empty for boards and rolls
     * @param content   of the pack in {@code unit}; empty where no size is known yet
     */
    public record Size(String item, Optional<double[]> sectionMm, OptionalDouble lengthMm, OptionalDouble widthMm, String pack, OptionalDouble content,
            String unit, Each each) {
        private static final OptionalDouble NONE = OptionalDouble.empty();

        static Size board(Section section, double lengthMm) {
            return new Size(section.id(), Optional.of(new double[] {section.thicknessMm(), section.heightMm()}), OptionalDouble.of(lengthMm), NONE, "", NONE, "", Each.BOARD);
        }

        static Size roll(String material, double widthMm) {
            return new Size(material, Optional.empty(), NONE, OptionalDouble.of(widthMm), "", NONE, "", Each.METRE);
        }

        static Size pack(String item, String name, OptionalDouble content, String unit) {
            return new Size(item, Optional.empty(), NONE, NONE, name, content, unit, Each.PACK);
        }
    }

    /**
     * @param count   boards, metres or packs of it in the present plan; 0 for none
     * @param need    of the whole line, spare included, in {@code needUnit}
     * @param weekend before which it must be there; 0 where nothing of it is needed any more
     * @param needed  the day on which it is used; empty where the garden names no first day of work
     */
    public record Row(Size size, String label, double count, double need, String needUnit, int weekend, Optional<LocalDate> needed) {}

    public static PriceRequest of(JobSheet sheet) {
        Catalogue catalogue = sheet.garden().goods().catalogue();
        Optional<LocalDate> start = sheet.garden().people().crew().dates().start();
        List<Buying.Row> needs = Buying.of(sheet).rows();
        Map<String, Buying.Row> first = Buying.first(needs, Buying.Row::needDay);
        List<Row> rows = new ArrayList<>();
        for (SlipLine line : sheet.slip().lines()) {
            if (line.packs().isEmpty() && line.cost().isPresent()) continue; // all of it is on hand
            Optional<Buying.Row> when = Optional.ofNullable(first.get(line.item()));
            Asking asking = new Asking(line, when.map(Buying.Row::weekend).orElse(0), when.flatMap(row -> start.map(day -> day.plusDays(row.needDay()))), rows);
            String name = line.item().replaceFirst("^(timber|bearers) ", "");
            Optional<Section> section = name.equals(line.item()) ? Optional.empty() : catalogue.section(name);
            List<Roll> rolls = catalogue.rolls(line.item());
            if (section.isPresent()) asking.boards(section.get());
            else if (!rolls.isEmpty()) asking.rolls(rolls);
            else asking.packs(catalogue.packs(line.item()));
        }
        rows.sort(Comparator.comparing((Row row) -> row.size().each()).thenComparing(row -> row.size().item()));
        return new PriceRequest(rows, start.flatMap(day -> needs.stream().map(Buying.Row::orderDay).min(Comparator.naturalOrder()).map(day::plusDays)));
    }

    private record Asking(SlipLine line, int weekend, Optional<LocalDate> needed, List<Row> rows) {
        private long count(String pack) {
            return line.packs().stream().filter(one -> one.pack().equals(pack)).mapToLong(SlipLine.PackCount::count).sum();
        }

        private void row(Size size, double count) {
            rows.add(new Row(size, line.label(), count, line.need(), line.unit(), weekend, needed));
        }

        void boards(Section section) {
            section.stock().stream().mapToDouble(StockLength::lengthMm).distinct()
                    .forEach(length -> row(Size.board(section, length), count(PackCode.board(length))));
        }

        void rolls(List<Roll> rolls) {
            for (double width : rolls.stream().mapToDouble(Roll::widthMm).distinct().sorted().toArray()) {
                String wide = " m of " + Lengths.text(width) + " wide roll";
                double metres = line.packs().stream().filter(one -> one.pack().endsWith(wide))
                        .mapToDouble(one -> Double.parseDouble(one.pack().substring(0, one.pack().length() - wide.length()))).sum();
                row(Size.roll(line.item(), width), metres);
            }
        }

        void packs(Optional<PackGoods> goods) {
            Set<String> told = new LinkedHashSet<>();
            for (Pack pack : goods.map(PackGoods::packs).orElse(List.of())) {
                if (told.add(pack.name())) row(Size.pack(line.item(), pack.name(), OptionalDouble.of(pack.content()), goods.get().unit()), count(pack.name()));
            }
            if (told.isEmpty()) row(Size.pack(line.item(), "", OptionalDouble.empty(), line.unit()), 0);
        }
    }
}

package lapyard.json;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Goods;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Roll;
import lapyard.catalogue.Section;
import lapyard.catalogue.StockLength;
import lapyard.catalogue.StrengthClass;
import lapyard.plan.Fact;
import lapyard.plan.FindingKind;
import lapyard.plan.WayKind;

/** The merchant's list: our example prices, replaced line by line by the garden's own. */
final class CatalogueReader {
    static final String EXAMPLES = "/lapyard/json/example-catalogue.json";

    private static final int MOST_LINES = 500;
    private static final double LONGEST_STOCK_MM = 30_000;
    private static final int MOST_IN_A_BUNDLE = 10_000;

    private static final String[] STRENGTHS = Stream.concat(
                    Stream.of("ungraded"), Stream.of(StrengthClass.values()).map(StrengthClass::name))
            .toArray(String[]::new);

    private CatalogueReader() {}

    private static final class Examples {
        private static final Catalogue CATALOGUE = load();

        private static Catalogue load() {
            try (InputStream in = CatalogueReader.class.getResourceAsStream(EXAMPLES)) {
                Cursor.Notes notes = new Cursor.Notes();
                Catalogue empty = new Catalogue(List.of(), List.of(), List.of(), true);
                Catalogue read = over(empty, new Cursor(DocumentText.MAPPER.readTree(in), "example catalogue", notes));
                if (notes.stopped()) {
                    throw new IllegalStateException("example catalogue: " + notes.findings);
                }
                return read;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    static Catalogue examples() {
        return Examples.CATALOGUE;
    }

    static Catalogue read(Cursor cursor) {
        boolean withExamples = cursor.flag("examples", true);
        Catalogue under = withExamples ? examples() : new Catalogue(List.of(), List.of(), List.of(), false);
        return Pins.read(cursor).over(over(under, cursor));
    }

    private static Catalogue over(Catalogue under, Cursor cursor) {
        cursor.raw("examples");
        cursor.raw("pins");
        Suppliers suppliers = Suppliers.read(cursor);
        List<Section> sections = new ArrayList<>();
        for (Cursor line : cursor.objects("sections", "section", MOST_LINES)) {
            sections.add(section(line, suppliers));
        }
        List<Roll> rolls = new ArrayList<>();
        for (Cursor line : cursor.objects("rolls", "roll", MOST_LINES)) {
            rolls.add(roll(line, suppliers));
        }
        List<PackGoods> packs = new ArrayList<>();
        for (Cursor line : cursor.objects("packs", "goods", MOST_LINES)) {
            packs.add(goods(line, suppliers));
        }
        cursor.refuseUnknown();
        List<Section> allSections = replaced(under.sections(), sections, Section::id, cursor, "sections");
        List<Roll> allRolls = replaced(under.rolls(), rolls, Roll::id, cursor, "rolls");
        List<PackGoods> allPacks = replaced(under.packs(), packs, PackGoods::item, cursor, "packs");
        boolean examplesLeft = under.examplePrices()
                && (allSections.stream().anyMatch(under.sections()::contains)
                        || allRolls.stream().anyMatch(under.rolls()::contains)
                        || allPacks.stream().anyMatch(under.packs()::contains)
                        || under.sections().isEmpty());
        return new Catalogue(suppliers.all(), allSections, allRolls, allPacks, examplesLeft);
    }

    private static <T> List<T> replaced(
            List<T> under, List<T> over, Function<T, String> id, Cursor cursor, String field) {
        Map<String, T> own = new LinkedHashMap<>();
        for (T line : over) {
            if (own.put(id.apply(line), line) != null) {
                cursor.twice(field, "line", Fact.name(Cursor.cut(id.apply(line))), WayKind.KEEP_ONE);
            }
        }
        Map<String, T> all = new LinkedHashMap<>();
        under.forEach(line -> all.put(id.apply(line), line));
        all.putAll(own);
        return List.copyOf(all.values());
    }

    private static Section section(Cursor line, Suppliers suppliers) {
        String id = line.text("id", "", 40);
        Cursor named = id.isEmpty() ? line : line.named("section " + id);
        named.raw("id");
        if (id.isEmpty()) {
            named.missing("id", "\"id\": \"100x200\"");
        }
        double thickness = named.neededLength("thickness", 10, 500);
        double height = named.neededLength("height", 10, 1000);
        double density = named.number("density", 600, 200, 1500, 1, "kg/m3");
        String graded = named.choice("strengthClass", "ungraded", STRENGTHS);
        boolean treated = named.flag("treated", false);
        int goodFaces = named.count("goodFaces", 1, 1, 2);
        boolean planed = named.flag("planed", false);
        List<StockLength> stock = new ArrayList<>();
        for (Cursor length : named.objects("stock", "stock length", 100)) {
            String seller = suppliers.of(length);
            StockLength one = new StockLength(
                    length.neededLength("length", 100, LONGEST_STOCK_MM),
                    suppliers.paid(seller, length.price("price")),
                    seller,
                    length.count("bundle", 1, 1, MOST_IN_A_BUNDLE),
                    length.count("least", 1, 1, MOST_IN_A_BUNDLE));
            length.refuseUnknown();
            if (stock.stream().anyMatch(other -> other.lengthMm() == one.lengthMm() && other.supplier().equals(seller))) {
                length.twice("length", "stock length", Fact.mm(one.lengthMm()), WayKind.KEEP_ONE);
            }
            stock.add(one);
        }
        stock.sort(Comparator.comparingDouble(StockLength::lengthMm));
        named.refuseUnknown();
        return new Section(id, thickness, height, density, stock, StrengthClass.named(graded), treated, goodFaces, planed);
    }

    private static Roll roll(Cursor line, Suppliers suppliers) {
        String id = line.text("id", "", 40);
        Cursor named = id.isEmpty() ? line : line.named("roll " + id);
        named.raw("id");
        if (id.isEmpty()) {
            named.missing("id", "\"id\": \"liner-4000\"");
        }
        String seller = suppliers.of(named);
        Roll roll = new Roll(
                id,
                named.text("material", Goods.LINER.item(), 40),
                named.neededLength("width", 100, LONGEST_STOCK_MM),
                suppliers.paid(seller, named.price("price")),
                named.length("step", 1, 1, 200_000),
                named.has("maxLength") ? OptionalDouble.of(named.length("maxLength", 0, 100, 1_000_000)) : OptionalDouble.empty(),
                seller,
                optional(named, "weight", 1, 100_000, 1, "g/m2"),
                !named.flag("oneWay", false));
        named.refuseUnknown();
        return roll;
    }

    private static PackGoods goods(Cursor line, Suppliers suppliers) {
        String item = line.text("item", "", 40);
        Cursor named = item.isEmpty() ? line : line.named("goods " + item);
        named.raw("item");
        if (item.isEmpty()) {
            named.missing("item", "\"item\": \"soil.topsoil\"");
        }
        String label = named.text("label", Goods.label(item), 200);
        String unit = named.text("unit", "", 20);
        double spare = named.number("spare", PackGoods.usualSpare(item) * 100, 0, 100, 1, "percent") / 100;
        double loosening = named.number("loosening", PackGoods.usualLoosening(item), 1, 3, 3, "");
        OptionalDouble density = optional(named, "density", 50, 5_000, 1, "kg/m3");
        List<Pack> packs = new ArrayList<>();
        for (Cursor size : named.objects("packs", "pack", 100)) {
            String seller = suppliers.of(size);
            double content = content(size, unit, density);
            Pack pack = new Pack(
                    size.text("name", packName(content, unit), 200),
                    content,
                    suppliers.paid(seller, size.price("price")),
                    seller,
                    size.count("bundle", 1, 1, MOST_IN_A_BUNDLE),
                    size.count("least", 1, 1, MOST_IN_A_BUNDLE),
                    optional(size, "mass", 0.001, 100_000, 3, "kg"));
            size.refuseUnknown();
            if (packs.stream().anyMatch(other -> other.name().equals(pack.name()) && other.supplier().equals(seller))) {
                size.twice("name", "pack", Fact.name(Cursor.cut(pack.name())), WayKind.KEEP_ONE);
            }
            packs.add(pack);
        }
        named.refuseUnknown();
        return new PackGoods(item, label, unit, spare, loosening, packs, density);
    }

    /** Of one pack; what is sold by the tonne holds its tonnes over the density, down to a litre so that it covers. */
    private static double content(Cursor pack, String unit, OptionalDouble density) {
        if (!pack.has("tonnes")) {
            return pack.number("content", 1, 0.001, 1_000_000, 5, unit);
        }
        double tonnes = pack.number("tonnes", 1, 0.001, 1_000, 3, "t");
        if (pack.has("content")) {
            pack.clash("tonnes", "content");
        } else if (!unit.equals("m3") || density.isEmpty()) {
            pack.add(pack.fault(FindingKind.TONNES_NO_DENSITY, "tonnes").way(WayKind.GIVE_LIKE, Fact.name("\"unit\": \"m3\", \"density\": 1200")));
        } else {
            return Math.max(0.001, Math.floor(tonnes * 1e6 / density.getAsDouble() + 1e-9) / 1e3);
        }
        return 1;
    }

    private static OptionalDouble optional(Cursor line, String field, double least, double most, int decimals, String unit) {
        return line.has(field) ? OptionalDouble.of(line.number(field, least, least, most, decimals, unit)) : OptionalDouble.empty();
    }

    private static String packName(double content, String unit) {
        return (shownMm(content) + " " + unit).strip();
    }

    static String shownMm(double number) {
        return Cursor.plain(java.math.BigDecimal.valueOf(number));
    }

}

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
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Roll;
import lapyard.catalogue.Section;
import lapyard.catalogue.StockLength;

/** The merchant's list: our example prices, replaced line by line by the garden's own. */
final class CatalogueReader {
    static final String EXAMPLES = "/lapyard/json/example-catalogue.json";

    private static final int MOST_LINES = 500;
    private static final double LONGEST_STOCK_MM = 30_000;

    private CatalogueReader() {}

    private static final class Examples {
        private static final Catalogue CATALOGUE = load();

        private static Catalogue load() {
            try (InputStream in = CatalogueReader.class.getResourceAsStream(EXAMPLES)) {
                Cursor.Notes notes = new Cursor.Notes();
                Catalogue empty = new Catalogue(List.of(), List.of(), List.of(), true);
                Catalogue read = over(empty, new Cursor(DocumentText.MAPPER.readTree(in), "", "example catalogue", notes));
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
        return over(under, cursor);
    }

    private static Catalogue over(Catalogue under, Cursor cursor) {
        cursor.raw("examples");
        List<Section> sections = new ArrayList<>();
        for (Cursor line : cursor.objects("sections", "section", MOST_LINES)) {
            sections.add(section(line));
        }
        List<Roll> rolls = new ArrayList<>();
        for (Cursor line : cursor.objects("rolls", "roll", MOST_LINES)) {
            rolls.add(roll(line));
        }
        List<PackGoods> packs = new ArrayList<>();
        for (Cursor line : cursor.objects("packs", "goods", MOST_LINES)) {
            packs.add(goods(line));
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
        return new Catalogue(allSections, allRolls, allPacks, examplesLeft);
    }

    private static <T> List<T> replaced(
            List<T> under, List<T> over, Function<T, String> id, Cursor cursor, String field) {
        Map<String, T> own = new LinkedHashMap<>();
        for (T line : over) {
            if (own.put(id.apply(line), line) != null) {
                cursor.stop(field, "\"" + Cursor.cut(id.apply(line)) + "\" stands twice", "keep one of the two lines");
            }
        }
        Map<String, T> all = new LinkedHashMap<>();
        under.forEach(line -> all.put(id.apply(line), line));
        all.putAll(own);
        return List.copyOf(all.values());
    }

    private static Section section(Cursor line) {
        String id = line.text("id", "", 40);
        Cursor named = id.isEmpty() ? line : line.named("section " + id);
        named.raw("id");
        if (id.isEmpty()) {
            named.stop("id", "is missing", "name the section by its size, as in 100x200");
        }
        double thickness = named.neededLength("thickness", 10, 500);
        double height = named.neededLength("height", 10, 1000);
        double density = named.number("density", 600, 200, 1500, 1, "kg/m3");
        List<StockLength> stock = new ArrayList<>();
        for (Cursor length : named.objects("stock", "stock length", 100)) {
            StockLength one = new StockLength(length.neededLength("length", 100, LONGEST_STOCK_MM), length.price("price"));
            length.refuseUnknown();
            if (stock.stream().anyMatch(other -> other.lengthMm() == one.lengthMm())) {
                length.stop("length", shownMm(one.lengthMm()) + " stands twice in the price list", "keep one of the two prices");
            }
            stock.add(one);
        }
        stock.sort(Comparator.comparingDouble(StockLength::lengthMm));
        named.refuseUnknown();
        return new Section(id, thickness, height, density, stock);
    }

    private static Roll roll(Cursor line) {
        String id = line.text("id", "", 40);
        Cursor named = id.isEmpty() ? line : line.named("roll " + id);
        named.raw("id");
        if (id.isEmpty()) {
            named.stop("id", "is missing", "name the roll, as in liner-4000");
        }
        Roll roll = new Roll(
                id,
                named.text("material", "liner", 40),
                named.neededLength("width", 100, LONGEST_STOCK_MM),
                named.price("price"),
                named.length("step", 1, 1, 200_000),
                named.has("maxLength") ? OptionalDouble.of(named.length("maxLength", 0, 100, 1_000_000)) : OptionalDouble.empty());
        named.refuseUnknown();
        return roll;
    }

    private static PackGoods goods(Cursor line) {
        String item = line.text("item", "", 40);
        Cursor named = item.isEmpty() ? line : line.named("goods " + item);
        named.raw("item");
        if (item.isEmpty()) {
            named.stop("item", "is missing", "name what is sold, as in screws or soil.topsoil");
        }
        String label = named.text("label", item, 200);
        String unit = named.text("unit", "", 20);
        double spare = named.number("spare", 0, 0, 100, 1, "percent") / 100;
        List<Pack> packs = new ArrayList<>();
        for (Cursor size : named.objects("packs", "pack", 100)) {
            double content = size.number("content", 1, 0.001, 1_000_000, 5, unit);
            Pack pack = new Pack(size.text("name", packName(content, unit), 200), content, size.price("price"));
            size.refuseUnknown();
            if (packs.stream().anyMatch(other -> other.name().equals(pack.name()))) {
                size.stop("name", "\"" + Cursor.cut(pack.name()) + "\" stands twice in the price list", "keep one of the two prices");
            }
            packs.add(pack);
        }
        named.refuseUnknown();
        return new PackGoods(item, label, unit, spare, packs);
    }

    private static String packName(double content, String unit) {
        return (shownMm(content) + " " + unit).strip();
    }

    static String shownMm(double number) {
        return Cursor.plain(java.math.BigDecimal.valueOf(number));
    }

}

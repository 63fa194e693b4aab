package lapyard.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import lapyard.catalogue.Goods;
import lapyard.order.SlipLine;
import lapyard.working.Quantity;
import lapyard.working.QuantityKey;
import lapyard.working.QuantityKind;
import lapyard.working.QuantityKind.Sale;
import org.junit.jupiter.api.Test;

/** Every quantity of a job sheet is bought, or is marked as not for sale. */
class QuantityKindTest {
    private static final JobSheet SHEET = Gardens.sheet("""
            {"defaults":{"base":"slatted","ties":{"brackets":true,"courseTies":true,"crossTies":true}},
             "ground":{"levels":[{"at":[0,0],"drop":400},{"at":[9000,0],"drop":430},{"at":[0,9000],"drop":500}],
                       "preparation":{"soft":"strip"},
                       "surfaces":[{"kind":"grass","outline":[[-2000,-2000],[20000,-2000],[20000,3000],[-2000,3000]]}]},
             "beds":[{"id":"M","width":6000,"depth":1200,"courses":3,"finish":true,"seal":true,"fill":{"mulch":50},
              "ties":{"brackets":true,"courseTies":true,"courseTie":"straps","crossTies":true,"supports":[{"wall":"A","at":2000,"by":"post"}]}},
                     {"id":"N","width":2400,"depth":900,"courses":2,"at":[0,5000]}],
             "paths":[{"id":"P","line":[[0,4000],[5000,4000]],"width":900,"edging":"edging","membrane":"membrane",
                       "layers":[{"material":"gravel","depth":50}]}]}""");

    @Test
    void whatGoesByThePackIsAskedForAndNothingElse() {
        Set<QuantityKind> asked = EnumSet.of(QuantityKind.SLATS_BOUGHT);
        List<QuantityKey> keys = new ArrayList<>();
        SHEET.beds().forEach(bed -> keys.addAll(PackNeeds.items(bed.work().bed()).keySet()));
        SHEET.paths().forEach(path -> keys.addAll(PackNeeds.items(path.path()).keySet()));
        keys.forEach(key -> asked.add(key.kind()));
        Set<QuantityKind> packs = EnumSet.noneOf(QuantityKind.class);
        for (QuantityKind kind : QuantityKind.values()) if (kind.sale == Sale.PACKS) packs.add(kind);
        assertEquals(packs, asked);
    }

    /** The slip holds as much of each item as beds and paths say that they take. */
    @Test
    void whatIsForSaleStandsOnTheSlip() {
        Set<String> bought = new TreeSet<>();
        SHEET.slip().lines().forEach(line -> line.uses().stream().map(SlipLine.Use::owner).forEach(owner -> bought.add(owner + " " + line.item())));
        Set<QuantityKind> seen = EnumSet.noneOf(QuantityKind.class);
        for (JobSheet.BedSheet bed : SHEET.beds()) {
            for (Quantity quantity : bed.quantities()) {
                if (quantity.key().kind().sale != Sale.PACKS || quantity.value() <= 0) continue;
                seen.add(quantity.key().kind());
                String item = PackNeeds.items(bed.work().bed()).get(quantity.key());
                assertTrue(bought.contains("bed " + bed.work().bed().id() + " " + item), quantity.key() + " of bed " + bed.work().bed().id());
            }
        }
        for (JobSheet.PathSheet path : SHEET.paths()) {
            for (Quantity quantity : path.quantities()) {
                if (quantity.key().kind().sale != Sale.PACKS || quantity.value() <= 0) continue;
                seen.add(quantity.key().kind());
                String item = PackNeeds.items(path.path()).get(quantity.key());
                assertTrue(bought.contains("path " + path.path().id() + " " + item), quantity.key() + " of path " + path.path().id());
            }
        }
        Set<QuantityKind> missing = EnumSet.noneOf(QuantityKind.class);
        for (QuantityKind kind : QuantityKind.values()) if (kind.sale == Sale.PACKS && !seen.contains(kind)) missing.add(kind);
        assertEquals(EnumSet.of(QuantityKind.SLATS_BOUGHT), missing, "which the garden has none of");
        Set<String> items = SHEET.slip().lines().stream().map(SlipLine::item).collect(Collectors.toSet());
        assertTrue(items.containsAll(List.of("liner", "membrane")), items.toString());
    }

    /** Goods are asked for by a quantity, or are cut from rolls; and the examples sell each of them. */
    @Test
    void allGoodsAreBoughtAndSold() {
        Set<Goods> asked = EnumSet.noneOf(Goods.class);
        SHEET.slip().lines().forEach(line -> Goods.of(line.item()).ifPresent(asked::add));
        Gardens.sheet("{\"beds\":[{\"id\":\"S\",\"width\":2400,\"depth\":1200,\"courses\":2,\"base\":\"open\","
                        + "\"ties\":{\"courseTies\":true,\"courseTie\":\"screws\"}}],\"paths\":[{\"id\":\"B\",\"line\":[[0,4000],[5000,4000]],"
                        + "\"layers\":[{\"material\":\"bark\",\"depth\":50}]}]}")
                .slip().lines().forEach(line -> Goods.of(line.item()).ifPresent(asked::add));
        assertEquals(EnumSet.allOf(Goods.class), asked);
        Set<Goods> sold = EnumSet.noneOf(Goods.class);
        SHEET.garden().goods().catalogue().packs().forEach(goods -> sold.add(Goods.of(goods.item()).orElseThrow()));
        SHEET.garden().goods().catalogue().rolls().forEach(roll -> sold.add(Goods.of(roll.material()).orElseThrow()));
        assertEquals(EnumSet.allOf(Goods.class), sold);
        assertEquals("Angled screws 30 mm", Goods.label("screws.30", false));
        assertEquals("Soil (loam)", Goods.label("soil.loam", false));
        assertEquals("wool", Goods.label("wool", false));
    }

    @Test
    void everyCodeStandsOnceAndAPartGoesWithAStar() {
        Set<String> codes = new TreeSet<>();
        for (QuantityKind kind : QuantityKind.values()) assertTrue(codes.add(kind.code), kind.name());
        assertEquals("survey.3.x", QuantityKind.SURVEY_X.of(3).toString());
        assertEquals("soil.loose", QuantityKind.SOIL_LOOSE.alone().toString());
        assertThrows(IllegalArgumentException.class, () -> QuantityKind.LEVEL.alone());
        assertThrows(IllegalArgumentException.class, () -> QuantityKind.MULCH.of("A"));
    }

    /** {@code -Dlapyard.approve=true} writes the list anew. */
    @Test
    void theDocsListEveryQuantity() throws IOException {
        StringBuilder table = new StringBuilder("# Quantities\n\nEvery quantity of `job-sheet.json` by its `key`, and how it is bought. A `*` stands for which one: a corner, a wall,\n"
                + "a surface or a material. Written by `QuantityKindTest`.\n\n| key | bought |\n| --- | --- |\n");
        for (QuantityKind kind : QuantityKind.values()) {
            table.append("| `").append(kind.code).append("` | ")
                    .append(kind.sale == Sale.NONE ? "not for sale" : "in " + kind.sale.name().toLowerCase(Locale.ROOT)).append(" |\n");
        }
        Path file = Path.of("../docs/quantities.md");
        if (Boolean.getBoolean("lapyard.approve")) Files.writeString(file, table);
        assertEquals(table.toString(), Files.readString(file));
    }
}

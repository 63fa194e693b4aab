package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Function;
import java.util.stream.Collectors;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Pack;
import lapyard.catalogue.PackCode;
import lapyard.catalogue.PackGoods;
import lapyard.catalogue.Roll;
import lapyard.catalogue.Section;
import lapyard.catalogue.SectionGoods;
import lapyard.catalogue.StockLength;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place;
import lapyard.plan.Place.What;
import lapyard.plan.Tally;
import lapyard.plan.WayKind;
import lapyard.working.BrokenRule;

/** Lines that the gardener buys, or has bought, from one supplier or in one pack, whatever else would be cheaper. */
final class Pins {
    private record Pin(Cursor line, String item, String supplier, String pack) {
        boolean takes(String seller, String name) {
            return (supplier.isEmpty() || supplier.equals(seller)) && (pack.isEmpty() || pack.equals(name));
        }
    }

    private final List<Pin> pins = new ArrayList<>();

    private Pins() {}

    static Pins read(Cursor catalogue) {
        Pins pins = new Pins();
        for (Cursor line : catalogue.objects("pins", "pin")) {
            Pin pin = new Pin(line, line.text("item"), line.text("supplier"), line.text("pack"));
            line.refuseUnknown();
            if (pin.item().isEmpty() || pin.supplier().isEmpty() && pin.pack().isEmpty()) {
                line.needed("{\"item\": \"finish\", \"supplier\": \"sawmill\"}", "\"item\"", "\"supplier\" or \"pack\"");
            } else {
                pins.pins.add(pin);
            }
        }
        return pins;
    }

    /** The catalogue with only what the pins leave; a pin that leaves nothing is named and passed over. */
    Catalogue over(Catalogue catalogue) {
        List<Section> sections = new ArrayList<>(catalogue.sections());
        List<Roll> rolls = new ArrayList<>(catalogue.rolls());
        List<PackGoods> packs = new ArrayList<>(catalogue.packs());
        for (Pin pin : pins) {
            boolean known = catalogue.section(pin.item()).isPresent() || rolls.stream().anyMatch(roll -> roll.material().equals(pin.item()))
                    || packs.stream().anyMatch(goods -> goods.item().equals(pin.item()));
            sections.replaceAll(section -> !section.id().equals(pin.item()) ? section
                    : section.sold(kept(pin, section.stock(), StockLength::supplier, stock -> CatalogueReader.shownMm(stock.lengthMm()))));
            List<Roll> ofMaterial = rolls.stream().filter(roll -> roll.material().equals(pin.item())).toList();
            if (!ofMaterial.isEmpty()) {
                List<Roll> kept = kept(pin, ofMaterial, Roll::supplier, Roll::id);
                rolls.removeIf(roll -> roll.material().equals(pin.item()) && !kept.contains(roll));
            }
            packs.replaceAll(goods -> goods.item().equals(pin.item()) ? goods.only(kept(pin, goods.packs(), Pack::supplier, Pack::name)) : goods);
            if (!known) {
                pin.line().add(Finding.of(FindingKind.PIN_UNKNOWN, Place.of(What.PIN, pin.item()))
                        .with("item", Fact.name(BrokenRule.cut(pin.item()))).way(WayKind.NAME_CATALOGUE_GOODS).way(WayKind.TAKE_OUT_PIN));
            }
        }
        return new Catalogue(catalogue.suppliers(), sections, rolls, packs, catalogue.examplePrices());
    }

    /** The catalogue where timber, packs and rolls that are bought stay with who sold them, as long as they sell them. */
    static Catalogue bought(Catalogue catalogue, JsonNode tallied) {
        List<Tally.Bought> bought = new ArrayList<>();
        for (JsonNode one : tallied) {
            String supplier = one.path("supplier").asText();
            if (!supplier.isEmpty()) bought.add(new Tally.Bought(one.path("item").asText(), one.path("pack").asText(), 1, 0, supplier, Optional.empty()));
        }
        if (bought.isEmpty()) return catalogue;
        return new Catalogue(catalogue.suppliers(),
                // boards of one section come from one supplier, so that they match
                catalogue.sections().stream().map(section -> section.sold(theirs(section.stock(), StockLength::supplier,
                        (stock, one) -> SectionGoods.section(one.item()).filter(section.id()::equals).isPresent(), stock -> section.id(), bought))).toList(),
                theirs(catalogue.rolls(), Roll::supplier, (roll, one) -> one.item().equals(roll.material()) && PackCode.isRoll(one.pack(), roll.widthMm()),
                        roll -> List.of(roll.widthMm(), roll.stepMm(), roll.maxLengthMm(), roll.mayTurn()), bought),
                catalogue.packs().stream().map(goods -> goods.only(theirs(goods.packs(), Pack::supplier,
                        (pack, one) -> one.item().equals(goods.item()) && one.pack().equals(pack.name()), pack -> List.of(pack.content(), pack.bundle(), pack.least()), bought))).toList(),
                catalogue.examplePrices());
    }

    /**
     * Without offers of others for what is bought; all where who sold it offers it no more. What is sold otherwise may be the other part of a mix.
     *
     * @param how it is sold but for its price; of two offers alike the order has one at most
     */
    private static <T> List<T> theirs(
            List<T> sold, Function<T, String> seller, BiPredicate<T, Tally.Bought> is, Function<T, Object> how, List<Tally.Bought> bought) {
        return sold.stream().filter(one -> {
            Set<String> from = bought.stream().filter(had -> is.test(one, had)).map(Tally.Bought::supplier).collect(Collectors.toSet());
            return from.isEmpty() || from.contains(seller.apply(one))
                    || sold.stream().noneMatch(other -> from.contains(seller.apply(other)) && how.apply(other).equals(how.apply(one))
                            && bought.stream().anyMatch(had -> is.test(one, had) && is.test(other, had)));
        }).toList();
    }

    private static <T> List<T> kept(Pin pin, List<T> sold, Function<T, String> seller, Function<T, String> name) {
        List<T> kept = sold.stream().filter(one -> pin.takes(seller.apply(one), name.apply(one))).toList();
        if (kept.isEmpty()) {
            String wanted = (pin.pack().isEmpty() ? "" : " " + pin.pack()) + (pin.supplier().isEmpty() ? "" : " from " + pin.supplier());
            pin.line().add(Finding.of(FindingKind.PIN_NOT_SOLD, Place.of(What.PIN, pin.item()))
                    .with("item", Fact.name(BrokenRule.cut(pin.item()))).with("wanted", Fact.name(wanted.strip()))
                    .way(WayKind.NAME_SELLER).way(WayKind.TAKE_OUT_PIN));
            return sold;
        }
        return kept;
    }
}

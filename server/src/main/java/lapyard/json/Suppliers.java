package lapyard.json;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lapyard.catalogue.Supplier;
import lapyard.catalogue.Vehicle;
import lapyard.plan.Fact;
import lapyard.plan.WayKind;

/** Who sells, as the catalogue lists them; every amount is turned into what is paid, tax included. */
final class Suppliers {
    private final Map<String, Supplier> byId = new LinkedHashMap<>();
    private final Map<String, BigDecimal> taxToAdd = new LinkedHashMap<>();

    private Suppliers() {}

    static Suppliers read(Cursor catalogue, int leadDays) {
        Suppliers suppliers = new Suppliers();
        for (Cursor one : catalogue.objects("suppliers", "supplier")) suppliers.add(one, leadDays);
        return suppliers;
    }

    private void add(Cursor line, int usualLead) {
        String id = line.code("id", "");
        Cursor named = id.isEmpty() ? line : line.named("supplier " + id);
        if (id.isEmpty()) {
            named.missing("id", "\"id\": \"sawmill\"");
        } else if (byId.containsKey(id)) {
            named.twice("id", "supplier code", Fact.name(id), WayKind.ANOTHER_CODE);
        }
        String name = named.text("name", id);
        int leadDays = named.count("leadDays", usualLead);
        Optional<BigDecimal> charge = named.price("delivery");
        Optional<BigDecimal> freeOver = named.price("freeOver");
        BigDecimal rate = exact(named, "tax");
        boolean included = named.flag("taxIncluded");
        if (!included && !named.has("tax")) named.missing("tax", "\"tax\": 20 for 20 %, as the prices are without it");
        BigDecimal toAdd = included ? BigDecimal.ZERO : rate;
        String validUntil = date(named);
        Optional<Vehicle> lorry = named.readIfAny("vehicle", Suppliers::vehicle);
        BigDecimal deposit = exact(named, "deposit");
        int payDays = named.count("payDays");
        named.refuseUnknown();
        taxToAdd.put(id, toAdd);
        byId.put(id, new Supplier(
                id,
                name.isBlank() ? id : name,
                leadDays,
                Supplier.withTax(charge.orElse(BigDecimal.ZERO), toAdd),
                freeOver.map(limit -> Supplier.withTax(limit, toAdd)),
                rate,
                validUntil,
                lorry,
                deposit,
                payDays));
    }

    static Vehicle vehicle(Cursor vehicle) {
        return new Vehicle(vehicle.text("name"), vehicle.number("payload"), vehicle.number("bedLength"), vehicle.number("volume"));
    }

    private static BigDecimal exact(Cursor line, String field) {
        BigDecimal checked = BigDecimal.valueOf(line.number(field, 0)).stripTrailingZeros();
        return checked.setScale(Math.max(0, checked.scale()));
    }

    static String date(Cursor line) {
        return CrewReader.date(line, "validUntil").map(LocalDate::toString).orElse("");
    }

    List<Supplier> all() {
        return List.copyOf(byId.values());
    }

    /** The supplier that a line of the catalogue names; empty for the one merchant. */
    String of(Cursor line) {
        String id = line.text("supplier");
        if (!id.isEmpty() && !byId.containsKey(id)) {
            line.add(line.noSuch("supplier", "supplier", id, byId.keySet()).way(WayKind.ADD_TO, Fact.name("\"suppliers\" of the catalogue")));
            return "";
        }
        return id;
    }

    Optional<BigDecimal> paid(String supplier, Optional<BigDecimal> listed) {
        return listed.map(price -> Supplier.withTax(price, taxToAdd.getOrDefault(supplier, BigDecimal.ZERO)));
    }
}

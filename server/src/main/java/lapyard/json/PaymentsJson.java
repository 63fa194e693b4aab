package lapyard.json;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lapyard.job.Payments;

/** The wire form of money over time. */
public final class PaymentsJson {
    private PaymentsJson() {}

    private record Whole(String currency, BigDecimal total, boolean atLeast, BigDecimal paid, BigDecimal open, List<Due> dues, List<Payments.BoughtLine> bought) {}

    private record Due(OptionalInt day, Optional<LocalDate> date, String supplier, String name, String what, BigDecimal amount, BigDecimal sum) {}

    public static ObjectNode of(Payments payments) {
        return Wire.of(new Whole(
                payments.currency().getCode(), payments.total(), payments.atLeast(), payments.paid(), payments.open(),
                payments.dues().stream()
                        .map(due -> new Due(due.day(), due.date(), due.supplier().id(), due.supplier().name(), due.what().words, due.amount(), due.sum()))
                        .toList(),
                payments.bought()));
    }
}

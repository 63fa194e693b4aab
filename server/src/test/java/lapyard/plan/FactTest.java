package lapyard.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import lapyard.plan.Finding;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class FactTest {
    static List<Arguments> facts() {
        return List.of(Arguments.of(Fact.m2(0.30004), 0.3, "m2"), Arguments.of(Fact.m3(1.2346), 1.235, "m3"), Arguments.of(Fact.kg(25.04), 25.0, "kg"),
                Arguments.of(Fact.kn(1.234), 1.23, "kN"), Arguments.of(Fact.kpa(4.86), 4.9, "kN/m2"), Arguments.of(Fact.mm(12.34), 12.3, "mm"));
    }

    /** Programs read these units: they are those of the document, whatever people read. */
    @ParameterizedTest
    @MethodSource("facts")
    void anAmountIsRoundedAndInTheUnitOfAnswers(Fact fact, double value, String unit) {
        assertEquals(new Finding.Amount(value, unit), fact.amount());
    }
}

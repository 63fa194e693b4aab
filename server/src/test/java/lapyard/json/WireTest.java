package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lapyard.geometry.Outline;
import lapyard.geometry.Point;
import lapyard.geometry.Rectangle;
import lapyard.json.Wire.Exact;
import lapyard.json.Wire.IfGiven;
import lapyard.json.Wire.To;
import lapyard.plan.Treatment;
import lapyard.working.Working;
import org.junit.jupiter.api.Test;

/** How records become JSON: names without units, decimals by unit, money as text. */
class WireTest {
    private record Lengths(double lengthMm, double turnDeg, double areaM2, @To(2) double hours, @To(1) List<Double> faces,
            OptionalDouble atMm, double notFiniteMm) {}

    private record Amounts(BigDecimal money, @Exact BigDecimal exact, Optional<BigDecimal> paid, Optional<BigDecimal> unpaid,
            OptionalInt used, @IfGiven Optional<String> left) {}

    private record Shapes(Outline outline, Point at, Rectangle floor, Treatment treatment, Optional<LocalDate> day) {}

    @Test
    void aUnitGivesANumberItsDecimalsAndStaysOutOfItsName() {
        assertEquals("{\"length\":2899.9,\"turn\":-90,\"areaM2\":4.333333,\"hours\":1.67,\"faces\":[0,99.5],\"at\":12.5,\"notFinite\":null}",
                Wire.of(new Lengths(2899.94, -90.04, 13 / 3.0, 5 / 3.0, List.of(0.0, 99.46), OptionalDouble.of(12.46), Double.NaN)).toString());
    }

    /** A half cent is rounded by whoever adds it up, never on the way out; 17.40 keeps its nought. */
    @Test
    void moneyIsTextAndExactAmountsAreNumbers() {
        assertEquals("{\"money\":\"17.40\",\"exact\":17.405,\"paid\":\"100\",\"unpaid\":null,\"used\":null}",
                Wire.of(new Amounts(new BigDecimal("17.40"), new BigDecimal("17.405"), Optional.of(new BigDecimal("1E+2")),
                        Optional.empty(), OptionalInt.empty(), Optional.empty())).toString());
    }

    @Test
    void outlinesAreTheirCornersAndConstantsTheirWords() {
        assertEquals("{\"outline\":[[0,0],[1000.1,0],[0,500]],\"at\":[1,2],\"floor\":{\"x\":1,\"y\":2,\"width\":3,\"depth\":4.1},"
                        + "\"treatment\":\"creosote\",\"day\":\"2027-03-06\"}",
                Wire.of(new Shapes(new Outline(List.of(new Point(0, 0), new Point(1000.06, 0), new Point(0, 500))), new Point(1, 2),
                        new Rectangle(1, 2, 3, 4.06), Treatment.CREOSOTE, Optional.of(LocalDate.of(2027, 3, 6)))).toString());
    }

    @Test
    void aWorkingIsWrittenAsItStands() {
        assertEquals("{\"inputs\":[{\"name\":\"t\",\"value\":100,\"unit\":\"mm\"}],\"formula\":\"2 t\",\"source\":\"geometry\"}",
                Wire.of(Working.of("2 t", Working.GEOMETRY, Working.Input.of("t", 100, "mm"))).toString());
    }
}

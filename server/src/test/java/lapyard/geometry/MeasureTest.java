package lapyard.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasureTest {
    /** NIST SP 811 (2008), appendix B: 1 lb 0.453 592 37 kg, 1 ft 0.3048 m, 1 yd3 0.764 554 857 984 m3, 1 US gal 3.785 411 784 l. */
    @ParameterizedTest
    @CsvSource({
        "KG, 45.359237, 0, 45 kg, 100 lb",
        "TONNES, 0.45359237, 1, 0.5 t, 1000 lb",
        "METRES, 30.48, 1, 30.5 m, 100.0 ft",
        "SQUARE_METRES, 9.290304, 1, 9.3 m², 100.0 sq ft",
        "CUBIC_METRES, 1.529109715968, 2, 1.53 m³, 2.00 cu yd",
        "LITRES, 37.85411784, 2, 37.85 l, 10.00 gal"
    })
    void amountsInBothMeasures(Measure measure, double value, int decimals, String metric, String imperial) {
        assertEquals(metric, measure.written(value, decimals, false));
        assertEquals(imperial, measure.written(value, decimals, true));
        assertEquals(imperial, Measure.of(value, measure.unit(false).replace("²", "2").replace("³", "3"), decimals, true));
    }
}

package lapyard.order;

import static lapyard.order.OrderingTest.bought;
import static lapyard.order.OrderingTest.pack;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import lapyard.catalogue.PackGoods;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SlipCsvTest {
    private static final CurrencyUnit GBP = Ordering.currency("GBP");

    @Test
    void theSlipIsAHeaderItsLinesAndATotal() {
        PackGoods screws = new PackGoods(
                "screws",
                "screws 100, angled",
                "screws",
                0.1,
                List.of(pack("box of 50", 50, "14.00"), pack("box of 100", 100, "24.00")));
        Slip slip = Ordering.slip(
                GBP,
                List.of(
                        Ordering.packs(screws, List.of(36.0, 24.0), GBP),
                        Ordering.unpriced("path.bark", "bark for \"the long path\"", 0.545, "m3"),
                        bought("soil", "349.00", "526.00")),
                false);
        assertEquals(
                """
            item,label,need,unit,packs,cost,bed by bed,saved\r
            soil,soil,1,m,,349.00,526.00,177.00\r
            screws,"screws 100, angled",66,screws,1 x box of 100,24.00,28.00,4.00\r
            path.bark,"bark for ""the long path""\",0.545,m3,,,,\r
            total,at least,,GBP,,373.00,554.00,181.00\r
            """,
                SlipCsv.write(slip));
    }

    @Test
    void aCompleteSlipDoesNotSayAtLeast() {
        assertTrue(SlipCsv.write(Ordering.slip(GBP, List.of(bought("soil", "349.00", "526.00")), false))
                .endsWith("total,,,GBP,,349.00,526.00,177.00\r\n"));
    }

    /** The starts of OWASP, CSV Injection (page as of 2024, from memory): = + - @ tab CR LF and full-width forms. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "\uFF1D1+1"})
    void textNeverStartsAFormula(String text) throws IOException {
        Slip slip = Ordering.slip(GBP, List.of(Ordering.unpriced(text, text, 1, text)), false);
        CSVRecord row = CSVFormat.RFC4180
                .parse(new StringReader(SlipCsv.write(slip)))
                .getRecords()
                .get(1);
        for (int column : new int[] {0, 1, 3}) {
            assertEquals("'" + text, row.get(column));
        }
        assertEquals("1", row.get(2));
    }

    @Test
    void amountsBelowZeroStayNumbers() throws IOException {
        Slip slip = Ordering.slip(GBP, List.of(bought("timber", "36.00", "30.00")), false);
        assertEquals(
                "-6.00",
                CSVFormat.RFC4180
                        .parse(new StringReader(SlipCsv.write(slip)))
                        .getRecords()
                        .get(1)
                        .get(7));
    }
}

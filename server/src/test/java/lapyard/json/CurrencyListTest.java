package lapyard.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Currency;
import java.util.List;
import java.util.stream.Collectors;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;

/** The page offers the money that a garden can be kept in, no more and no less. */
class CurrencyListTest {
    private static final Path PAGE = Path.of("../web/src/main/resources/META-INF/resources/state/currencies.js");

    private static boolean isKept(String code) {
        return GardenReader.read("{\"currency\":\"" + code + "\",\"beds\":[]}") instanceof Reading.Read;
    }

    /** {@code -Dlapyard.approve=true} writes the page's list anew. */
    @Test
    void thePageHasTheMoneyThatTheReaderTakes() throws IOException {
        String codes = CurrencyUnit.registeredCurrencies().stream().map(CurrencyUnit::getCode).filter(CurrencyListTest::isKept).sorted().collect(Collectors.joining(" "));
        String text = "/** Money that goods are paid in, ISO 4217; written by `CurrencyListTest`. */\nexport const CURRENCIES = ('"
                + codes.replaceAll("(.{127}) ", "$1 '\n  + '") + "').split(' ');\n";
        if (Boolean.getBoolean("lapyard.approve")) Files.writeString(PAGE, text);
        assertEquals(text, Files.readString(PAGE));
    }

    /** ISO 4217 gives drawing rights (XDR), sucre (XSU) and metals no minor unit: nobody is paid in them. The codes are those of the Java library too. */
    @Test
    void drawingRightsAndMetalsAreNoMoneyToPayWith() {
        assertEquals(List.of(), List.of("XDR", "XSU", "XUA", "XAU", "XAG", "XTS", "XXX", "ZZZ").stream().filter(CurrencyListTest::isKept).toList());
        for (String code : List.of("GBP", "EUR", "USD", "JPY", "KWD", "XOF")) {
            assertTrue(isKept(code), code);
            assertTrue(Currency.getInstance(code).getDefaultFractionDigits() >= 0, code);
        }
    }
}

package lapyard.working;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CsvTest {
    private static List<List<String>> rows(String text) {
        List<List<String>> rows = new ArrayList<>();
        assertEquals(OptionalLong.empty(), Csv.read(text, (row, line) -> rows.add(row.toList())));
        return rows;
    }

    /** Common practice, no source: spreadsheets save with a comma, or with a semicolon where the comma parts decimals, or with tabs. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            item,price               | ,
            item;price               | ;
            Length, ft;Price         | ;
            Length, ft;Price;Height, ft, in;Item;Pack | ;
            Item, what it is; or what it is called, Price, Length | ,
            """)
    void whatIsMostOftenInTheHeadingStandsBetweenCells(String head, String sign) {
        assertEquals(sign.charAt(0), Csv.between("a title\n" + head + "\n100x200;2,5;3,7\n"));
    }

    /** As above; with a comma in each heading there is one more of them, and in decimals, too. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            X, m;Y, m                       | 1,5;2,25           | ;
            X, m;Y, m                       | 1.5;2.25           | ;
            Item, code;Price, GBP;Length, m | 100x200;12,50;2,4  | ;
            item,length,price (net; each)   | 100x200,2400,12.50 | ,
            """)
    void theLinesBelowHaveTheSameBetweenTheirCells(String head, String row, String sign) {
        assertEquals(sign.charAt(0), Csv.between(head + "\n\nSleepers, new\n" + row + "\n"));
        assertEquals(sign.equals(";") ? '\t' : ',', Csv.between((head + "\n" + row).replace(';', '\t')));
    }

    @Test
    void aSignInOneLineBelowAlonePartsNoCells() {
        assertEquals(',', Csv.between("item,label,price; net\n1,screws; new,2\n3,bolts,4\n5,nuts,6\n"));
        assertEquals(';', Csv.between("item;price\n100x200;2,5\nPrices hold until June, as agreed\nDelivery, if any, is not in them\n"));
    }

    @Test
    void tabsGoBeforeACommaAndASemicolonThatAreNoMoreOften() {
        assertEquals(List.of(List.of("x, mm", "y; mm"), List.of("1,5", "2")), rows("x, mm\ty; mm\n\n1,5\t2\n"));
    }

    /** RFC 4180, 2.6: line breaks, quotes and the sign between cells stand in quotes, a quote twice. */
    @Test
    void whatIsWrittenIsReadAgain() {
        List<List<String>> rows = List.of(List.of("a", "b"), List.of("1,5", "two\r\nlines"), List.of("a \"quote\"", "; x"));
        String text = Csv.text(out -> out.printRecords(rows.subList(1, 3)), "a", "b");
        assertEquals("a,b\r\n\"1,5\",\"two\r\nlines\"\r\n\"a \"\"quote\"\"\",; x\r\n", text);
        assertEquals(rows, rows(text));
        assertEquals("", Csv.text(out -> { }), "no header, no row");
    }

    @Test
    void aQuoteThatIsNotClosedIsToldOfWithTheLastLine() {
        List<String> first = new ArrayList<>();
        assertEquals(OptionalLong.of(4), Csv.read("a,b\n1,\"2\n3,4\n", (row, line) -> first.add(row.get(0))));
        assertEquals(List.of("a"), first);
    }

    @Test
    void aTextThatWouldStartAFormulaBeginsWithAnApostrophe() {
        for (String start : List.of("=", "+", "-", "@", "\t", "\r", "\n", "\uFF1D", "\uFF0B", "\uFF0D", "\uFF20")) assertEquals("'" + start + "1", Csv.safe(start + "1"));
        for (String plain : List.of("", "1", "a=1", "'=1")) assertEquals(plain, Csv.safe(plain));
    }
}

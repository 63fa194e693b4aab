package lapyard.prints;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import lapyard.exchange.XlsxWriter;
import lapyard.job.Gardens;
import lapyard.job.JobSheet;
import lapyard.order.Slip;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.FormulaEvaluator;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The workbook as Apache POI reads and reckons it, which did not write it. */
class GardenTablesTest {
    static {
        System.setProperty("log4j2.StatusLogger.level", "OFF"); // the reader's log has nobody to write to
    }

    private static byte[] workbook(JobSheet sheet) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        XlsxWriter.write(GardenTables.of(sheet), out);
        return out.toByteArray();
    }

    private static String text(Row row, int column) {
        Cell cell = row.getCell(column);
        return cell == null || cell.getCellType() != CellType.STRING ? "" : cell.getStringCellValue();
    }

    private static BigDecimal money(FormulaEvaluator reckon, Cell cell, int decimals) {
        return BigDecimal.valueOf(reckon.evaluate(cell).getNumberValue()).setScale(decimals, RoundingMode.HALF_UP);
    }

    @ParameterizedTest
    @MethodSource("lapyard.job.Gardens#samples")
    void formulasComeToTheSlipsOwnFigures(String sample) throws Exception {
        JobSheet sheet = Gardens.sample(sample);
        Slip slip = sheet.slip();
        int decimals = slip.currency().getDecimalPlaces();
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(workbook(sheet)))) {
            Sheet table = book.getSheet("Slip");
            FormulaEvaluator reckon = book.getCreationHelper().createFormulaEvaluator();
            int orders = 0;
            for (Row row : table) {
                if (!text(row, 1).equals("Sum of this order")) continue;
                Slip.Order order = slip.orders().stream().filter(one -> !one.lines().isEmpty()).toList().get(orders++);
                assertEquals(CellType.FORMULA, row.getCell(5).getCellType());
                assertEquals(order.total().setScale(decimals), money(reckon, row.getCell(5), decimals), order.supplier().name());
            }
            Row last = table.getRow(table.getLastRowNum());
            assertEquals(CellType.FORMULA, last.getCell(5).getCellType());
            assertEquals(slip.total().setScale(decimals), money(reckon, last.getCell(5), decimals));
            assertEquals(slip.orders().stream().filter(one -> !one.lines().isEmpty()).count(), orders);
        }
    }

    /** ISO 4217: the yen has no smaller unit, a pound 100 pence, a dinar of Kuwait 1000 fils; shown by POI's own formatter. */
    @ParameterizedTest
    @CsvSource({"JPY,'1,234'", "GBP,'1,234.00'", "KWD,'1,234.000'", "CLF,'1,234.0000'"})
    void amountsShowTheDecimalsOfTheirCurrency(String currency, String shown) throws Exception {
        JobSheet sheet = Gardens.sheet("{\"currency\":\"" + currency + "\",\"beds\":[{\"width\":2400,\"depth\":1200}],"
                + "\"catalogue\":{\"packs\":[{\"item\":\"finish\",\"packs\":[{\"name\":\"drum\",\"content\":1000,\"price\":1234}]}]}}");
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(workbook(sheet)))) {
            Row box = StreamSupport.stream(book.getSheet("Slip").spliterator(), false).filter(row -> text(row, 2).equals("drum")).findFirst().orElseThrow();
            assertEquals(shown, new DataFormatter(Locale.ROOT).formatCellValue(box.getCell(4)));
        }
    }

    @ParameterizedTest
    @MethodSource("lapyard.job.Gardens#samples")
    void everyCutAndBedStandsInItsTableWithItsFigures(String sample) throws Exception {
        JobSheet sheet = Gardens.sample(sample);
        double unit = sheet.garden().imperial() ? 25.4 : 1;
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(workbook(sheet)))) {
            FormulaEvaluator reckon = book.getCreationHelper().createFormulaEvaluator();
            Set<String> cuts = new HashSet<>();
            double length = 0;
            for (var section : Stream.concat(sheet.cutting().stream(), sheet.strips().stream()).toList())
                for (var board : section.saw().boards())
                    for (var cut : board.cuts()) {
                        cuts.add(section.section() + " " + board.number() + " " + cut.mark() + " " + Math.round(cut.lengthMm() * 10) + " " + Math.round(cut.fromMm() * 10));
                        length += cut.lengthMm();
                    }
            Set<String> found = new HashSet<>();
            Sheet table = book.getSheet("Cut list");
            for (int r = 2; r < table.getLastRowNum(); r++) {
                Row row = table.getRow(r);
                double mm = row.getCell(6).getNumericCellValue() * unit;
                double from = row.getCell(7).getNumericCellValue() * unit;
                found.add(text(row, 0) + " " + (int) row.getCell(1).getNumericCellValue() + " " + text(row, 5) + " " + Math.round(mm * 10) + " " + Math.round(from * 10));
            }
            if (unit == 1) assertEquals(cuts, found);
            else assertEquals(cuts.size(), found.size());
            assertEquals(length, reckon.evaluate(table.getRow(table.getLastRowNum()).getCell(6)).getNumberValue() * unit, 0.02 * cuts.size());
            Sheet register = book.getSheet("Bed register");
            assertEquals(sheet.beds().size(), register.getLastRowNum() - 2);
            assertEquals(sheet.beds().get(0).work().bed().heightMm(), register.getRow(2).getCell(8).getNumericCellValue() * unit, 0.02);
            double timber = sheet.beds().stream().flatMap(bed -> bed.quantities().stream())
                    .filter(quantity -> quantity.is(lapyard.working.QuantityKind.TIMBER_LENGTH)).mapToDouble(lapyard.working.Quantity::value).sum();
            assertEquals(timber, reckon.evaluate(register.getRow(register.getLastRowNum()).getCell(11)).getNumberValue() * (unit == 1 ? 1 : 0.3048), 1e-3);
        }
    }

    @Test
    void daysAreDatesAndTimesOfTheDayAndMinutesAddUp() throws Exception {
        JobSheet sheet = Gardens.sheet("{\"crew\":{\"start\":\"2027-04-03\"},\"beds\":[{\"width\":2400,\"depth\":1200,\"courses\":3}]}");
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(workbook(sheet)))) {
            Sheet table = book.getSheet("Weekends");
            Row first = table.getRow(2);
            assertTrue(DateUtil.isCellDateFormatted(first.getCell(2)));
            assertEquals(LocalDate.parse("2027-04-03"), first.getCell(2).getLocalDateTimeCellValue().toLocalDate());
            assertEquals(sheet.garden().people().crew().dates().from(), first.getCell(3).getLocalDateTimeCellValue().toLocalTime());
            int minutes = sheet.weekends().days().stream().flatMap(day -> day.parts().stream()).mapToInt(part -> part.toMinute() - part.fromMinute()).sum();
            assertEquals(minutes, book.getCreationHelper().createFormulaEvaluator().evaluate(table.getRow(table.getLastRowNum()).getCell(8)).getNumberValue());
            assertTrue(table.getFitToPage() && table.getPrintSetup().getLandscape() && table.getPrintSetup().getFitWidth() == 1);
        }
    }

    /** What people typed stays text, however it begins. */
    @Test
    void aNameThatLooksLikeAFormulaIsText() throws Exception {
        JobSheet sheet = Gardens.sheet("{\"beds\":[{\"name\":\"=HYPERLINK(\\\"x\\\")\",\"width\":2400,\"depth\":1200}]}");
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(workbook(sheet)))) {
            Cell cell = book.getSheet("Bed register").getRow(2).getCell(1);
            assertEquals(CellType.STRING, cell.getCellType());
            assertEquals("=HYPERLINK(\"x\")", cell.getStringCellValue());
        }
    }

    @Test
    void theSameGardenGivesTheSameBytes() throws Exception {
        String garden = Gardens.text("chapel-corner");
        byte[] once = workbook(Gardens.sheet(garden));
        Thread.sleep(2100); // a zip counts time in steps of two seconds
        assertArrayEquals(once, workbook(Gardens.sheet(garden)));
    }

    @Test
    void aGardenWithoutBedsHasAnEmptyBook() throws Exception {
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(workbook(Gardens.sheet("{\"beds\":[]}"))))) {
            assertEquals(4, book.getNumberOfSheets());
            assertEquals(0, book.getCreationHelper().createFormulaEvaluator().evaluate(book.getSheet("Slip").getRow(2).getCell(5)).getNumberValue());
        }
    }
}

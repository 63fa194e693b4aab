package lapyard.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;

/** What stands round the order and after it: merchants asked and compared, money by date, and the garden handed over. */
@ExtendWith(Open.class)
class HandOverIT {
    @TempDir
    private Path folder;

    private static final String GARDEN = """
            {"name":"Orchard wall","ground":{"outline":[[0,0],[9000,0],[9000,6000],[0,6000]]},
             "beds":[{"id":"A","width":2400,"depth":1200,"courses":2,"at":[1000,1000]}],"crew":{"start":"2027-04-03"},
             "tally":{"bought":[{"item":"timber 100x200","pack":"board of 2400","count":2}]},
             "catalogue":{"suppliers":[{"id":"mill","name":"Hill Mill","delivery":35,"deposit":30},{"id":"yard","name":"Canal Yard","delivery":20}],
              "sections":[{"id":"100x200","thickness":100,"height":200,"stock":[{"length":2400,"price":17,"supplier":"mill"},{"length":2400,"price":21,"supplier":"yard"}]}]}}""";

    @Test
    void merchantsStandSideBySideAndAnAnswerComesBackAsAWorkbook(Page page) throws Exception {
        String id = page.open(GARDEN);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "catalogue");
        browser.click("[data-key=\"offers show\"]");
        browser.until("merchants are not shown", "return Boolean(document.querySelector('[data-key=\"offer timber 100x200\"]'))");
        JsonNode offers = page.server().get("api/gardens/" + id + "/job-sheet/offers");
        String row = browser.text("[data-key=\"offer timber 100x200\"]");
        assertTrue(row.contains("£" + offers.at("/lines").findParents("item").stream().filter(line -> line.path("item").asText().equals("timber 100x200")).findFirst().orElseThrow().at("/costs/mill").asText()), row);
        assertTrue(browser.text("[data-key=\"offer total\"]").contains("£" + offers.path("total").asText()));
        // the request as a merchant would send it back: POI fills in one price
        Path answer = folder.resolve("answer.xlsx");
        var request = java.net.http.HttpClient.newHttpClient().send(
                java.net.http.HttpRequest.newBuilder(page.server().address.resolve("api/gardens/" + id + "/tables/price-request.xlsx")).build(), java.net.http.HttpResponse.BodyHandlers.ofByteArray());
        try (var book = new org.apache.poi.xssf.usermodel.XSSFWorkbook(new java.io.ByteArrayInputStream(request.body()))) {
            var sheet = book.getSheetAt(0);
            int price = sheet.getRow(1).getLastCellNum() - 1;
            sheet.getRow(2).getCell(price, org.apache.poi.ss.usermodel.Row.MissingCellPolicy.CREATE_NULL_AS_BLANK).setCellValue(12.5);
            try (var out = Files.newOutputStream(answer)) { book.write(out); }
        }
        browser.driver.findElement(By.cssSelector("[data-key=\"list file\"]")).sendKeys(answer.toString());
        browser.until("the workbook is not read", "return document.querySelector('[data-key=\"list preview\"]')?.textContent.includes('price 12.5')");
        page.hasNoComplaints();
    }

    @Test
    void moneyStandsByDateWhereTheOrderStands(Page page) throws Exception {
        String id = page.open(GARDEN);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "slip");
        browser.click("[data-key=\"money\"]");
        browser.until("no payments are shown", "return Boolean(document.querySelector('order-money dl div'))");
        JsonNode payments = page.server().get("api/gardens/" + id + "/job-sheet/payments");
        assertEquals(0, new BigDecimal(payments.path("total").asText()).compareTo(new BigDecimal(page.server().get("api/gardens/" + id + "/job-sheet/slip").path("total").asText())));
        assertTrue(browser.text("order-money dl").contains("deposit with the order"));
        browser.enter("[data-key=\"paid field timber 100x200\"]", "40.50");
        assertEquals("40.5", page.stored(id).at("/tally/bought/0/paid").asText());
        page.hasNoComplaints();
    }

    @Test
    void aSnagIsFoundPhotographedAndMended(Page page) throws Exception {
        String id = page.open(GARDEN);
        Browser browser = page.browser();
        PlacesIT.opens(browser, "hand-over");
        browser.enter("[data-key=\"finish years\"]", "3");
        assertEquals(3, page.stored(id).at("/handOver/finishYears").asInt());
        browser.driver.findElement(By.cssSelector("[data-key=\"snag text\"]")).sendKeys("Rim splinters at corner 2");
        browser.click("[data-key=\"snag add\"]");
        browser.until("the snag is not on the list", "return Boolean(document.querySelector('[data-key=\"snag 0\"]'))");
        Path photo = folder.resolve("rim.png");
        BufferedImage image = new BufferedImage(1600, 900, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < 1600; x++) for (int y = 0; y < 900; y++) image.setRGB(x, y, new Color(x * 255 / 1600, y * 255 / 900, 120).getRGB());
        ImageIO.write(image, "png", photo.toFile());
        browser.driver.findElement(By.cssSelector("[data-key=\"snag 0 photo\"]")).sendKeys(photo.toString());
        browser.until("the photo is not shown", "const shown = document.querySelector('snag-list img'); return shown?.complete && shown.naturalWidth === 1280");
        String kept = page.stored(id).at("/handOver/snags/0/photos/0").asText();
        assertEquals(kept, page.server().get("api/gardens/" + id + "/photos").at("/photos/0/id").asText());
        browser.click("[data-key=\"snag 0 mended\"]");
        assertTrue(page.stored(id).at("/handOver/snags/0/mended").asText().matches("[0-9]{4}-[0-9]{2}-[0-9]{2}"));
        browser.click("[data-key=\"gardens\"]");
        browser.click("[data-key=\"copy\"]");
        browser.click("[data-key=\"copy done\"]");
        browser.until("no copy is open", "const now = location.hash.slice(1); return now && now !== arguments[0] && document.querySelector('lap-yard')?.garden?.keeper.standing === 'kept'", id);
        String copy = (String) browser.js("return location.hash.slice(1)");
        assertEquals(kept, page.server().get("api/gardens/" + copy + "/photos").at("/photos/0/id").asText(), "the copy has the photo, too");
        page.hasNoComplaints();
    }
}

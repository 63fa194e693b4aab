package lapyard.rest;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.Random;
import java.util.zip.CRC32;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import lapyard.answers.GardenDesk;
import lapyard.drawing.Photo;
import lapyard.plan.Told;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Photos are kept with the garden as pictures alone; the JDK's own readers tell whether they are still those pictures. */
class PhotosHttpTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    private Path folder;

    private static BufferedImage drawn(int wide, int high) {
        BufferedImage image = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < wide; x++) for (int y = 0; y < high; y++) image.setRGB(x, y, new Color(x * 255 / wide, y * 255 / high, (x ^ y) & 255).getRGB());
        return image;
    }

    private static byte[] written(String format, boolean progressive) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        var writer = ImageIO.getImageWritersByFormatName(format).next();
        ImageWriteParam param = writer.getDefaultWriteParam();
        if (progressive) param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
        try (var to = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(to);
            writer.write(null, new IIOImage(drawn(120, 80), null, null), param);
        }
        return out.toByteArray();
    }

    /** As a phone writes it: Exif with a place and which way is up (CIPA DC-008, 4.6), another maker's notes, a comment, and bytes after the end. */
    private static byte[] fromPhone(byte[] jpeg, int up) {
        ByteBuffer tiff = ByteBuffer.allocate(200);
        tiff.put("Exif\0\0MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8).putShort((short) 2);
        tiff.putShort((short) 0x0112).putShort((short) 3).putInt(1).putShort((short) up).putShort((short) 0);
        tiff.putShort((short) 0x8825).putShort((short) 4).putInt(1).putInt(38).putInt(0).put("N51.4779 GPSLatitude".getBytes(StandardCharsets.US_ASCII));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(Arrays.copyOf(jpeg, 2));
        segment(out, 0xE1, tiff.array());
        segment(out, 0xED, "Photoshop 3.0 owner".getBytes(StandardCharsets.US_ASCII));
        segment(out, 0xFE, "taken at home".getBytes(StandardCharsets.US_ASCII));
        out.writeBytes(Arrays.copyOfRange(jpeg, 2, jpeg.length));
        out.writeBytes("N51.4779 thumbnail".getBytes(StandardCharsets.US_ASCII));
        return out.toByteArray();
    }

    private static void segment(ByteArrayOutputStream out, int marker, byte[] content) {
        out.write(0xFF);
        out.write(marker);
        out.write(content.length + 2 >> 8);
        out.write(content.length + 2);
        out.writeBytes(content);
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }

    private static int[] pixels(byte[] picture) throws Exception {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(picture));
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void placeTimeAndMakerAreTakenOutOfAJpegAndThePictureStays(boolean progressive) throws Exception {
        byte[] plain = written("jpeg", progressive);
        byte[] phone = fromPhone(plain, 6);
        Photo photo = Photo.of(phone);
        for (String secret : new String[] {"GPS", "N51", "Photoshop", "taken at home", "thumbnail"}) {
            assertTrue(text(phone).contains(secret));
            assertFalse(text(photo.bytes()).contains(secret), secret);
        }
        assertArrayEquals(pixels(plain), pixels(photo.bytes()));
        assertEquals(120, photo.widthPx());
        assertEquals(80, photo.heightPx());
        assertTrue(text(photo.bytes()).contains("Exif\0\0MM\0*\0\0\0\10\0\1\1\22\0\3\0\0\0\1\0\6"), "which way is up stays, and it alone");
        assertFalse(text(Photo.of(fromPhone(plain, 1)).bytes()).contains("Exif"));
        assertArrayEquals(photo.bytes(), Photo.of(photo.bytes()).bytes(), "what is kept is kept as it is");
    }

    @Test
    void textsAndPlaceAreTakenOutOfAPngAndThePictureStays() throws Exception {
        byte[] plain = written("png", false);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(Arrays.copyOf(plain, 33)); // signature and IHDR
        for (String chunk : new String[] {"eXIfMM GPS N51.4779", "tEXtAuthor\0somebody", "iTXtx", "tIME1234567"}) {
            byte[] bytes = chunk.getBytes(StandardCharsets.US_ASCII);
            CRC32 crc = new CRC32();
            crc.update(bytes);
            out.writeBytes(ByteBuffer.allocate(4).putInt(bytes.length - 4).array());
            out.writeBytes(bytes);
            out.writeBytes(ByteBuffer.allocate(4).putInt((int) crc.getValue()).array());
        }
        out.writeBytes(Arrays.copyOfRange(plain, 33, plain.length));
        out.writeBytes("after the end".getBytes(StandardCharsets.US_ASCII));
        Photo photo = Photo.of(out.toByteArray());
        assertEquals("image/png", photo.type());
        for (String secret : new String[] {"GPS", "Author", "iTXt", "tIME", "after"}) assertFalse(text(photo.bytes()).contains(secret), secret);
        assertArrayEquals(pixels(plain), pixels(photo.bytes()));
    }

    /** Whatever bytes come, they are a photo or a sentence, and never an error of the program. */
    @Test
    void damagedPhotosAreRefusedInWords() throws Exception {
        Random random = new Random(4);
        for (byte[] good : new byte[][] {fromPhone(written("jpeg", true), 3), written("png", false)}) {
            for (int i = 0; i < 400; i++) {
                byte[] bad = i % 2 == 0 ? Arrays.copyOf(good, random.nextInt(good.length - 30)) : good.clone();
                for (int k = 0; k < i % 5 && bad.length > 0; k++) bad[random.nextInt(bad.length)] = (byte) random.nextInt(256);
                try {
                    Photo.of(bad);
                    assertTrue(i % 2 == 1 || i % 5 > 0, "a cut photo was kept");
                } catch (IllegalArgumentException told) {
                    assertTrue(Told.refusal(told).startsWith("photo: The photo"), Told.refusal(told));
                }
            }
        }
        assertTrue(Told.refusal(assertThrows(IllegalArgumentException.class, () -> Photo.of(new byte[Photo.MOST_BYTES + 1]))).contains("at most"));
    }

    /** The sheet follows the photos that are kept, not the revision alone. */
    @Test
    void theSnagListShowsAPhotoForAsLongAsItIsKept() throws Exception {
        try (Served served = new Served(folder, Keys.NONE, PhotosHttpTest.class.getClassLoader(), new GardenDesk())) {
            String sent = Base64.getEncoder().encodeToString(fromPhone(written("jpeg", false), 6));
            String garden = served.created("{\"name\":\"Orchard wall\",\"beds\":[{\"id\":\"A\",\"width\":2400,\"depth\":1200}],\"handOver\":{\"snags\":[{\"text\":\"Rim splinters\",\"photos\":[\""
                    + lapyard.answers.Answer.hash(Photo.of(Base64.getDecoder().decode(sent)).bytes()) + "\"]}]}}");
            assertFalse(served.get(garden + "/snag-list.svg").body().contains("<image"), "not there yet");
            String photo = MAPPER.readTree(served.post(garden + "/photos", "{\"photo\":\"" + sent + "\"}").body()).get("id").asText();
            for (String sheets : new String[] {"snag-list", "hand-over"}) {
                byte[] pdf = java.net.http.HttpClient.newHttpClient().send(served.to(garden + "/" + sheets + ".pdf").build(),
                        java.net.http.HttpResponse.BodyHandlers.ofByteArray()).body();
                try (var read = org.apache.pdfbox.Loader.loadPDF(pdf)) {
                    var resources = read.getPage(0).getResources();
                    var names = new java.util.ArrayList<org.apache.pdfbox.cos.COSName>();
                    resources.getXObjectNames().forEach(names::add);
                    assertEquals(1, names.size(), sheets);
                    var image = (org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject) resources.getXObject(names.get(0));
                    assertEquals(80 + " by " + 120, image.getWidth() + " by " + image.getHeight(), "turned as it was held");
                }
            }
            assertTrue(served.get(garden + "/snag-list.svg").body().contains("<image"));
            assertTrue(served.get(garden + "/snag-list.svg?revision=1").body().contains("<image"));
            served.delete(garden + "/photos/" + photo);
            assertFalse(served.get(garden + "/snag-list.svg").body().contains("<image"), "not any more");
        }
    }

    @Test
    void aPhotoIsKeptWithTheGardenItsCopyAndItsFile() throws Exception {
        try (Served served = new Served(folder, Keys.NONE, PhotosHttpTest.class.getClassLoader(), new GardenDesk())) {
            String garden = served.created("{\"name\":\"G\"}");
            String sent = Base64.getEncoder().encodeToString(fromPhone(written("jpeg", false), 1));
            var added = served.post(garden + "/photos", "{\"photo\":\"" + sent + "\"}");
            assertEquals(201, added.statusCode(), added.body());
            String photo = MAPPER.readTree(added.body()).get("id").asText();
            assertEquals(201, served.post(garden + "/photos", "{\"photo\":\"" + sent + "\"}").statusCode());
            JsonNode list = MAPPER.readTree(served.get(garden + "/photos").body());
            assertEquals(1, list.get("photos").size(), "the same photo is kept once");
            var got = served.get(garden + "/photos/" + photo);
            assertEquals("image/jpeg", got.headers().firstValue("content-type").orElse(""));
            String file = served.get(garden + "/file").body();
            assertEquals(1, MAPPER.readTree(file).get("photos").size());
            for (var made : java.util.List.of(served.post("/api/gardens/file", file), served.post(garden + "/copy?done=true", ""))) {
                String other = MAPPER.readTree(made.body()).get("id").asText();
                assertEquals(200, served.get("/api/gardens/" + other + "/photos/" + photo).statusCode(), made.body());
            }
            assertEquals(422, served.post(garden + "/photos", "{\"photo\":\"" + Base64.getEncoder().encodeToString("GIF89a".getBytes(StandardCharsets.US_ASCII)) + "\"}").statusCode());
            assertEquals(400, served.post(garden + "/photos", "{\"photo\":\"?\"}").statusCode());
        }
    }
}

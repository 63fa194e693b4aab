package lapyard.diagrams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lapyard.diagrams.BenchTable.Column;
import lapyard.drawing.Page;
import lapyard.drawing.PaperPhoto;
import lapyard.drawing.Photo;

/** What goes with a garden to whoever tends it: as built, care, and what is still to be mended. */
public final class HandOverSheets {
    private static final String CAUTION =
            "What is hidden in a bed stands only here: look before you dig, drill or cut. Keep these sheets with the garden.";
    private static final String CARE_CAUTION =
            "Read the tin before you coat: gloves, eyes, no food plants below. Do not sand or burn timber whose treatment you do not know.";

    private HandOverSheets() {}

    /** Rows as they shall be read. */
    public record AsBuilt(List<String> words, List<List<String>> beds, List<List<String>> timber, Optional<Money> money) {}

    /** @param bought see {@link MoneySheets#bought} */
    public record Money(String currency, String total, List<List<String>> bought) {}

    public static List<Page> asBuilt(String garden, boolean imperial, AsBuilt built, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CAUTION, imperial, options);
        Flow flow = new Flow(sheet, "As built", "what was really done, against what was planned");
        flow.words(built.words(), 3.6, false);
        table(flow, new BenchTable(sheet, "Beds", new Column("bed", 0.1, true), new Column("size", 0.26, false), new Column("walls", 0.24, false), new Column("tasks done", 0.12, false),
                new Column("last on", 0.12, false), new Column("tended by", 0.16, false)), built.beds());
        table(flow, new BenchTable(sheet, "Timber", new Column("section", 0.16, true), new Column("pieces planned", 0.14, false), new Column("cut", 0.14, true), new Column("spoiled", 0.14, false),
                new Column("boards planned", 0.14, false), new Column("opened", 0.14, true), new Column("lost", 0.14, false)), built.timber());
        built.money().ifPresent(money -> {
            flow.section("As built: money", money.total(), 0.7);
            MoneySheets.bought(sheet, flow, money.currency(), money.bought());
        });
        return sheet.pages(flow.drafts());
    }

    /** @param tasks what, where, first time, how often, why, whose figure */
    public static List<Page> care(String garden, boolean imperial, List<String> words, List<List<String>> tasks, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CARE_CAUTION, imperial, options);
        Flow flow = new Flow(sheet, "Care", "what the beds ask for once they stand");
        flow.words(words, 3.6, true);
        table(flow, new BenchTable(sheet, "What to do", new Column("what", 0.3, true), new Column("where", 0.16, false), new Column("first", 0.12, true), new Column("then", 0.12, false),
                new Column("why", 0.18, false), new Column("whose figure", 0.12, false)), tasks);
        return sheet.pages(flow.drafts());
    }

    /**
     * One thing to mend.
     *
     * @param cells  box, where, what, found, mended
     * @param count  of its photos
     * @param photos those of them that can be shown, see {@link #photo}
     */
    public record Snag(List<String> cells, int count, List<Photo> photos) {}

    /** A photo as the snag list shows it; empty where it cannot be read. */
    public static Optional<Photo> photo(byte[] kept) {
        return PaperPhoto.of(kept, BenchTable.PHOTO_WIDE, BenchTable.PHOTO_HIGH);
    }

    public static List<Page> snags(String garden, boolean imperial, List<Snag> snags, BenchOptions options) {
        BenchSheet sheet = new BenchSheet(garden, CAUTION, imperial, options);
        Flow flow = new Flow(sheet, "Snag list", "what was found on the walk round");
        BenchTable table = new BenchTable(sheet, "To mend", new Column("", 0.06, false), new Column("where", 0.12, true), new Column("what", 0.44, true), new Column("found", 0.12, false),
                new Column("mended", 0.12, false), new Column("photos", 0.14, false));
        for (Snag snag : snags) {
            List<BenchTable.Seen> seen = snag.photos().stream().map(photo -> new BenchTable.Seen(photo, "photo of: " + snag.cells().get(2))).toList();
            List<String> cells = new ArrayList<>(snag.cells());
            int all = snag.count();
            cells.add(all == 0 ? "" : seen.size() == all ? "" + all : seen.size() + " of " + all + " shown");
            table.row(cells, seen);
        }
        if (!table.isEmpty()) table.on(flow);
        return sheet.pages(flow.drafts());
    }

    private static void table(Flow flow, BenchTable table, List<List<String>> rows) {
        rows.forEach(row -> table.row(row.toArray(String[]::new)));
        if (!table.isEmpty()) table.on(flow);
    }
}

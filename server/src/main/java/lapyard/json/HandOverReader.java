package lapyard.json;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.HandOver;
import lapyard.plan.WayKind;

/** Reads {@code handOver}: who tends what, how long the finish lasts, and what is to be mended. */
final class HandOverReader {
    private HandOverReader() {}

    static HandOver read(Cursor handOver, List<Bed> beds) {
        Set<String> known = beds.stream().map(Bed::id).collect(Collectors.toSet());
        OptionalInt years = handOver.has("finishYears") ? OptionalInt.of(handOver.count("finishYears")) : OptionalInt.empty();
        Map<String, String> tenders = new LinkedHashMap<>();
        handOver.each("tenders", "tender", one -> {
            String bed = bed(one, known);
            if (tenders.put(bed, one.text("who")) != null) one.twice("bed", "bed", Fact.name(bed), WayKind.KEEP_ONE);
            return bed;
        });
        List<HandOver.Snag> snags = handOver.each("snags", "snag", one -> {
            List<String> photos = one.words("photos", photo -> photo.matches("[0-9a-f]{64}"),
                    other -> one.misshapen("photos", "ids of photos kept with the garden", other, "64 letters and digits, as the garden's photos answer"));
            return new HandOver.Snag(bed(one, known), one.text("text"), CrewReader.date(one, "found"), CrewReader.date(one, "mended"), photos);
        });
        return new HandOver(years, tenders, snags);
    }

    private static String bed(Cursor one, Set<String> known) {
        String bed = one.text("bed");
        if (bed.isEmpty() || known.contains(bed)) return bed;
        one.add(one.noSuch("bed", "bed", bed, known));
        return "";
    }
}

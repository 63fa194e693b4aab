package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashSet;
import java.util.Set;
import lapyard.catalogue.Section;
import lapyard.geometry.Lengths;
import lapyard.plan.Bed;
import lapyard.plan.Finding.Amount;
import lapyard.plan.Liner;
import lapyard.plan.Ties;

/** Brackets and ties of a bed, what stands near it, and whether its fixings are short enough for its timber. */
final class FixingReader {
    private FixingReader() {}

    static Ties ties(Cursor bed, Ties usual) {
        Cursor cursor = bed.object("ties");
        Ties read = new Ties(
                cursor.flag("brackets", usual.brackets()),
                cursor.count("bracketFixings", usual.bracketFixings(), 2, 20),
                cursor.flag("courseTies", usual.courseTies()),
                cursor.length("courseEvery", usual.courseEveryMm(), 100, 3_000),
                cursor.count("courseFixings", usual.courseFixings(), 2, 20),
                cursor.length("fixingLength", usual.fixingMm(), 15, 300),
                cursor.flag("crossTies", usual.crossTies()),
                cursor.length("crossEvery", usual.crossEveryMm(), 300, 5_000),
                cursor.length("crossFrom", usual.crossFromMm(), 0, 3_000));
        cursor.refuseUnknown();
        return read;
    }

    static Set<String> near(Cursor bed) {
        Set<String> near = new LinkedHashSet<>();
        for (JsonNode word : bed.list("near", Bed.NEAR.size())) {
            if (Bed.NEAR.containsKey(word.asText())) {
                near.add(word.asText());
            } else {
                bed.stop("near", Cursor.shown(word) + " is no word for it", "use " + String.join(", ", Bed.NEAR.keySet()));
            }
        }
        return near;
    }

    /** A fixing that comes out of the other face of the timber can never be meant. */
    static void tooLong(Cursor bed, Section timber, Ties ties, Liner liner) {
        if (ties.brackets() || ties.courseTies()) {
            check(bed, "ties/fixingLength", "fixings", ties.fixingMm(), timber, Ties.BEHIND_MM);
        }
        if (liner.wanted() && liner.stapleMm() != Liner.USUAL.stapleMm()) {
            check(bed, "liner/stapleLength", "staples", liner.stapleMm(), timber, Liner.BEHIND_MM);
        }
    }

    private static void check(
            Cursor bed, String field, String what, double lengthMm, Section timber, double behindMm) {
        double most = timber.thicknessMm() - behindMm;
        if (lengthMm > most + 1e-6) {
            bed.stopBy(
                    field,
                    Lengths.text(lengthMm) + " long " + what + " leave less than " + Lengths.text(behindMm)
                            + " of timber " + Lengths.text(timber.thicknessMm()) + " thick",
                    new Amount(Lengths.toTenth(lengthMm - most), "mm"),
                    "use " + what + " of " + Lengths.text(most) + " or shorter");
        }
    }
}

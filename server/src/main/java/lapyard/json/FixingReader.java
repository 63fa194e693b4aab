package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.FindingKind;
import lapyard.plan.Liner;
import lapyard.plan.Ties;
import lapyard.plan.Ties.CourseTie;
import lapyard.plan.Ties.Support;
import lapyard.plan.WayKind;

/** Brackets and ties of a bed, what stands near it, and whether its fixings are short enough for its timber. */
final class FixingReader {

    private FixingReader() {}

    static Ties ties(Cursor bed, Ties usual, Optional<Outline> outline) {
        Cursor cursor = bed.object("ties");
        Ties read = new Ties(
                cursor.flag("brackets", usual.brackets()),
                cursor.count("bracketFixings", usual.bracketFixings()),
                cursor.flag("courseTies", usual.courseTies()),
                cursor.number("courseEvery", usual.courseEveryMm()),
                CourseTie.valueOf(cursor.choice("courseTie", word(usual.courseTie()))
                        .replace('-', '_').toUpperCase(Locale.ROOT)),
                cursor.count("courseFixings", usual.courseFixings()),
                cursor.number("fixingLength", usual.fixingMm()),
                cursor.flag("crossTies", usual.crossTies()),
                cursor.number("crossEvery", usual.crossEveryMm()),
                cursor.number("crossOver", usual.crossOverMm()),
                cursor.number("crossFrom", usual.crossFromMm()),
                cursor.has("supports") ? supports(cursor, outline) : usual.supports());
        cursor.refuseUnknown();
        return read;
    }

    private static String word(CourseTie tie) {
        return tie.name().replace('_', '-').toLowerCase(Locale.ROOT);
    }

    /** @param outline empty where the outline is not known or the walls are those of many beds: then no wall is refused */
    private static List<Support> supports(Cursor ties, Optional<Outline> outline) {
        List<Support> supports = new ArrayList<>();
        for (Cursor support : ties.objects("supports", "support")) {
            String wall = support.text("wall");
            boolean post = support.choice("by").equals("post");
            OptionalDouble at = support.has("at")
                    ? OptionalDouble.of(support.number("at", 0))
                    : OptionalDouble.empty();
            support.refuseUnknown();
            if (outline.isPresent()) {
                List<String> walls = IntStream.range(0, outline.get().sides()).mapToObj(Bed::wallLetter).toList();
                int side = walls.indexOf(wall);
                if (side < 0) {
                    support.add(support.noSuch("wall", "wall", wall, walls));
                    continue;
                }
                double over = at.orElse(0) - outline.get().sideMm(side);
                if (over > 0) {
                    Fact end = Fact.mm(outline.get().sideMm(side));
                    support.add(support.fault(FindingKind.FIELD_HIGH, "at").with("value", Fact.mm(at.getAsDouble())).with("most", end)
                            .by(Fact.mm(over)).way(WayKind.GIVE_BETWEEN, Fact.mm(0), end));
                    continue;
                }
            }
            supports.add(new Support(wall, at, post));
        }
        return supports;
    }

    static Set<String> near(Cursor bed) {
        Set<String> near = new LinkedHashSet<>();
        for (JsonNode word : bed.list("near")) {
            if (Bed.NEAR.containsKey(word.asText())) {
                near.add(word.asText());
            } else {
                bed.add(bed.noSuch("near", "neighbour", word.asText(), Bed.NEAR.keySet()));
            }
        }
        return near;
    }

    /** A fixing that comes out of the other face of the timber can never be meant. */
    static void tooLong(Cursor bed, Section timber, Ties ties, Liner liner) {
        if (ties.brackets() || ties.courseTies() && ties.strapped(timber.heightMm())) {
            check(bed, "ties/fixingLength", "fixings", ties.fixingMm(), timber, Ties.BEHIND_MM);
        }
        if (liner.wanted() && liner.stapleMm() != Liner.USUAL.stapleMm()) {
            check(bed, "liner/stapleLength", "staples", liner.stapleMm(), timber, Liner.BEHIND_MM);
        }
    }

    private static void check(Cursor bed, String field, String what, double lengthMm, Section timber, double behindMm) {
        double most = timber.thicknessMm() - behindMm;
        if (lengthMm > most + 1e-6) {
            bed.add(bed.fault(FindingKind.FIXING_LONG, field).with("what", Fact.name(what)).with("length", Fact.mm(lengthMm))
                    .with("behind", Fact.mm(behindMm)).with("thick", Fact.mm(timber.thicknessMm())).by(Fact.mm(lengthMm - most))
                    .way(WayKind.FIXINGS_AT_MOST, Fact.name(what), Fact.mm(most)));
        }
    }
}

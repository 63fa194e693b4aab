package lapyard.json;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lapyard.catalogue.Section;
import lapyard.geometry.Outline;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Liner;
import lapyard.plan.Ties;
import lapyard.plan.Ties.Support;
import lapyard.plan.WayKind;

/** Brackets and ties of a bed, what stands near it, and whether its fixings are short enough for its timber. */
final class FixingReader {

    private FixingReader() {}

    static Ties ties(Cursor bed, Ties usual, Optional<Outline> outline) {
        return bed.read("ties", cursor -> {
            Ties read = cursor.like(usual);
            return cursor.has("supports") ? read.withSupports(
                    cursor.each("supports", "support", support -> support(support, outline)).stream().flatMap(Optional::stream).toList()) : read;
        });
    }

    /** @param outline empty where the outline is not known or the walls are those of many beds: then no wall is refused */
    private static Optional<Support> support(Cursor support, Optional<Outline> outline) {
        String wall = support.text("wall");
        boolean post = support.choice("by").equals("post");
        OptionalDouble at = support.has("at") ? OptionalDouble.of(support.number("at", 0)) : OptionalDouble.empty();
        if (outline.isPresent()) {
            List<String> walls = Bed.wallLetters(outline.get());
            int side = walls.indexOf(wall);
            if (side < 0) {
                support.add(support.noSuch("wall", "wall", wall, walls));
                return Optional.empty();
            }
            double over = at.orElse(0) - outline.get().sideMm(side);
            if (over > 0) {
                Fact end = Fact.mm(outline.get().sideMm(side));
                support.add(support.fault(FindingKind.FIELD_HIGH, "at").with("value", Fact.mm(at.getAsDouble())).with("most", end)
                        .by(Fact.mm(over)).way(WayKind.GIVE_BETWEEN, Fact.mm(0), end));
                return Optional.empty();
            }
        }
        return Optional.of(new Support(wall, at, post));
    }

    static Set<String> near(Cursor bed) {
        return new LinkedHashSet<>(bed.words("near", Bed.NEAR::containsKey,
                other -> bed.add(bed.noSuch("near", "neighbour", other.asText(), Bed.NEAR.keySet()))));
    }

    /** A fixing that comes out of the other face of the timber can never be meant. */
    static void tooLong(Cursor bed, Section timber, Ties ties, Liner liner) {
        if (ties.corners().brackets() || ties.courses().courseTies() && ties.strapped(timber.heightMm())) {
            check(bed, "ties/fixingLength", "fixings", ties.fixingLengthMm(), timber, Ties.BEHIND_MM, Ties.LEAST_FIXING_MM);
        }
        if (liner.wanted() && liner.staples().stapleLengthMm() != Liner.USUAL.staples().stapleLengthMm()) {
            check(bed, "liner/stapleLength", "staples", liner.staples().stapleLengthMm(), timber, Liner.BEHIND_MM, 0);
        }
    }

    private static void check(Cursor bed, String field, String what, double lengthMm, Section timber, double behindMm, double leastMm) {
        double most = timber.thicknessMm() - behindMm;
        if (lengthMm > most + 1e-6) {
            Finding fault = bed.fault(FindingKind.FIXING_LONG, field).with("what", Fact.name(what)).with("length", Fact.mm(lengthMm))
                    .with("behind", Fact.mm(behindMm)).with("thick", Fact.mm(timber.thicknessMm())).by(Fact.mm(lengthMm - most));
            bed.add(most < leastMm ? fault.way(WayKind.TIMBER_THICK, Fact.mm(leastMm + behindMm)) : fault.way(WayKind.FIXINGS_AT_MOST, Fact.name(what), Fact.mm(most)));
        }
    }
}

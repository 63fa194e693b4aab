package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Section;
import lapyard.construction.Construction;
import lapyard.geometry.Lengths;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.plan.Base;
import lapyard.plan.Bed;
import lapyard.plan.Fact;
import lapyard.plan.Fill;
import lapyard.plan.FindingKind;
import lapyard.plan.Finish;
import lapyard.plan.Joint;
import lapyard.plan.Lap;
import lapyard.plan.Liner;
import lapyard.plan.Notches;
import lapyard.plan.Screws;
import lapyard.plan.Seal;
import lapyard.plan.Ties;
import lapyard.plan.WayKind;

/** One bed, or the bed that a type describes; what the bed does not say comes from the garden's defaults. */
record BedReader(Catalogue catalogue, Manner usual) {
    /** In place of a figure that follows from the bed's timber. */
    private static final double BY_TIMBER = 0;

    /** How a bed is built, as far as a garden may say it once for all its beds. */
    record Manner(int courses, String section, Lap lap, Screws screws, Notches notches, Base base, Liner liner,
            Fill fill, Finish finish, Ties ties, Seal seal) {
        static final Manner OURS = new Manner(3, "100x200", Lap.TURNING,
                new Screws(BY_TIMBER, Screws.USUAL.perJoint(), Screws.USUAL.diameterMm()),
                new Notches(Notches.USUAL.widthMm(), BY_TIMBER, Notches.USUAL.maxGapMm(), Notches.USUAL.fromCornersMm()),
                Base.USUAL, Liner.USUAL, Fill.USUAL,
                new Finish(true, Finish.USUAL.coats(), BY_TIMBER, Finish.USUAL.rough()), Ties.USUAL.withFixings(BY_TIMBER), Seal.NONE);

        /** What a bed or the garden's defaults say, and this where they say nothing; without an outline no wall is refused. */
        Manner changed(Cursor cursor, Optional<Outline> outline) {
            return new Manner(
                    cursor.count("courses", courses), cursor.text("section", section), cursor.choice("lap", lap), cursor.like("screws", screws),
                    cursor.like("notches", notches), BedReader.base(cursor, base), cursor.like("liner", liner), cursor.read("fill", filled -> BedReader.fill(filled, fill)),
                    cursor.like("finish", finish), FixingReader.ties(cursor, ties, outline),
                    // whoever writes more than true or false has chosen a seal
                    cursor.like("seal", new Seal(cursor.has("seal") || seal.wanted(), seal.item(), seal.coats(), seal.coverM2PerLitre())));
        }
    }

    /** Empty where a STOP was noted. */
    Optional<Bed> read(Cursor cursor, String id, String type) {
        int before = cursor.notes.findings.size();
        String name = cursor.text("name");
        Optional<Outline> outline = OutlineReader.read(cursor);
        Manner own = usual.changed(cursor, outline);
        Optional<Section> section = section(cursor, own.section());
        Set<String> seen = walls(cursor, "seen", outline);
        boolean seenGiven = cursor.has("seen");
        Set<String> low = walls(cursor, "low", outline);
        Map<Integer, Joint> joints = joints(cursor, outline);
        boolean seams = cursor.flag("seams");
        Set<String> near = FixingReader.near(cursor);
        boolean food = cursor.flag("food");
        int stage = cursor.count("stage");
        Placement placement = placement(cursor);
        cursor.raw("give");
        cursor.refuseUnknown();
        section.ifPresent(timber -> FixingReader.tooLong(cursor, timber, of(timber, own.ties()), own.liner()));
        if (outline.isEmpty() || section.isEmpty() || cursor.notes.findings.size() > before) return Optional.empty();
        Set<String> hidden = seenGiven ? new LinkedHashSet<>(Bed.wallLetters(outline.get())) : Set.of();
        if (seenGiven) hidden.removeAll(seen);
        Section timber = section.get();
        Bed bed = new Bed(
                id,
                name,
                type,
                stage,
                new Bed.Siting(outline.get(), placement, near),
                new Bed.Walls(own.courses(), timber, own.lap(), joints, hidden, low, seams),
                new Bed.Making(own.screws(), of(timber, own.notches()), of(timber, own.ties()), of(timber, own.finish()), own.seal()),
                new Bed.Inside(own.base(), own.liner()),
                new Bed.Planting(own.fill(), food));
        Screws screws = own.screws();
        return Optional.of(screws.lengthMm() != BY_TIMBER ? bed : bed.withMaking(bed.making().withScrews(
                new Screws(Construction.usualScrewMm(bed), screws.perJoint(), screws.diameterMm()))));
    }

    private static Notches of(Section timber, Notches given) {
        return given.depthMm() != BY_TIMBER ? given
                : new Notches(given.widthMm(), Notches.usualDepthMm(timber.heightMm()), given.maxGapMm(), given.fromCornersMm());
    }

    private static Ties of(Section timber, Ties given) {
        return given.fixingLengthMm() != BY_TIMBER ? given : given.withFixings(Ties.usualFixingMm(timber.thicknessMm()));
    }

    private static Finish of(Section timber, Finish given) {
        return given.coverM2PerLitre() != BY_TIMBER ? given : new Finish(given.wanted(), given.coats(), Finish.usualCoverM2(timber.planed()), given.rough());
    }

    static Placement placement(Cursor cursor) {
        return new Placement(cursor.point("at"), cursor.number("turn", 0), cursor.flag("mirror"));
    }

    private Optional<Section> section(Cursor cursor, String id) {
        Optional<Section> found = catalogue.section(id);
        if (found.isEmpty()) {
            cursor.add(cursor.noSuch("section", "section", id, catalogue.sections().stream().map(Section::id).toList())
                    .way(WayKind.ADD_TO, Fact.name("\"sections\" of the catalogue with its thickness, height and stock lengths")));
        }
        return found;
    }

    private static Set<String> walls(Cursor cursor, String field, Optional<Outline> outline) {
        Set<String> letters = new LinkedHashSet<>();
        for (JsonNode element : cursor.list(field)) letters.add(element.asText());
        if (outline.isPresent()) {
            List<String> there = Bed.wallLetters(outline.get());
            for (String letter : letters) if (!there.contains(letter)) cursor.add(cursor.noSuch(field, "wall", letter, there));
        }
        return letters;
    }

    /** A corner is named by the wall that starts there. */
    private static Map<Integer, Joint> joints(Cursor bed, Optional<Outline> outline) {
        Map<Integer, Joint> joints = new LinkedHashMap<>();
        for (Cursor joint : bed.objects("joints", "joint")) {
            String letter = joint.text("startOf");
            Joint kind = joint.choice("joint").equals("mitre") ? Joint.MITRE : Joint.LAP;
            joint.refuseUnknown();
            if (outline.isEmpty()) continue;
            List<String> there = Bed.wallLetters(outline.get());
            if (!there.contains(letter)) {
                joint.add(joint.noSuch("startOf", "wall", letter, there));
            } else if (joints.put(there.indexOf(letter), kind) != null) {
                joint.twice("startOf", "corner at the start of wall", Fact.name(letter), WayKind.KEEP_ONE);
            }
        }
        return joints;
    }

    private static Base base(Cursor bed, Base usual) {
        if (bed.raw("base").isTextual()) return kind(usual, bed.choice("base", "by-surface"));
        return bed.read("base", base -> {
            String kind = base.choice("kind", usual.bySurface() ? "by-surface" : usual.slatted() ? "slatted" : "open");
            return base.like(kind(usual, kind));
        });
    }

    /** Slatted until the surface has decided. */
    private static Base kind(Base usual, String kind) {
        return usual.slatted(!kind.equals("open"), kind.equals("by-surface"));
    }

    private static Fill fill(Cursor fill, Fill usual) {
        List<Fill.Layer> layers = fill.each("layers", "layer", layer -> {
            double share = layer.number("share");
            return new Fill.Layer(layer.text("material"), share / 100);
        });
        double shares = layers.stream().mapToDouble(layer -> layer.share() * 100).sum();
        if (!layers.isEmpty() && Math.abs(shares - 100) > 1e-6) {
            double off = Lengths.toTenth(100 - shares);
            fill.add(fill.fault(FindingKind.SHARES_SUM, "layers").with("sum", new Fact.Plain(100 - off, "%")).by(new Fact.Plain(Math.abs(off), "%"))
                    .way(off > 0 ? WayKind.GIVE_MORE : WayKind.GIVE_LESS, new Fact.Plain(Math.abs(off), "%")));
        }
        return new Fill(
                fill.number("freeboard", usual.freeboardMm()),
                fill.number("mulch", usual.mulchMm()),
                fill.number("settlement", usual.settlement() * 100) / 100,
                layers.isEmpty() ? usual.layers() : layers);
    }
}

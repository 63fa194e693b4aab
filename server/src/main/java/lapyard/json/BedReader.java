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
record BedReader(Catalogue catalogue, Usual usual) {
    /** In place of a figure that follows from the bed's timber. */
    private static final double BY_TIMBER = 0;

    /** How beds of this garden are built unless one says otherwise. */
    record Usual(String section, int courses, String lap, Screws screws, Notches notches, Base base, Liner liner,
            Fill fill, Finish finish, Ties ties, Seal seal) {
        static final Usual OURS = new Usual("100x200", 3, "turning",
                new Screws(BY_TIMBER, Screws.USUAL.perJoint(), Screws.USUAL.diameterMm()),
                new Notches(Notches.USUAL.widthMm(), BY_TIMBER, Notches.USUAL.maxGapMm(), Notches.USUAL.fromCornersMm()),
                Base.USUAL, Liner.USUAL, Fill.USUAL,
                new Finish(true, Finish.USUAL.coats(), BY_TIMBER, Finish.USUAL.rough()), Ties.USUAL, Seal.NONE);
    }

    /** The garden's own defaults, ours where it gives none. */
    static Usual usual(Cursor defaults) {
        Usual ours = Usual.OURS;
        return new Usual(
                defaults.text("section", ours.section()),
                defaults.count("courses", ours.courses()),
                defaults.choice("lap", ours.lap()),
                defaults.like("screws", ours.screws()),
                defaults.like("notches", ours.notches()),
                base(defaults, ours.base()),
                defaults.like("liner", ours.liner()),
                defaults.read("fill", fill -> fill(fill, ours.fill())),
                defaults.like("finish", ours.finish()),
                FixingReader.ties(defaults, ours.ties(), Optional.empty()),
                seal(defaults, ours.seal()));
    }

    /** Empty where a STOP was noted. */
    Optional<Bed> read(Cursor cursor, String id, String type) {
        int before = cursor.notes.findings.size();
        String name = cursor.text("name");
        Optional<Outline> outline = OutlineReader.read(cursor);
        int courses = cursor.count("courses", usual.courses());
        Optional<Section> section = section(cursor);
        Lap lap = cursor.choice("lap", usual.lap()).equals("turning") ? Lap.TURNING : Lap.LONG_WALL;
        Set<String> seen = walls(cursor, "seen", outline);
        boolean seenGiven = cursor.has("seen");
        Set<String> low = walls(cursor, "low", outline);
        Map<Integer, Joint> joints = joints(cursor, outline);
        boolean seams = cursor.flag("seams");
        Screws screws = cursor.like("screws", usual.screws());
        Notches notches = cursor.like("notches", usual.notches());
        Base base = base(cursor, usual.base());
        Liner liner = cursor.like("liner", usual.liner());
        Fill fill = cursor.read("fill", filled -> fill(filled, usual.fill()));
        Finish finish = cursor.like("finish", usual.finish());
        Ties ties = FixingReader.ties(cursor, usual.ties(), outline);
        Set<String> near = FixingReader.near(cursor);
        Seal seal = seal(cursor, usual.seal());
        boolean food = cursor.flag("food");
        int stage = cursor.count("stage");
        Placement placement = placement(cursor);
        cursor.raw("give");
        cursor.refuseUnknown();
        section.ifPresent(timber -> FixingReader.tooLong(cursor, timber, ties, liner));
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
                new Bed.Walls(courses, timber, lap, joints, hidden, low, seams),
                new Bed.Making(screws, of(timber, notches), ties, of(timber, finish), seal),
                new Bed.Inside(base, liner),
                new Bed.Planting(fill, food));
        return Optional.of(screws.lengthMm() != BY_TIMBER ? bed : bed.withMaking(bed.making().withScrews(
                new Screws(Construction.usualScrewMm(bed), screws.perJoint(), screws.diameterMm()))));
    }

    private static Notches of(Section timber, Notches given) {
        return given.depthMm() != BY_TIMBER ? given
                : new Notches(given.widthMm(), Notches.usualDepthMm(timber.heightMm()), given.maxGapMm(), given.fromCornersMm());
    }

    private static Finish of(Section timber, Finish given) {
        return given.coverM2PerLitre() != BY_TIMBER ? given : new Finish(given.wanted(), given.coats(), Finish.usualCoverM2(timber.planed()), given.rough());
    }

    static Placement placement(Cursor cursor) {
        return new Placement(cursor.point("at"), cursor.number("turn", 0), cursor.flag("mirror"));
    }

    private Optional<Section> section(Cursor cursor) {
        String id = cursor.text("section", usual.section());
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

    private static Base kind(Base usual, String kind) {
        return kind.equals("by-surface") ? usual.bySurface(true) : usual.slatted(kind.equals("slatted"));
    }

    private static Fill fill(Cursor fill, Fill usual) {
        List<Fill.Layer> layers = fill.each("layers", "layer", layer -> {
            double share = layer.number("share");
            return new Fill.Layer(layer.text("material"), share / 100);
        });
        double shares = layers.stream().mapToDouble(layer -> layer.share() * 100).sum();
        if (!layers.isEmpty() && Math.abs(shares - 100) > 1e-6) {
            double off = Math.round((100 - shares) * 10) / 10.0;
            fill.add(fill.fault(FindingKind.SHARES_SUM, "layers").with("sum", new Fact.Plain(100 - off, "%")).by(new Fact.Plain(Math.abs(off), "%"))
                    .way(off > 0 ? WayKind.GIVE_MORE : WayKind.GIVE_LESS, new Fact.Plain(Math.abs(off), "%")));
        }
        return new Fill(
                fill.number("freeboard", usual.freeboardMm()),
                fill.number("mulch", usual.mulchMm()),
                fill.number("settlement", usual.settlement() * 100) / 100,
                layers.isEmpty() ? usual.layers() : layers);
    }

    /** Whoever writes more than true or false has chosen one. */
    private static Seal seal(Cursor bed, Seal usual) {
        return bed.like("seal", new Seal(bed.has("seal") || usual.wanted(), usual.item(), usual.coats(), usual.coverM2PerLitre()));
    }
}

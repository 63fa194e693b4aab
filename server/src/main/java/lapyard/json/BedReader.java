package lapyard.json;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lapyard.catalogue.Catalogue;
import lapyard.catalogue.Section;
import lapyard.construction.Construction;
import lapyard.geometry.Outline;
import lapyard.geometry.Placement;
import lapyard.geometry.Point;
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
                new Notches(Notches.USUAL.widthMm(), BY_TIMBER, Notches.USUAL.maxGapMm(), Notches.USUAL.keepFromCornersMm()),
                Base.USUAL, Liner.USUAL, Fill.USUAL,
                new Finish(true, Finish.USUAL.coats(), BY_TIMBER, Finish.USUAL.rough()), Ties.USUAL, Seal.NONE);
    }

    /** The garden's own defaults, ours where it gives none. */
    static Usual usual(Cursor defaults) {
        Usual ours = Usual.OURS;
        Usual read = new Usual(
                defaults.text("section", ours.section()),
                defaults.count("courses", ours.courses()),
                lap(defaults, ours.lap()),
                screws(defaults, ours.screws()),
                notches(defaults, ours.notches()),
                base(defaults, ours.base()),
                liner(defaults, ours.liner()),
                fill(defaults, ours.fill()),
                finish(defaults, ours.finish()),
                FixingReader.ties(defaults, ours.ties(), Optional.empty()),
                seal(defaults, ours.seal()));
        defaults.refuseUnknown();
        return read;
    }

    /** Empty where a STOP was noted. */
    Optional<Bed> read(Cursor cursor, String id, String type) {
        int before = cursor.notes.findings.size();
        String name = cursor.text("name");
        Optional<Outline> outline = OutlineReader.read(cursor);
        int courses = cursor.count("courses", usual.courses());
        Optional<Section> section = section(cursor);
        Lap lap = lap(cursor, usual.lap()).equals("turning") ? Lap.TURNING : Lap.LONG_WALL;
        Set<String> seen = walls(cursor, "seen", outline);
        boolean seenGiven = cursor.has("seen");
        Set<String> low = walls(cursor, "low", outline);
        Map<Integer, Joint> joints = joints(cursor, outline);
        boolean seams = cursor.flag("seams");
        Screws screws = screws(cursor, usual.screws());
        Notches notches = notches(cursor, usual.notches());
        Base base = base(cursor, usual.base());
        Liner liner = liner(cursor, usual.liner());
        Fill fill = fill(cursor, usual.fill());
        Finish finish = finish(cursor, usual.finish());
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
        Set<String> hidden = seenGiven ? without(outline.get(), seen) : Set.of();
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

    private static Set<String> without(Outline outline, Set<String> seen) {
        return IntStream.range(0, outline.sides()).mapToObj(Bed::wallLetter).filter(wall -> !seen.contains(wall)).collect(Collectors.toSet());
    }

    private static Notches of(Section timber, Notches given) {
        return given.depthMm() != BY_TIMBER ? given
                : new Notches(given.widthMm(), Notches.usualDepthMm(timber.heightMm()), given.maxGapMm(), given.keepFromCornersMm());
    }

    private static Finish of(Section timber, Finish given) {
        return given.coverM2PerLitre() != BY_TIMBER ? given : new Finish(given.wanted(), given.coats(), Finish.usualCoverM2(timber.planed()), given.rough());
    }

    static Placement placement(Cursor cursor) {
        return new Placement(
                cursor.point("at", new Point(0, 0)),
                cursor.number("turn", 0),
                cursor.flag("mirror"));
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
            Set<String> there = new LinkedHashSet<>();
            for (int side = 0; side < outline.get().sides(); side++) there.add(Bed.wallLetter(side));
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
            List<String> there = IntStream.range(0, outline.get().sides()).mapToObj(Bed::wallLetter).toList();
            if (!there.contains(letter)) {
                joint.add(joint.noSuch("startOf", "wall", letter, there));
            } else if (joints.put(there.indexOf(letter), kind) != null) {
                joint.twice("startOf", "corner at the start of wall", Fact.name(letter), WayKind.KEEP_ONE);
            }
        }
        return joints;
    }

    private static String lap(Cursor cursor, String usual) {
        return cursor.choice("lap", usual);
    }

    private static Screws screws(Cursor bed, Screws usual) {
        Cursor cursor = bed.object("screws");
        Screws read = new Screws(
                cursor.number("length", usual.lengthMm()), cursor.count("perJoint", usual.perJoint()),
                cursor.number("diameter", usual.diameterMm()));
        cursor.refuseUnknown();
        return read;
    }

    private static Notches notches(Cursor bed, Notches usual) {
        Cursor cursor = bed.object("notches");
        Notches read = new Notches(
                cursor.number("width", usual.widthMm()),
                cursor.number("depth", usual.depthMm()),
                cursor.number("maxGap", usual.maxGapMm()),
                cursor.number("fromCorners", usual.keepFromCornersMm()));
        cursor.refuseUnknown();
        return read;
    }

    private static Base base(Cursor bed, Base usual) {
        if (bed.raw("base").isTextual()) return kind(usual, bed.choice("base", "by-surface"));
        Cursor cursor = bed.object("base");
        String kind = cursor.choice("kind", usual.bySurface() ? "by-surface" : usual.slatted() ? "slatted" : "open");
        Base read = new Base(
                !kind.equals("open"),
                cursor.text("bearerSection", usual.bearerSection()),
                cursor.number("bearerLift", usual.bearerLiftMm()),
                cursor.number("bearerEvery", usual.bearerEveryMm()),
                cursor.number("drainGap", usual.drainGapMm()),
                cursor.number("slatWidth", usual.slatWidthMm()),
                cursor.number("slatThickness", usual.slatThicknessMm()),
                cursor.number("slatLength", usual.slatLengthMm()),
                cursor.number("slatMaxGap", usual.slatMaxGapMm()),
                cursor.number("slatClearance", usual.slatClearanceMm()),
                cursor.number("slatLeast", usual.slatLeastMm()),
                cursor.number("bearerSpan", usual.bearerSpanMm()),
                kind.equals("by-surface"));
        cursor.refuseUnknown();
        return read;
    }

    private static Base kind(Base usual, String kind) {
        return kind.equals("by-surface") ? usual.bySurface(true) : usual.slatted(kind.equals("slatted"));
    }

    private static Liner liner(Cursor bed, Liner usual) {
        if (bed.raw("liner").isBoolean()) return of(usual, bed.flag("liner", true));
        Cursor cursor = bed.object("liner");
        Liner read = new Liner(
                cursor.flag("wanted", usual.wanted()),
                cursor.text("material", usual.material()),
                cursor.number("lap", usual.lapMm()),
                cursor.number("trim", usual.trimMm()),
                cursor.number("belowRim", usual.belowRimMm()),
                cursor.number("slitsPerM2", usual.slitsPerM2()),
                cursor.number("stapleEvery", usual.stapleEveryMm()),
                cursor.count("staplesPerFold", usual.staplesPerFold()),
                cursor.count("staplesPerPatch", usual.staplesPerPatch()),
                cursor.number("stapleLength", usual.stapleMm()),
                Liner.Over.valueOf(cursor.choice("over", word(usual.over()))
                        .replace('-', '_').toUpperCase(Locale.ROOT)),
                cursor.number("turnIn", usual.turnInMm()));
        cursor.refuseUnknown();
        return read;
    }

    private static Liner of(Liner usual, boolean wanted) {
        return new Liner(wanted, usual.material(), usual.lapMm(), usual.trimMm(), usual.belowRimMm(),
                usual.slitsPerM2(), usual.stapleEveryMm(), usual.staplesPerFold(), usual.staplesPerPatch(),
                usual.stapleMm(), usual.over(), usual.turnInMm());
    }

    private static String word(Liner.Over over) {
        return over.name().replace('_', '-').toLowerCase(Locale.ROOT);
    }

    private static Fill fill(Cursor bed, Fill usual) {
        Cursor cursor = bed.object("fill");
        List<Fill.Layer> layers = new ArrayList<>();
        double shares = 0;
        for (Cursor layer : cursor.objects("layers", "layer")) {
            double share = layer.number("share");
            shares += share;
            layers.add(new Fill.Layer(layer.text("material"), share / 100));
            layer.refuseUnknown();
        }
        if (!layers.isEmpty() && Math.abs(shares - 100) > 1e-6) {
            double off = Math.round((100 - shares) * 10) / 10.0;
            cursor.add(cursor.fault(FindingKind.SHARES_SUM, "layers").with("sum", new Fact.Plain(100 - off, "%")).by(new Fact.Plain(Math.abs(off), "%"))
                    .way(off > 0 ? WayKind.GIVE_MORE : WayKind.GIVE_LESS, new Fact.Plain(Math.abs(off), "%")));
        }
        Fill read = new Fill(
                cursor.number("freeboard", usual.freeboardMm()),
                cursor.number("mulch", usual.mulchMm()),
                cursor.number("settlement", usual.settlement() * 100) / 100,
                layers.isEmpty() ? usual.layers() : layers);
        cursor.refuseUnknown();
        return read;
    }

    private static Finish finish(Cursor bed, Finish usual) {
        if (bed.raw("finish").isBoolean()) {
            return new Finish(bed.flag("finish", true), usual.coats(), usual.coverM2PerLitre(), usual.rough());
        }
        Cursor cursor = bed.object("finish");
        Finish read = new Finish(
                cursor.flag("wanted", usual.wanted()),
                cursor.count("coats", usual.coats()),
                cursor.number("cover", usual.coverM2PerLitre()),
                cursor.number("rough", usual.rough()));
        cursor.refuseUnknown();
        return read;
    }

    /** Whoever writes more than true or false has chosen one. */
    private static Seal seal(Cursor bed, Seal usual) {
        if (bed.raw("seal").isBoolean()) return new Seal(bed.flag("seal", true), usual.item(), usual.coats(), usual.coverM2PerLitre());
        boolean wanted = bed.has("seal") || usual.wanted();
        Cursor cursor = bed.object("seal");
        Seal read = new Seal(
                cursor.flag("wanted", wanted),
                cursor.text("item", usual.item()),
                cursor.count("coats", usual.coats()),
                cursor.number("cover", usual.coverM2PerLitre()));
        cursor.refuseUnknown();
        return read;
    }
}

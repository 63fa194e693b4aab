package lapyard.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Where a finding stands, from the whole to the part: a bed, then its wall. */
public record Place(List<Part> parts) {
    public Place {
        parts = List.copyOf(parts);
    }

    private static final int MOST_IN_A_SENTENCE = 3;

    /** What a part of a place is. {@code one} and {@code many} are its words in documents, {@code all} says many in sentences. */
    public enum What {
        BED("bed", "beds"),
        WALL("wall", "walls"),
        COURSE("course", "courses"),
        CORNER("corner", "corners"),
        PIECE("piece", "pieces"),
        BASE("base", "base"),
        LINER("liner", "liner"),
        PATH("path", "paths"),
        BOARD("board", "boards"),
        SLAT_BOARDS("slat boards", "slat boards"),
        TIMBER("timber", "timber"),
        BEARERS("bearers", "bearers"),
        YARD("yard", "yard"),
        LEVELS("levels", "levels"),
        READING("reading", "readings"),
        SURFACE("surface", "surfaces"),
        RIM_GROUP("rim group", "rim groups"),
        KEEP_CLEAR("keep-clear", "keep-clear"),
        SLIP("slip", "slip"),
        WALLS_BLOCKED("walls blocked", "walls blocked", "walls without drainage"),
        WEEKEND("weekend", "weekends"),
        CREW("crew", "crew"),
        TALLY("tally", "tally"),
        PIN("pin", "pins"),
        /** A task of the tally by its id; what a person reads says it in words. */
        TASK("", ""),
        /** Any other place; its first name is the whole of it. A field of the document is written as its way through it. */
        FIELD("", "");

        public final String one;
        private final String many;
        private final String all;

        What(String one, String many) {
            this(one, many, many);
        }

        What(String one, String many, String all) {
            this.one = one;
            this.many = many;
            this.all = all;
        }
    }

    /** Things of one sort. Without ids it is all of them: {@code walls}. */
    public record Part(What what, List<String> ids) {
        public Part {
            ids = List.copyOf(ids);
        }

        /** As a person says it: {@code walls A and C}. */
        public String words() {
            if (what == What.FIELD) return together();
            return switch (ids.size()) {
                case 0 -> what.all;
                case 1 -> what.one + " " + ids.get(0);
                default -> what.many + " " + BedNames.listed(BedNames.inOrder(ids));
            };
        }

        /** What names begin with alike is said once: {@code delivery, Hill sawmill, bulk bag and loose load}. */
        private String together() {
            List<List<String>> names = ids.stream().map(id -> List.of(id.split(", "))).toList();
            int alike = 0;
            while (ids.size() > 1 && sameUpTo(names, alike + 1)) alike++;
            if (alike == 0) return String.join(", ", ids);
            int from = alike;
            return String.join(", ", names.get(0).subList(0, from)) + ", " + BedNames.joined(names.stream().map(name -> String.join(", ", name.subList(from, name.size()))).toList());
        }

        private static boolean sameUpTo(List<List<String>> names, int parts) {
            return names.stream().allMatch(name -> name.size() > parts && name.subList(0, parts).equals(names.get(0).subList(0, parts)));
        }

        /** As {@link #words}, for a sentence that stands beside its place: more than three are only counted, {@code 5 beds}. */
        public String brief() {
            boolean many = what != What.FIELD && BedNames.compact(BedNames.inOrder(ids)).split(", ").length > MOST_IN_A_SENTENCE;
            return many ? ids.size() + " " + what.many : words();
        }

        String key() {
            if (what == What.FIELD || what == What.TASK) return String.join(", ", ids);
            if (ids.isEmpty()) return what.many;
            return (ids.size() == 1 ? what.one : what.many) + " " + BedNames.compact(BedNames.inOrder(ids));
        }
    }

    public static Place of(What what, String... ids) {
        return new Place(List.of(new Part(what, List.of(ids))));
    }

    public static Place bed(String id) {
        return of(What.BED, id);
    }

    public static Place beds(List<String> ids) {
        return new Place(List.of(new Part(What.BED, ids)));
    }

    public static Place wall(String bed, String letter) {
        return bed(bed).then(What.WALL, letter);
    }

    /** A part named as in the document or on the slip, where no other sort fits. */
    public static Place field(String name) {
        return of(What.FIELD, name);
    }

    /** This place and a smaller one in it, or a neighbour of the same sort. */
    public Place then(What what, String... ids) {
        List<Part> more = new ArrayList<>(parts);
        more.add(new Part(what, List.of(ids)));
        return new Place(more);
    }

    /** As a person says it, the part before the whole: {@code wall D of bed M}, {@code beds 31 and 32}. */
    public String words() {
        Map<What, List<String>> all = new LinkedHashMap<>();
        parts.forEach(part -> all.merge(part.what, part.ids, (one, other) -> Stream.concat(one.stream(), other.stream()).toList()));
        if (all.containsKey(What.READING)) all.remove(What.LEVELS);
        all.remove(What.TASK);
        List<String> words = new ArrayList<>();
        all.forEach((what, ids) -> words.add(0, new Part(what, ids).words()));
        return String.join(" of ", words);
    }

    /** As documents name it under {@code accepted}: {@code bed M, wall D}; never changed, as stored gardens hold it. */
    public String key() {
        return String.join(", ", parts.stream().map(Part::key).toList());
    }

    /** Names of this sort in the place, in their order. */
    public List<String> ids(What what) {
        return parts.stream().filter(part -> part.what == what).flatMap(part -> part.ids.stream()).toList();
    }

    /** The one name of this sort, empty where there is none or more than one. */
    public Optional<String> only(What what) {
        List<String> ids = ids(what);
        return ids.size() == 1 ? Optional.of(ids.get(0)) : Optional.empty();
    }

    /** The place of all of these: their beds, or else what they begin with, and the rest where they share it. */
    static Place ofAll(List<Place> places) {
        Place first = places.get(0);
        if (places.stream().allMatch(first::equals) || first.parts.isEmpty()) return first;
        What what = first.parts.get(0).what;
        Set<String> ids = new LinkedHashSet<>();
        places.forEach(place -> ids.addAll(place.ids(what)));
        List<Part> parts = new ArrayList<>(List.of(new Part(what, List.copyOf(ids))));
        List<List<Part>> rest = places.stream()
                .map(place -> place.parts.stream().filter(part -> part.what != what).toList()).distinct().toList();
        if (rest.size() == 1) parts.addAll(rest.get(0));
        return new Place(parts);
    }
}

package lapyard.job;

import java.util.List;
import lapyard.catalogue.Section;
import lapyard.construction.Nest;
import lapyard.geometry.Lengths;
import lapyard.plan.Finding;
import lapyard.plan.Finding.Amount;

/** What is said of pieces that are sawn head to tail. */
final class Nests {
    private Nests() {}

    static List<Finding> findings(Section section, double kerfMm, List<Blank> blanks) {
        List<Nest> nests = blanks.stream().flatMap(blank -> blank.nest().stream()).toList();
        if (nests.isEmpty()) {
            return List.of();
        }
        int pieces = nests.stream().mapToInt(nest -> nest.parts().size()).sum();
        double saved = nests.stream().mapToDouble(nest -> nest.savedMm(kerfMm)).sum();
        boolean both = nests.stream().anyMatch(nest -> nest.goodFaces() > 1);
        return List.of(Finding.note(
                "timber " + section.id() + ", nests",
                pieces + " pieces with angled ends are sawn head to tail out of " + nests.size()
                        + (nests.size() == 1 ? " length, " : " lengths, ") + Lengths.text(Lengths.toTenth(saved))
                        + " less than each by its long point" + (both ? "; their boards show both faces" : ""),
                new Amount(Lengths.toTenth(saved), "mm"),
                "saw them as the Saw Day sheets show",
                both ? "if a face is not good, put goodFaces 1 to the section in the catalogue" : "look at the marks before each cut"));
    }
}

package lapyard.job;

import java.util.List;
import lapyard.catalogue.Section;
import lapyard.construction.Nest;
import lapyard.geometry.Lengths;
import lapyard.plan.Fact;
import lapyard.plan.Finding;
import lapyard.plan.FindingKind;
import lapyard.plan.Place.What;
import lapyard.plan.Place;
import lapyard.plan.WayKind;

/** The findings about pieces that are sawn head to tail. */
final class Nests {
    private Nests() {}

    static List<Finding> findings(Section section, double kerfMm, List<Blank> blanks) {
        List<Nest> nests = blanks.stream().flatMap(blank -> blank.nest().stream()).toList();
        if (nests.isEmpty()) return List.of();
        int pieces = nests.stream().mapToInt(nest -> nest.parts().size()).sum();
        double saved = nests.stream().mapToDouble(nest -> nest.savedMm(kerfMm)).sum();
        boolean both = nests.stream().anyMatch(nest -> nest.goodFaces() > 1);
        return List.of(Finding.of(both ? FindingKind.NESTS_BOTH_FACES : FindingKind.NESTS, Place.of(What.TIMBER, section.id()).then(What.FIELD, "nests"))
                .with("pieces", Fact.count(pieces, "pieces")).with("lengths", Fact.count(nests.size(), "lengths")).by(Fact.mm(Lengths.toTenth(saved)))
                .way(WayKind.SAW_AS_SHOWN).way(both ? WayKind.GOOD_FACES_ONE : WayKind.LOOK_AT_MARKS));
    }
}

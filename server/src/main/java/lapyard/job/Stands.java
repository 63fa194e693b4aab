package lapyard.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import lapyard.catalogue.Section;
import lapyard.catalogue.StrengthClass;
import lapyard.construction.BedWork;
import lapyard.construction.Nest;
import lapyard.construction.Piece;
import lapyard.cutting.CuttingResult.BoardLine;
import lapyard.ground.Underfoot;
import lapyard.job.JobSheet.SectionCutting;
import lapyard.plan.BedNames;
import lapyard.plan.Finding;
import lapyard.plan.Garden;
import lapyard.plan.RackBoard;
import lapyard.plan.Treatment;
import lapyard.standing.Footing;
import lapyard.standing.Standing;
import lapyard.standing.Verdict;
import lapyard.standing.Verdict.Outcome;

/** Whether the beds would stand, each on its own ground and of the boards that go into it. */
final class Stands {
    private Stands() {}

    /** @param cutting of the walls' timber, which tells what boards on hand go into which bed */
    static Map<String, Standing> of(Garden garden, List<BedWork> works, List<SectionCutting> cutting) {
        Map<String, Set<String>> surfaces = Underfoot.of(garden);
        Map<String, Set<String>> boards = boardsOnHand(garden, works, cutting);
        Map<String, Standing> standing = new LinkedHashMap<>();
        for (BedWork work : works) {
            String id = work.bed().id();
            Optional<Section> bearers = garden.goods().catalogue().section(work.bed().inside().base().bearerSection());
            double bearerMm = bearers.map(Section::heightMm).orElse(0.0);
            Set<String> own = boards.getOrDefault(id, Set.of());
            List<String> unknown = garden.goods().rack().stream()
                    .filter(board -> own.contains(board.id())
                            && (board.origin().isEmpty() || board.treatment() == Treatment.UNKNOWN))
                    .map(RackBoard::id)
                    .toList();
            standing.put(id, Standing.of(
                    work,
                    garden.terms().loads(),
                    new Footing(surfaces.getOrDefault(id, Set.of()), bearerMm,
                            bearers.map(section -> bearerClass(section, work)).orElse(StrengthClass.LOWEST), !own.isEmpty(), String.join(", ", unknown))));
        }
        return standing;
    }

    /** Graded timber that is ripped has lost its grade until somebody grades it again: EN 14081-1, from memory. */
    private static StrengthClass bearerClass(Section section, BedWork work) {
        boolean ripped = work.bed().inside().base().bearerLiftMm() < section.thicknessMm() - 1e-9;
        return ripped ? StrengthClass.LOWEST : section.strength();
    }

    /** Ids of the boards on hand by the bed whose pieces are cut from them. */
    static Map<String, Set<String>> boardsOnHand(Garden garden, List<BedWork> works, List<SectionCutting> cutting) {
        Map<String, String> bedOf = new LinkedHashMap<>();
        for (BedWork work : works) {
            for (Piece piece : work.pieces()) {
                bedOf.put(piece.mark(), work.bed().id());
            }
        }
        Map<String, Set<String>> boards = new LinkedHashMap<>();
        for (SectionCutting section : cutting) {
            for (BoardLine line : section.result().plan()) {
                String from = line.stock().split(" ", 2)[0];
                if (garden.goods().rack().stream().anyMatch(board -> board.id().equals(from))) {
                    line.pieces().stream()
                            .flatMap(mark -> Nest.marks(mark).stream())
                            .forEach(mark -> boards.computeIfAbsent(bedOf.get(mark), bed -> new TreeSet<>()).add(from));
                }
            }
        }
        return boards;
    }

    /** One finding a kind, however many beds it is about: the worst bed speaks, the others are named. */
    static List<Finding> findings(Iterable<Standing> all) {
        Map<String, List<Standing>> refused = new LinkedHashMap<>();
        Map<String, List<Standing>> failing = new LinkedHashMap<>();
        for (Standing one : all) {
            one.notDesigned().forEach(why -> refused.computeIfAbsent(kind(why), k -> new ArrayList<>()).add(one));
            for (Verdict verdict : one.verdicts()) {
                if (verdict.outcome() != Outcome.HOLDS) {
                    failing.computeIfAbsent(key(verdict), k -> new ArrayList<>()).add(one);
                }
            }
        }
        List<Finding> findings = new ArrayList<>();
        refused.forEach((kind, beds) -> findings.add(refusal(kind, beds)));
        failing.forEach((key, beds) -> findings.add(verdict(key, beds)));
        return findings;
    }

    /** Beds refused for the same reason differ in their figures only. */
    private static String kind(String why) {
        return why.replaceAll("\\d[\\d.]*", "#").replaceAll("^(boards of unknown treatment).*", "$1");
    }

    private static Finding refusal(String kind, List<Standing> beds) {
        String why = beds.get(0).notDesigned().stream().filter(one -> kind(one).equals(kind)).findFirst().orElseThrow();
        return Finding.snag(
                where(beds, ""),
                "Not designed here: " + why + more(beds),
                null,
                "ask a licensed engineer and the local building authority",
                kind.contains("of soil, over") ? "take a course off, or fill the bed less deep" : "move or change the bed");
    }

    private static Finding verdict(String key, List<Standing> beds) {
        Standing worst = beds.get(0);
        for (Standing one : beds) {
            worst = spoken(one, key).size() > spoken(worst, key).size() ? one : worst;
        }
        Verdict verdict = spoken(worst, key);
        return Finding.said(
                verdict.outcome() == Outcome.WEAK ? Finding.Weight.SNAG : Finding.Weight.NOTE,
                where(beds, ", " + verdict.about()),
                verdict.text()
                        + (beds.size() == 1 ? "" : " in bed " + worst.bed() + ", the worst of " + beds.size())
                        + "; " + Standing.CAUTION_SHORT,
                null,
                verdict.ways().toArray(String[]::new));
    }

    private static Verdict spoken(Standing bed, String key) {
        return bed.verdicts().stream().filter(one -> key(one).equals(key)).findFirst().orElseThrow();
    }

    private static String key(Verdict verdict) {
        return verdict.outcome() + " " + verdict.about();
    }

    private static String where(List<Standing> beds, String what) {
        return BedNames.where(beds.stream().map(Standing::bed).toList()) + what;
    }

    private static String more(List<Standing> beds) {
        return beds.size() == 1 ? "" : " (bed " + beds.get(0).bed() + "; " + (beds.size() - 1) + " more like it)";
    }
}

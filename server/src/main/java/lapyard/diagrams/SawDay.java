package lapyard.diagrams;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lapyard.catalogue.Section;
import lapyard.construction.BedWork;
import lapyard.construction.Nest;
import lapyard.construction.Notch;
import lapyard.construction.Piece;
import lapyard.cutting.Batches;
import lapyard.cutting.Ledger;
import lapyard.cutting.SawBoard;
import lapyard.drawing.Page;
import lapyard.geometry.Measure;
import lapyard.plan.BedNames;
import lapyard.plan.Lifting;

/**
 * The sheets that are taped to the saw bench. Of each section and stage first the batches, one row a setting of the
 * stop, then the boards with the place of every cut, at the end what becomes of the offcuts and what may be saved.
 */
public final class SawDay {
    private SawDay() {}

    /**
     * One section's work at the saw.
     *
     * @param series       letter before the numbers of its boards, so that no two of a garden are alike; may be empty
     * @param name         what it is called on the sheets, such as {@code Timber 100x200}
     * @param before       what is done with the boards before they are cut to length; may be empty
     * @param section      for the mass of boards and pieces; empty where they are strips of it
     * @param kerfMm       the saw's
     * @param keepOffcutMm offcuts shorter than this are scrap
     * @param firstCuts    to be asked of the merchant
     * @param nests        lengths of which more than one piece is sawn, under the marks that the boards have
     */
    public record Work(
            String series,
            String name,
            String before,
            Optional<Section> section,
            double kerfMm,
            double keepOffcutMm,
            List<SawBoard> boards,
            Batches batches,
            Ledger ledger,
            List<SawBoard.FirstCut> firstCuts,
            List<Nest> nests) {
        public Work {
            boards = List.copyOf(boards);
            firstCuts = List.copyOf(firstCuts);
            nests = List.copyOf(nests);
        }

        /** As it is written on a board. */
        String board(int number) {
            return series + number;
        }

        /** As it is written on an offcut. */
        String tag(String ofLedger) {
            return ofLedger.replace("#", "#" + series);
        }
    }

    /**
     * @param lifting     what one person lifts; heavier pieces and boards are marked
     * @param beds        for the signs beside the marks: seen, heavy, notched
     * @param longestMm   the longest part that can be carried in; empty where the merchant is asked for no cuts
     * @return one page or more; where there is nothing to saw it says so
     */
    public static List<Page> pages(
            Lifting lifting, List<BedWork> beds, List<Work> works, OptionalDouble longestMm, BenchOptions options) {
        String caution = "Eyes, ears and lungs covered. Unplug the saw before the stop or blade is touched. Over "
                + Measure.KG.plain(lifting.limitKg(), 1, options.imperial()) + ": two people or more, or wheels. Treated timber: gloves, burn none of it."
                + BedNames.sealed("Seal the cut ends of", beds.stream().map(BedWork::bed));
        return BenchSheet.pages(caution, options, sheet -> {
            Signs signs = new Signs(beds, works, lifting);
            List<BenchSheet.Draft> drafts = new ArrayList<>();
            Flow first = new Flow(sheet, "First cuts at the merchant", "");
            for (Work work : works) {
                if (!work.firstCuts().isEmpty() && longestMm.isPresent()) SawOffcuts.firstCuts(work, longestMm.getAsDouble(), sheet, first);
            }
            drafts.addAll(first.drafts());
            Flow batches = new Flow(sheet, "Saw Day: batches", "");
            for (Work work : works) {
                work.batches().stages().forEach(stage -> new SawBatches(work, signs, sheet).on(batches, stage));
            }
            drafts.addAll(batches.drafts());
            Flow boards = new Flow(sheet, "Saw Day: boards", "");
            SawBars.on(boards, works, signs, sheet);
            SawOffcuts.on(boards, works.stream().filter(work -> !work.boards().isEmpty()).toList(), sheet);
            drafts.addAll(boards.drafts());
            Flow slanted = new Flow(sheet, "Slanted cuts", "");
            works.forEach(work -> new SawNests(signs, sheet).on(slanted, work));
            SawAngles.on(slanted, beds, works, sheet);
            drafts.addAll(slanted.drafts());
            if (drafts.isEmpty()) {
                drafts.add(sheet.nothing("Saw Day", "Nothing to saw in this garden."));
            }
            return drafts;
        });
    }

    /** What is to be written on a piece beside its mark, and what it weighs. */
    static final class Signs {
        static final String HEAVY = "●";
        static final String SEEN = "▲";
        static final String NOTCH = "≈";
        static final String ANGLED = "/";

        private final Map<String, String> byMark = new HashMap<>();
        final Lifting lifting;

        Signs(List<BedWork> beds, List<Work> works, Lifting lifting) {
            this.lifting = lifting;
            for (BedWork work : beds) {
                for (Piece piece : work.pieces()) {
                    byMark.put(piece.mark(), signs(work, piece));
                }
            }
            for (Work work : works) {
                work.nests().forEach(nest -> byMark.put(nest.mark(), signs(work, nest)));
            }
        }

        /** Of the whole length, before it is parted. */
        private String signs(Work work, Nest nest) {
            String parts = nest.pieces().stream().map(piece -> byMark.getOrDefault(piece.mark(), "")).collect(Collectors.joining());
            boolean heavy = work.section().filter(section -> lifting.heavy(section.massKg(nest.lengthMm()))).isPresent();
            return (heavy ? HEAVY : "") + Stream.of(SEEN, NOTCH, ANGLED).filter(parts::contains).collect(Collectors.joining());
        }

        private String signs(BedWork work, Piece piece) {
            boolean heavy = lifting.heavy(work.massKg(piece));
            return (heavy ? HEAVY : "") + (piece.seen() ? SEEN : "") + (notched(work, piece) ? NOTCH : "")
                    + (piece.squareEnds() ? "" : ANGLED);
        }

        private static boolean notched(BedWork work, Piece piece) {
            return piece.course() == 1
                    && work.frame().notches().stream().anyMatch(notch -> notch.wall().equals(piece.wall()) && within(notch, piece));
        }

        private static boolean within(Notch notch, Piece piece) {
            return notch.atMm() >= piece.fromMm() && notch.atMm() <= piece.fromMm() + piece.lengthMm();
        }

        /** Mark and signs as one word. */
        String marked(String mark) {
            String signs = byMark.getOrDefault(mark, "");
            return signs.isEmpty() ? mark : mark + " " + signs;
        }
    }
}

package lapyard.cutting;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.TreeSet;

/**
 * What is left of each board after each stage, and what becomes of it.
 *
 * @param offcuts in the order in which they are made, then by board; nothing is listed for a board cut off to its end
 * @param stages  earliest first
 */
public record Ledger(List<Offcut> offcuts, List<Stage> stages) {
    public Ledger {
        offcuts = List.copyOf(offcuts);
        stages = List.copyOf(stages);
    }

    public enum Fate {
        /** Waits for a later stage of this plan. */
        CARRIED,
        /** Worth racking, not wanted by this plan. */
        KEPT,
        SCRAP
    }

    /**
     * @param tag      as written on it: {@code #9-1} is board 9 after stage 1
     * @param lengthMm as it lies there, the far end's trim still on it
     * @param usedIn   the stage that cuts it again; empty unless carried
     * @param marks    what will be cut from it in {@code usedIn}
     */
    public record Offcut(String tag, int board, int madeIn, double lengthMm, Fate fate, OptionalInt usedIn, List<String> marks) {
        public Offcut {
            marks = List.copyOf(marks);
        }
    }

    /**
     * @param opened   numbers of the boards first cut in this stage
     * @param taken    tags of the offcuts carried from earlier stages that are cut in this one
     * @param open     boards that wait for a later stage when this one is done: the room they need must be free
     * @param longestMm of those that wait, 0 for none
     */
    public record Stage(int stage, List<Integer> opened, List<String> taken, int open, double longestMm) {
        public Stage {
            opened = List.copyOf(opened);
            taken = List.copyOf(taken);
        }
    }

    /** @param keepOffcutMm offcuts from this length on are worth racking */
    public static Ledger of(List<SawBoard> boards, double kerfMm, double keepOffcutMm) {
        TreeSet<Integer> numbers = new TreeSet<>();
        boards.forEach(board -> numbers.addAll(board.stages()));
        List<Offcut> offcuts = new ArrayList<>();
        List<Stage> stages = new ArrayList<>();
        for (int stage : numbers) {
            List<Integer> opened = new ArrayList<>();
            List<String> taken = new ArrayList<>();
            int open = 0;
            double longest = 0;
            for (SawBoard board : boards) {
                List<Integer> own = board.stages();
                int at = own.indexOf(stage);
                if (at == 0) {
                    opened.add(board.number());
                } else if (at > 0) {
                    taken.add(tag(board, own.get(at - 1)));
                }
                double left = board.leftAfterMm(stage, kerfMm);
                boolean waits = own.get(0) <= stage && own.get(own.size() - 1) > stage;
                if (waits) {
                    open++;
                    longest = Math.max(longest, left);
                }
                if (at >= 0 && left > 0) {
                    OptionalInt next = waits ? OptionalInt.of(own.get(at + 1)) : OptionalInt.empty();
                    offcuts.add(new Offcut(
                            tag(board, stage),
                            board.number(),
                            stage,
                            left,
                            waits ? Fate.CARRIED : left >= keepOffcutMm ? Fate.KEPT : Fate.SCRAP,
                            next,
                            waits ? board.cutsIn(next.getAsInt()).stream().map(SawBoard.Cut::mark).toList() : List.of()));
                }
            }
            stages.add(new Stage(stage, opened, taken, open, longest));
        }
        return new Ledger(offcuts, stages);
    }

    private static String tag(SawBoard board, int stage) {
        return "#" + board.number() + "-" + stage;
    }

    /** Lengths of one fate together, mm. */
    public double lengthMm(Fate fate) {
        return offcuts.stream().filter(offcut -> offcut.fate() == fate).mapToDouble(Offcut::lengthMm).sum();
    }
}

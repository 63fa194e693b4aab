package lapyard.cutting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The cuts of a plan grouped by setting of the saw stop, long to short across all boards, stage by stage. Exact
 * lengths: pieces that differ by a tenth of a millimetre have each their own setting.
 *
 * @param stages earliest first
 */
public record Batches(List<Stage> stages, Rates rates) {
    public Batches {
        stages = List.copyOf(stages);
    }

    /** How long work at the saw takes; common practice, no source. */
    public record Rates(double minutesACut, double minutesASetting) {
        public static final Rates USUAL = new Rates(4, 3);

        public Rates {
            if (!(minutesACut >= 0 && minutesASetting >= 0)
                    || Double.isInfinite(minutesACut) || Double.isInfinite(minutesASetting)) {
                throw new IllegalArgumentException("minutes a cut and a setting are 0 or more, were " + minutesACut
                        + " and " + minutesASetting);
            }
        }

        public double minutes(int cuts, int settings) {
            return cuts * minutesACut + settings * minutesASetting;
        }
    }

    /** What one board gives at one setting. */
    public record Draw(int board, List<String> marks) {
        public Draw {
            marks = List.copyOf(marks);
        }
    }

    /** One position of the stop and all that is cut at it, boards in the order of their numbers. */
    public record Setting(double stopMm, List<Draw> draws) {
        public Setting {
            draws = List.copyOf(draws);
        }

        public int pieces() {
            return draws.stream().mapToInt(draw -> draw.marks().size()).sum();
        }
    }

    /**
     * One saw day.
     *
     * @param settings            longest stop first
     * @param settingsBoardByBoard how often the stop is moved where each board is cut up before the next is taken
     * @param boards              how many boards are cut in this stage
     * @param trims               ends that are trimmed before the first piece is cut: of boards that are opened, and of
     *     offcuts that are trimmed again
     */
    public record Stage(int stage, List<Setting> settings, int boards, int settingsBoardByBoard, int trims) {
        public Stage {
            settings = List.copyOf(settings);
        }

        public int pieces() {
            return settings.stream().mapToInt(Setting::pieces).sum();
        }

        /** Cuts: one for each piece and for each end that is trimmed. */
        public int cuts() {
            return pieces() + trims;
        }

        /** How often a board is lifted on to the saw where the batches are followed. */
        public int handlings() {
            return settings.stream().mapToInt(setting -> setting.draws().size()).sum();
        }

        public double minutes(Rates rates) {
            return rates.minutes(cuts(), settings.size());
        }

        /** The minutes of {@link #minutes} if each board is cut up before the next one is lifted. */
        public double minutesBoardByBoard(Rates rates) {
            return rates.minutes(cuts(), settingsBoardByBoard);
        }
    }

    /** @param boards numbered, cuts in the order of cutting */
    public static Batches of(List<SawBoard> boards, double kerfMm, Rates rates) {
        Map<Integer, List<SawBoard>> byStage = new TreeMap<>();
        for (SawBoard board : boards) {
            board.stages().forEach(stage -> byStage.computeIfAbsent(stage, s -> new ArrayList<>()).add(board));
        }
        List<Stage> stages = new ArrayList<>();
        byStage.forEach((stage, cut) -> stages.add(stage(stage, cut, kerfMm)));
        return new Batches(stages, rates);
    }

    private static Stage stage(int stage, List<SawBoard> boards, double kerfMm) {
        Map<Double, List<Draw>> byStop = new TreeMap<>(Comparator.reverseOrder());
        int moved = 0;
        double stop = Double.NaN;
        for (SawBoard board : boards) {
            Map<Double, List<String>> own = new LinkedHashMap<>();
            for (SawBoard.Cut cut : board.cutsIn(stage)) {
                // nobody sets a stop to less than a millimetre
                double length = Math.floor(cut.lengthMm() + 0.5);
                own.computeIfAbsent(length, l -> new ArrayList<>()).add(cut.mark());
                if (length != stop) {
                    moved++;
                    stop = length;
                }
            }
            own.forEach((length, marks) ->
                    byStop.computeIfAbsent(length, l -> new ArrayList<>()).add(new Draw(board.number(), marks)));
        }
        List<Setting> settings = new ArrayList<>();
        byStop.forEach((length, draws) -> settings.add(new Setting(length, draws)));
        return new Stage(stage, settings, boards.size(), moved, (int) boards.stream().filter(board -> board.trimmedIn(stage, kerfMm)).count());
    }

    public int pieces() {
        return stages.stream().mapToInt(Stage::pieces).sum();
    }

    public double minutes() {
        return stages.stream().mapToDouble(stage -> stage.minutes(rates)).sum();
    }
}

package lapyard.sheets;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Betters a straight-cut layout: takes a few bands out of one or two runs, breaks their cut trees into at most eleven
 * blocks, and lays those blocks back in the best of all straight-cut ways (a {@link CutTable}). When nothing
 * gives, a handful of pieces is laid anew in dense bands, and what does not come out better is put back.
 */
final class CutSearch {
    /**
     * How much is looked at in one go.
     *
     * @param fewBlocks  laid anew at once, as long as that gives something
     * @param mostBlocks laid anew at once, when fewer give nothing
     * @param patience   rounds in a row without gain before one more block is taken
     * @param sample     a dense band is sought among so many pieces
     * @param samples    a band is the densest of so many samples
     * @param starts     layouts of many pieces to start from, on each roll
     * @param startShare of the work left that they may take
     */
    record Pace(int fewBlocks, int mostBlocks, int patience, int sample, int samples, int starts, double startShare) {
        static final Pace QUICK = new Pace(7, 9, 12, 7, 1, 1, 0.75);
        static final Pace THOROUGH = new Pace(8, 11, 12, 10, 3, 24, 0.3);
        /** Less work than this is not enough for the thorough pace to get anywhere. */
        private static final long THOROUGH_FROM = 20_000_000;

        static Pace of(RollBudget work) {
            return work.left() < THOROUGH_FROM ? QUICK : THOROUGH;
        }
    }

    /** About how many pieces are laid anew when nothing gives: in dense bands, and in bands of what matches among many. */
    private static final int SHAKEN_PIECES = 20;
    private static final int MATCHED_PIECES = 60;

    /** About how many pieces are laid anew in one go while there is much to gain, and how often their bands are then worked on. */
    private static final int REBUILT_PIECES = 60;
    private static final int POLISHED = 10;
    private static final double REBUILT_SHARE = 0.7;

    /** What the shortest run of few pieces may waste, as shares of what shelves do. */
    private static final double[] FEW_WASTE = {0.35, 1};

    /** From so many pieces on some match. */
    static final int MANY = 36;

    /** A run being worked on: bands across the roll, one after the other. */
    private static final class Strip {
        final RollJob.Roll roll;
        final List<Block> bands;
        long length;

        Strip(RollJob.Roll roll, List<Block> bands) {
            this.roll = roll;
            this.bands = new ArrayList<>(bands);
            for (Block band : bands) length += band.height;
        }

        void replace(List<Block> with, long newLength) {
            bands.clear();
            bands.addAll(with);
            length = newLength;
        }
    }

    private final RollJob job;
    private final RollBudget work;
    private final Pace pace;
    private final SplittableRandom random;
    private final long target;
    private final boolean mixing;
    private final List<Strip> strips = new ArrayList<>();
    private Layout.Banded best;
    /** Bands that changed since the last shake: there is the likeliest gain. */
    private final List<Block> hot = new ArrayList<>();

    private long bestCoins;
    private double bestUsed;

    /**
     * @param target stop at this many coins: no layout costs less
     * @param mixing whether pieces may move to other rolls
     */
    CutSearch(RollJob job, Layout.Banded from, long target, boolean mixing, long seed, Pace pace, RollBudget work) {
        this.job = job;
        this.work = work;
        this.pace = pace;
        this.random = new SplittableRandom(seed);
        this.target = target;
        this.mixing = mixing;
        restore(from);
        note();
    }

    Layout.Banded search() {
        int blocks = pace.fewBlocks();
        int idle = 0;
        boolean many = job.pieces() >= MANY && !mixing;
        while (!work.over() && bestCoins > target && !strips.isEmpty()) {
            if (many && coins() > target) {
                long until = (long) (work.left() * (1 - REBUILT_SHARE));
                while (work.left() > until && coins() > target) rebuild();
                note();
                many = false;
                continue;
            }
            Strip strip = strips.get(random.nextInt(strips.size()));
            double before = used();
            long coinsBefore = coins();
            Strip other = mixing && random.nextInt(3) == 0 ? partner(strip) : null;
            if (other == null) within(strip, blocks); else between(strip, other, blocks - 1);
            if (coins() < coinsBefore || used() < before * (1 - 1e-12)) {
                blocks = pace.fewBlocks();
                idle = 0;
            } else if (++idle > pace.patience()) {
                idle = 0;
                if (++blocks > pace.mostBlocks()) {
                    note();
                    restore(best);
                    shake();
                    blocks = pace.fewBlocks();
                }
            }
        }
        note();
        return best;
    }

    private void note() {
        long coins = coins();
        double used = used();
        if (best != null && (coins > bestCoins || coins == bestCoins && used >= bestUsed)) return;
        List<Layout.BandedRun> runs = new ArrayList<>();
        for (Strip strip : strips) if (!strip.bands.isEmpty()) runs.add(new Layout.BandedRun(strip.roll, strip.bands));
        best = new Layout.Banded(runs);
        bestCoins = coins;
        bestUsed = used;
    }

    private void restore(Layout.Banded from) {
        hot.clear();
        strips.clear();
        for (Layout.BandedRun run : from.runs()) strips.add(new Strip(run.roll(), run.bands()));
    }

    private long coins() {
        long coins = 0;
        for (Strip strip : strips) coins += job.coins(strip.roll, strip.length);
        return coins;
    }

    private double used() {
        double used = 0;
        for (Strip strip : strips) used += job.coinsPerUnit(strip.roll) * strip.length;
        return used;
    }

    /** Another run, or the start of a new one; null where there is none to be had. */
    private Strip partner(Strip strip) {
        int at = random.nextInt(strips.size() + job.rolls.size());
        if (at < strips.size()) return strips.get(at) == strip ? null : strips.get(at);
        RollJob.Roll roll = job.rolls.get(at - strips.size());
        if (roll == strip.roll && roll.longest() == RollJob.NO_LIMIT) return null;
        long taken = strips.stream().filter(s -> s.roll == roll).count();
        return taken < roll.runs() ? new Strip(roll, List.of()) : null;
    }

    private void within(Strip strip, int most) {
        List<Block> rest = new ArrayList<>(strip.bands);
        List<Block> taken = take(rest, strip.roll.width(), most);
        long height = 0;
        long area = 0;
        for (Block band : taken) {
            height += band.height;
            area += band.area;
        }
        List<Block> blocks = broken(taken, most);
        long width = strip.roll.width();
        CutTable.Limits limits = new CutTable.Limits(width, height, height * width - area, narrowest(blocks));
        CutTable table = CutTable.of(CutTable.items(blocks), job.turn, limits, work);
        if (table == null) return;
        long now = table.height(table.full(), width);
        if (now > height) return;
        List<Block> anew = new ArrayList<>();
        table.block(table.full(), width).bands(anew);
        rest.addAll(anew);
        hot.addAll(anew);
        strip.replace(rest, strip.length + now - height);
    }

    private void between(Strip one, Strip two, int most) {
        List<Block> restOne = new ArrayList<>(one.bands);
        List<Block> restTwo = new ArrayList<>(two.bands);
        boolean fresh = restTwo.isEmpty();
        List<Block> taken = take(restOne, one.roll.width(), fresh ? most : most / 2);
        if (!fresh) taken.addAll(take(restTwo, two.roll.width(), most / 2));
        List<CutTable.Item> items = CutTable.items(broken(taken, most));
        long widest = Math.max(one.roll.width(), two.roll.width());
        CutTable table = CutTable.of(items, job.turn, CutTable.Limits.size(widest, RollJob.NO_LIMIT), work);
        if (table == null) return;
        long baseOne = restOne.stream().mapToLong(band -> band.height).sum();
        long baseTwo = restTwo.stream().mapToLong(band -> band.height).sum();
        int choice = cheapest(one, baseOne, two, baseTwo, table);
        work.spend(table.selections());
        if (choice < 0) return;
        int other = table.full() - choice;
        if (choice > 0) {
            table.block(choice, one.roll.width()).bands(restOne);
            baseOne += table.height(choice, one.roll.width());
        }
        if (other > 0) {
            table.block(other, two.roll.width()).bands(restTwo);
            baseTwo += table.height(other, two.roll.width());
        }
        one.replace(restOne, baseOne);
        two.replace(restTwo, baseTwo);
        strips.remove(two);
        if (restOne.isEmpty()) strips.remove(one);
        if (!restTwo.isEmpty()) strips.add(two);
    }

    /** What is laid on the first of two strips so that both together cost least; below 0 where they cost less as they are. */
    private int cheapest(Strip one, long baseOne, Strip two, long baseTwo, CutTable table) {
        int choice = -1;
        long choiceCoins = job.coins(one.roll, one.length) + job.coins(two.roll, two.length);
        double choiceUsed = job.coinsPerUnit(one.roll) * one.length + job.coinsPerUnit(two.roll) * two.length;
        for (int s = 0; s < table.selections(); s++) {
            long lengthOne = baseOne + (s == 0 ? 0 : table.height(s, one.roll.width()));
            if (lengthOne > one.roll.longest()) continue;
            int other = table.full() - s;
            long lengthTwo = baseTwo + (other == 0 ? 0 : table.height(other, two.roll.width()));
            if (lengthTwo > two.roll.longest()) continue;
            if (lengthOne >= RollJob.NO_LIMIT || lengthTwo >= RollJob.NO_LIMIT) continue;
            long coins = job.coins(one.roll, lengthOne) + job.coins(two.roll, lengthTwo);
            double used = job.coinsPerUnit(one.roll) * lengthOne + job.coinsPerUnit(two.roll) * lengthTwo;
            if (coins < choiceCoins || coins == choiceCoins && used <= choiceUsed) {
                choice = s;
                choiceCoins = coins;
                choiceUsed = used;
            }
        }
        return choice;
    }

    /** Takes one to four bands out, and more until they hold enough pieces to be worth a table. */
    private List<Block> take(List<Block> bands, long width, int most) {
        List<Block> taken = new ArrayList<>();
        int wanted = 1 + random.nextInt(4);
        int pieces = 0;
        while (!bands.isEmpty() && taken.size() < most && (taken.size() < wanted || pieces < most)) {
            Block band = null;
            if (taken.isEmpty() && !hot.isEmpty() && random.nextInt(10) < 7) {
                int at = random.nextInt(hot.size());
                if (bands.remove(hot.get(at))) band = hot.get(at);
                hot.remove(at);
            }
            if (band == null) band = pick(bands, width, taken.isEmpty());
            taken.add(band);
            pieces += band.pieces;
        }
        return taken;
    }

    /** Takes a band out; where asked, the one of three with the most waste. */
    private Block pick(List<Block> bands, long width, boolean byWaste) {
        int at = random.nextInt(bands.size());
        for (int i = 0; byWaste && i < 2; i++) {
            int other = random.nextInt(bands.size());
            if (bands.get(other).waste(width) > bands.get(at).waste(width)) at = other;
        }
        return bands.remove(at);
    }

    /** Breaks blocks along their last cut until there are {@code most}, those with much waste likelier. */
    private List<Block> broken(List<Block> blocks, int most) {
        List<Block> parts = new ArrayList<>(blocks);
        while (parts.size() < most) {
            int at = -1;
            double highest = -1;
            for (int i = 0; i < parts.size(); i++) {
                Block part = parts.get(i);
                if (part.join == Block.Join.NONE) continue;
                double size = (double) part.width * part.height;
                double score = random.nextDouble() * (1.05 * size - part.area);
                if (score > highest) {
                    highest = score;
                    at = i;
                }
            }
            if (at < 0) break;
            Block part = parts.get(at);
            parts.set(at, part.first);
            parts.add(part.second);
        }
        // equal heights are decided by what comes first, so the order decides which of equals is taken
        shuffle(parts);
        return parts;
    }

    private void shuffle(List<Block> blocks) {
        for (int i = blocks.size() - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            Block swap = blocks.get(i);
            blocks.set(i, blocks.get(j));
            blocks.set(j, swap);
        }
    }

    /** Lays the pieces of some bands of one run anew. */
    private void shake() {
        Strip strip = strips.get(random.nextInt(strips.size()));
        List<Block> keep = new ArrayList<>(strip.bands);
        List<Block> loose = new ArrayList<>();
        int shaken = job.pieces() >= MANY && random.nextBoolean() ? MATCHED_PIECES : SHAKEN_PIECES;
        int wanted = shaken / 2 + random.nextInt(shaken);
        while (!keep.isEmpty() && loose.size() < wanted) pick(keep, strip.roll.width(), random.nextBoolean()).singles(loose);
        List<Block> anew = loose.size() >= MANY
                ? matchedBands(loose, strip.roll.width(), 0.7 + 0.9 * random.nextDouble())
                : denseBands(loose, strip.roll.width(), pace);
        hot.clear();
        hot.addAll(anew);
        keep.addAll(anew);
        long length = 0;
        for (Block band : keep) length += band.height;
        if (length <= strip.roll.longest()) strip.replace(keep, length);
    }

    /** Lays the pieces of some bands anew, the likeliest with much waste, and keeps what comes out no longer. */
    private void rebuild() {
        Strip strip = strips.get(random.nextInt(strips.size()));
        long width = strip.roll.width();
        List<Block> keep = new ArrayList<>(strip.bands);
        List<Block> loose = new ArrayList<>();
        int wanted = REBUILT_PIECES / 3 + random.nextInt(REBUILT_PIECES);
        long before = 0;
        while (!keep.isEmpty() && loose.size() < wanted) {
            Block band = pick(keep, width, random.nextInt(10) < 7);
            before += band.height;
            band.singles(loose);
        }
        Strip anew = new Strip(strip.roll, matchedBands(loose, width, 0.5 + 1.3 * random.nextDouble()));
        for (int round = 0; round < POLISHED && !work.over(); round++) within(anew, pace.fewBlocks() - round % 2);
        hot.clear();
        if (anew.length > before || work.over() && anew.length >= before) return;
        keep.addAll(anew.bands);
        strip.replace(keep, strip.length + anew.length - before);
    }

    /** Fills bands one by one, each the densest that holds one large piece and any of some others. */
    private List<Block> denseBands(List<Block> pieces, long width, Pace pace) {
        List<Block> bands = new ArrayList<>();
        List<Block> loose = new ArrayList<>(pieces);
        shuffle(loose);
        while (!loose.isEmpty()) {
            int at = 0;
            for (int i = 1; i < loose.size(); i++)
                if (loose.get(i).area > loose.get(at).area && random.nextInt(3) > 0) at = i;
            Block large = loose.remove(at);
            Block band = null;
            if (loose.size() < pace.sample()) {
                loose.add(large);
                band = shortest(loose, width);
            } else {
                for (int attempt = 0; attempt < pace.samples(); attempt++) {
                    Block dense = denseBand(large, loose, width, pace.sample());
                    if (dense != null && (band == null || dense.density(width) > band.density(width))) band = dense;
                }
                loose.add(large);
            }
            if (band == null) {
                for (Block block : loose) bands.add(block.width <= width ? block : block.turn());
                break;
            }
            List<Block> used = new ArrayList<>();
            band.singles(used);
            for (Block piece : used) {
                int i = 0;
                while (loose.get(i).type != piece.type) i++;
                loose.remove(i);
            }
            band.bands(bands);
        }
        return bands;
    }

    /** The shortest run of these few pieces, no longer than shelves; null when the work ran out. */
    private Block shortest(List<Block> pieces, long width) {
        int[] counts = new int[job.types.length];
        long area = 0;
        for (Block piece : pieces) {
            counts[piece.type]++;
            area += piece.area;
        }
        Block shelves = null;
        for (Block shelf : Shelves.bands(job, counts, width, RollJob.NO_LIMIT, Shelves.Lie.LOW))
            shelves = shelves == null ? shelf : Block.after(shelves, shelf);
        List<CutTable.Item> items = CutTable.items(pieces);
        for (double share : FEW_WASTE) {
            CutTable.Limits limits = new CutTable.Limits(
                    width, shelves.height, (long) (share * (shelves.height * width - area)), narrowest(pieces));
            CutTable table = CutTable.of(items, job.turn, limits, work);
            if (table == null) return null;
            if (table.height(table.full(), width) < shelves.height) return table.block(table.full(), width);
        }
        return shelves;
    }

    /**
     * The densest band that holds the piece and any of some others. Little waste is allowed first, as the table is
     * then small, and more where that gives no band. Null when the work ran out.
     */
    private Block denseBand(Block piece, List<Block> others, long width, int most) {
        List<Block> sample = new ArrayList<>();
        sample.add(piece);
        for (int i = 1; i < most; i++) {
            int at = i - 1 + random.nextInt(others.size() - i + 1);
            Block other = others.get(at);
            others.set(at, others.get(i - 1));
            others.set(i - 1, other);
            sample.add(other);
        }
        List<CutTable.Item> items = CutTable.items(sample);
        long narrowest = narrowest(sample);
        double bandArea = (double) width * Math.max(piece.width, piece.height);
        long highest = 2 * Math.max(piece.width, piece.height);
        for (double share = 0.01; ; share *= 3) {
            boolean any = share > 0.2;
            long waste = any ? Long.MAX_VALUE : (long) (share * bandArea);
            CutTable.Limits limits = new CutTable.Limits(width, highest, waste, any ? 0 : narrowest);
            CutTable table = CutTable.of(items, job.turn, limits, work);
            if (table == null) return null;
            int densest = densest(table, width, any ? 0 : 1 - 1.5 * share);
            if (densest > 0) return table.block(densest, width);
        }
    }

    /** The densest selection with some of the first item, at least this dense; -1 where there is none. */
    private static int densest(CutTable table, long width, double least) {
        int densest = -1;
        double most = least;
        for (int s = 1; s < table.selections(); s++) {
            long height = table.height(s, width);
            if (table.count(s, 0) == 0 || height == RollJob.NO_LIMIT) continue;
            double density = (double) table.area(s) / height / width;
            if (density > most) {
                most = density;
                densest = s;
            }
        }
        return densest;
    }

    private long narrowest(List<Block> blocks) {
        long narrowest = Long.MAX_VALUE;
        for (Block block : blocks) narrowest = Math.min(narrowest, job.turn ? Math.min(block.width, block.height) : block.width);
        return narrowest;
    }

    /** A layout on one roll from these bands and dense ones of what is left; null where the run would be longer than is sold. */
    static Layout.Banded dense(RollJob job, RollJob.Roll roll, List<Block> bands, List<Block> left, long seed, Pace pace, RollBudget work) {
        CutSearch search = new CutSearch(job, new Layout.Banded(List.of()), 0, false, seed, pace, work);
        List<Block> all = new ArrayList<>(bands);
        all.addAll(search.denseBands(left, roll.width(), pace));
        return search.banded(roll, all);
    }

    /** The same with bands from {@link DenseBands}, and what they leave over in bands of its own. */
    static Layout.Banded matched(RollJob job, RollJob.Roll roll, double least, long seed, Pace pace, RollBudget work) {
        CutSearch search = new CutSearch(job, new Layout.Banded(List.of()), 0, false, seed, pace, work);
        return search.banded(roll, search.matchedBands(pieces(job), roll.width(), least));
    }

    private List<Block> matchedBands(List<Block> pieces, long width, double least) {
        int[] counts = new int[job.types.length];
        for (Block piece : pieces) counts[piece.type]++;
        List<Block> left = new ArrayList<>();
        List<Block> bands = new DenseBands(job, width, counts, least, random.nextLong(), work).bands(left);
        // a long look at what is left of very many would leave no time for bettering it
        bands.addAll(denseBands(left, width, left.size() > SHAKEN_PIECES ? Pace.QUICK : pace));
        return bands;
    }

    static List<Block> pieces(RollJob job) {
        List<Block> pieces = new ArrayList<>();
        for (int t = 0; t < job.types.length; t++)
            for (int i = 0; i < job.types[t].count(); i++) pieces.add(Block.piece(t, job.types[t].width(), job.types[t].height()));
        return pieces;
    }

    /** Null where the run would be longer than is sold. */
    private Layout.Banded banded(RollJob.Roll roll, List<Block> bands) {
        long length = 0;
        for (Block band : bands) length += band.height;
        return length <= roll.longest() ? new Layout.Banded(List.of(new Layout.BandedRun(roll, bands))) : null;
    }
}

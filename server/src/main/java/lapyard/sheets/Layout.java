package lapyard.sheets;

import java.util.ArrayList;
import java.util.List;

/** Runs cut from rolls. Smaller means: more of the wanted area laid, then less money, then less length paid for. */
final class Layout implements Comparable<Layout> {
    /** One run; {@code used} is the length its pieces reach. */
    record Run(RollJob.Roll roll, long used, List<Block.Laid> laid) {
        Run {
            laid = List.copyOf(laid);
        }

        static Run of(RollJob.Roll roll, List<Block> bands) {
            List<Block.Laid> laid = new ArrayList<>();
            long y = 0;
            for (Block band : bands) {
                band.lay(0, y, laid);
                y += band.height;
            }
            return new Run(roll, y, laid);
        }
    }

    /** A run as full-width bands, one after the other. */
    record BandedRun(RollJob.Roll roll, List<Block> bands) {
        BandedRun {
            bands = List.copyOf(bands);
        }
    }

    /** A straight-cut layout that can still be worked on. */
    record Banded(List<BandedRun> runs) {
        Banded {
            runs = List.copyOf(runs);
        }

        Layout layout(RollJob job) {
            return new Layout(
                    job, runs.stream().map(r -> Run.of(r.roll(), r.bands())).toList());
        }
    }

    final List<Run> runs;
    final long area;
    final long coins;
    /** What the used length would cost if it were sold by the unit. */
    final double usedCoins;

    Layout(RollJob job, List<Run> runs) {
        this.runs = List.copyOf(runs);
        long area = 0;
        long coins = 0;
        double usedCoins = 0;
        for (Run run : runs) {
            for (Block.Laid laid : run.laid()) area += laid.width() * laid.height();
            coins += job.coins(run.roll(), run.used());
            usedCoins += job.coinsPerUnit(run.roll()) * run.used();
        }
        this.area = area;
        this.coins = coins;
        this.usedCoins = usedCoins;
    }

    /** The same with runs of one roll laid end to end wherever that is sold in one piece; never dearer. */
    Layout joined(RollJob job) {
        List<Run> joined = new ArrayList<>();
        for (Run run : runs) {
            int at = 0;
            while (at < joined.size()
                    && (joined.get(at).roll() != run.roll()
                            || joined.get(at).used() + run.used() > run.roll().longest())) at++;
            if (at == joined.size()) {
                joined.add(run);
            } else {
                Run first = joined.get(at);
                List<Block.Laid> laid = new ArrayList<>(first.laid());
                for (Block.Laid one : run.laid())
                    laid.add(new Block.Laid(one.type(), one.x(), one.y() + first.used(), one.width(), one.height()));
                joined.set(at, new Run(run.roll(), first.used() + run.used(), laid));
            }
        }
        return joined.size() == runs.size() ? this : new Layout(job, joined);
    }

    @Override
    public int compareTo(Layout other) {
        if (area != other.area) return Long.compare(other.area, area);
        if (coins != other.coins) return Long.compare(coins, other.coins);
        return Double.compare(usedCoins, other.usedCoins);
    }

    boolean betterThan(Layout other) {
        return other == null || compareTo(other) < 0;
    }
}

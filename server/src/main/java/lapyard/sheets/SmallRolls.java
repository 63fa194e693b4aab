package lapyard.sheets;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The cheapest layout by straight cuts of a small set of pieces, found by looking at all of them: a {@link CutTable}
 * gives the least length of every selection on every width, and every way of sharing the pieces among runs is priced.
 */
record SmallRolls(RollJob job, CutTable table, List<CutTable.Item> items) {
    static List<CutTable.Item> items(RollJob job) {
        List<CutTable.Item> items = new ArrayList<>();
        for (int t = 0; t < job.types.length; t++) {
            RollJob.Type type = job.types[t];
            items.add(new CutTable.Item(Block.piece(t, type.width(), type.height()), type.count()));
        }
        return items;
    }

    /** @return null where the set is too large for the work */
    static SmallRolls of(RollJob job, RollBudget work) {
        List<CutTable.Item> items = items(job);
        // measured on liner pieces: 17 operations a parting at 8 pieces, 29 at 11, 46 at 14
        double operations = CutTable.partings(items) * Math.min(60, Math.max(15, 5 * job.pieces() - 26));
        if (operations > work.left()) return null;
        long widest = 0;
        for (RollJob.Roll roll : job.rolls) widest = Math.max(widest, roll.width());
        CutTable table = CutTable.of(items, job.turn, CutTable.Limits.size(widest, RollJob.NO_LIMIT), work);
        return table == null ? null : new SmallRolls(job, table, items);
    }

    /** @return the cheapest layout; null where limited rolls make the sharing a different question */
    Layout cheapest(RollBudget work) {
        List<Part> parts = share((roll, selection) -> table.height(selection, roll.width()), work);
        if (parts == null) return null;
        List<Layout.Run> runs = new ArrayList<>();
        int[] runsOf = new int[job.rolls.size()];
        for (Part part : parts) {
            runs.add(Layout.Run.of(
                    part.roll(),
                    List.of(table.block(part.selection(), part.roll().width()))));
            if (++runsOf[part.roll().index()] > part.roll().runs()) return null;
        }
        return new Layout(job, runs);
    }

    /** The pieces of one run. */
    record Part(RollJob.Roll roll, int selection) {}

    /** How long a run is that holds a selection. */
    interface Length {
        long of(RollJob.Roll roll, int selection);
    }

    /** @return the cheapest sharing of all pieces among runs of these lengths; null where there is none */
    List<Part> share(Length length, RollBudget work) {
        int selections = table.selections();
        long[] coins = new long[selections];
        double[] usedCoins = new double[selections];
        // below 0: one run of roll -1 - choice; otherwise the selection that is split off
        int[] choice = new int[selections];
        Arrays.fill(coins, RollJob.NO_LIMIT);
        coins[0] = 0;
        boolean oneRun = job.rolls.size() == 1 && job.rolls.get(0).longest() == RollJob.NO_LIMIT;
        for (int s = oneRun ? selections - 1 : 1; s < selections; s++) {
            for (RollJob.Roll roll : job.rolls) {
                if (roll.runs() == 0) continue;
                long height = length.of(roll, s);
                if (height > roll.longest() || height == RollJob.NO_LIMIT) continue;
                long price = job.coins(roll, height);
                double used = job.coinsPerUnit(roll) * height;
                if (price < coins[s] || price == coins[s] && used < usedCoins[s]) {
                    coins[s] = price;
                    usedCoins[s] = used;
                    choice[s] = -1 - roll.index();
                }
            }
        }
        if (!oneRun) {
            splits(coins, usedCoins, choice);
            work.spend((long) CutTable.partings(items));
        }
        if (coins[selections - 1] >= RollJob.NO_LIMIT) return null;
        List<Part> parts = new ArrayList<>();
        if (selections > 1) parts(selections - 1, choice, parts);
        return parts;
    }

    private void splits(long[] coins, double[] usedCoins, int[] choice) {
        int[] counts = new int[items.size()];
        int[] part = new int[items.size()];
        for (int s = 1; s < coins.length; s++) {
            int item = 0;
            while (counts[item] == items.get(item).count()) counts[item++] = 0;
            counts[item]++;
            Arrays.fill(part, 0);
            int first = 0;
            while (true) {
                item = 0;
                while (part[item] == counts[item]) {
                    first -= part[item] * table.stride(item);
                    part[item++] = 0;
                }
                part[item]++;
                first += table.stride(item);
                if (2L * first > s) break;
                long price = coins[first] + coins[s - first];
                if (price > coins[s]) continue;
                double used = usedCoins[first] + usedCoins[s - first];
                if (price < coins[s] || used < usedCoins[s] - 1e-9 * usedCoins[s]) {
                    coins[s] = price;
                    usedCoins[s] = used;
                    choice[s] = first;
                }
            }
        }
    }

    private void parts(int selection, int[] choice, List<Part> into) {
        if (choice[selection] >= 0) {
            parts(choice[selection], choice, into);
            parts(selection - choice[selection], choice, into);
        } else {
            into.add(new Part(job.rolls.get(-1 - choice[selection]), selection));
        }
    }
}

package lapyard.build;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.IntToDoubleFunction;
import java.util.function.LongBinaryOperator;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.function.ToLongFunction;

/** Every form of lambda and record that Java links at its first run, with an answer each. */
public class PlainForms implements Supplier<List<Object>> {
    private record Parts(boolean drained, byte courses, char bed, short joints, int boards, long screws, float fall, double depth, String name, int[] lengths) {}

    private record None() {}

    private interface Told {
        String word();

        default Supplier<String> twice() {
            return () -> once() + once();
        }

        private String once() {
            return word();
        }
    }

    private static class Board implements Told {
        final String section;

        Board(String section) {
            this.section = section;
        }

        @Override
        public String word() {
            return section;
        }

        protected String end() {
            return section + ".";
        }

        private static String shout(Object any) {
            return any + "!";
        }
    }

    private static final class Sleeper extends Board {
        Sleeper(String section) {
            super("old " + section);
        }

        @Override
        protected String end() {
            return "-";
        }

        Supplier<String> above() {
            return super::end;
        }
    }

    private static String joined(String first, Object... rest) {
        return first + rest.length;
    }

    private static long sum(Object... each) {
        return each.length;
    }

    @Override
    public List<Object> get() {
        List<Object> told = new ArrayList<>();
        lambdas(told, 2_000_000_000_000L, 0.5, "100x200");
        records(told);
        return told;
    }

    private void lambdas(List<Object> told, long screws, double fall, String section) {
        Function<String, Board> made = Board::new;
        IntFunction<int[]> lengths = int[]::new;
        Function<Object, String> loud = Board::shout;
        Function<Board, String> unbound = Board::end;
        Board board = made.apply(section);
        Supplier<String> bound = board::end;
        LongBinaryOperator held = (a, b) -> a + b + screws;
        DoubleUnaryOperator scaled = at -> at * fall + section.length();
        IntToDoubleFunction widened = Math::abs;
        ToLongFunction<Integer> unboxed = Integer::intValue;
        ToDoubleFunction<Integer> boxed = each -> each;
        BiFunction<String, Integer, String> many = PlainForms::joined;
        BiFunction<Integer, Integer, Integer> sums = Integer::sum;
        Function<Character, Integer> code = Character::getNumericValue;
        Runnable dropped = () -> told.add("ran");
        Runnable long0 = PlainForms::sum;
        Comparator<Told> order = Comparator.comparing(Told::word);
        dropped.run();
        long0.run();
        told.addAll(List.of(lengths.apply(3).length, loud.apply(7), unbound.apply(board), bound.get(), held.applyAsLong(1, 2), scaled.applyAsDouble(3)));
        told.addAll(List.of(widened.applyAsDouble(-4), unboxed.applyAsLong(5), boxed.applyAsDouble(6), many.apply("a", 1), sums.apply(8, 9), code.apply('7')));
        told.addAll(List.of(board.twice().get(), new Sleeper(section).above().get(), order.compare(board, new Sleeper(section)), own().get()));
        told.add(List.of(3, 1, 2).stream().sorted(Comparator.reverseOrder()).map(each -> each * 2L).reduce(0L, Long::sum));
    }

    private Supplier<String> own() {
        return () -> ((Supplier<String>) this::mine).get();
    }

    private String mine() {
        return "mine";
    }

    private static void records(List<Object> told) {
        int[] lengths = {2400};
        Parts parts = new Parts(true, (byte) 3, 'A', (short) -2, 9, 1L << 40, 0.5f, -0.0, "corner", lengths);
        List<Parts> others = List.of(new Parts(true, (byte) 3, 'A', (short) -2, 9, 1L << 40, 0.5f, -0.0, "corner", lengths),
                new Parts(false, (byte) 3, 'A', (short) -2, 9, 1L << 40, 0.5f, -0.0, "corner", lengths),
                new Parts(true, (byte) 4, 'A', (short) -2, 9, 1L << 40, 0.5f, -0.0, "corner", lengths),
                new Parts(true, (byte) 3, 'B', (short) -2, 9, 1L << 40, 0.5f, -0.0, "corner", lengths),
                new Parts(true, (byte) 3, 'A', (short) 2, 9, 1L << 40, 0.5f, -0.0, "corner", lengths),
                new Parts(true, (byte) 3, 'A', (short) -2, 8, 1L << 40, 0.5f, -0.0, "corner", lengths),
                new Parts(true, (byte) 3, 'A', (short) -2, 9, 1L << 41, 0.5f, -0.0, "corner", lengths),
                new Parts(true, (byte) 3, 'A', (short) -2, 9, 1L << 40, Float.NaN, -0.0, "corner", lengths),
                new Parts(true, (byte) 3, 'A', (short) -2, 9, 1L << 40, 0.5f, 0.0, "corner", lengths),
                new Parts(true, (byte) 3, 'A', (short) -2, 9, 1L << 40, 0.5f, -0.0, null, lengths),
                new Parts(true, (byte) 3, 'A', (short) -2, 9, 1L << 40, 0.5f, -0.0, "corner", lengths.clone()));
        others.forEach(other -> told.add(parts.equals(other)));
        Parts unknown = new Parts(true, (byte) 3, 'A', (short) -2, 9, 1, Float.NaN, Double.NaN, null, null);
        told.addAll(List.of(unknown.equals(new Parts(true, (byte) 3, 'A', (short) -2, 9, 1, Float.NaN, Double.NaN, null, null)), unknown.hashCode(), unknown.toString()));
        told.addAll(List.of(parts.equals(null), parts.equals("corner"), new None().equals(new None()), new None().hashCode(), new None().equals(parts)));
    }
}

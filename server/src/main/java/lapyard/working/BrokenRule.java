package lapyard.working;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What was given breaks a rule: which one, where, and its figures. The packages that know no garden throw it; {@code plan} makes a
 * finding of it, and {@code words} says it to a person.
 */
public final class BrokenRule extends IllegalArgumentException {
    /** The rules. A kind of finding of the same name stands behind each. */
    public enum Rule {
        /** Figures {@code name}, {@code value}, {@code least}, {@code most}. */
        FIELD_LOW,
        /** As {@link #FIELD_LOW}. */
        FIELD_HIGH,
        /** Figures {@code name}, {@code value}, {@code step}. */
        FIELD_FINE,
        /** Figures {@code what}, {@code value}. */
        FIELD_TWICE,
        /** Figures {@code name}, {@code entries}, {@code most}. */
        FIELD_MANY,
        /** Figures {@code what}, {@code value}, {@code there}: the names that there are. */
        FIELD_NO_SUCH,
        ROLL_STEP_LONG,
        ROLLS_NOT_EXACT,
        TASK_USES_LISTED,
        TASK_USES_MORE,
        TASK_CIRCLE,
        TASK_NEVER,
        TASK_UNBROKEN,
        TASKS_FAR,
        CALENDAR_EMPTY,
        CALENDAR_LISTED,
        CURRENCIES_DIFFER,
        WORKBOOK_KIND,
        WORKBOOK_DAMAGED,
        WORKBOOK_CUT,
        WORKBOOK_LARGE,
        PHOTO_KIND,
        PHOTO_DAMAGED,
        PHOTO_LARGE,
        PDF_LOCKED,
        PDF_NO_PAGE,
        PDF_UNREADABLE,
        PDF_HEAVY,
        PDF_SLOW
    }

    /** @param unit {@code mm}, a noun in the plural, or empty */
    public record Amount(double value, String unit) {
        @Override
        public String toString() {
            return unit.isEmpty() ? String.valueOf(value) : value + " " + unit;
        }
    }

    private final Rule rule;
    private final String where;
    private final Map<String, Object> figures;

    private BrokenRule(Rule rule, String where, Map<String, Object> figures) {
        super(rule + " at " + where + (figures.isEmpty() ? "" : " " + figures));
        this.rule = rule;
        this.where = where;
        this.figures = figures;
    }

    /** @param where the thing that breaks it, as its caller names it: {@code board L48} */
    public static BrokenRule of(Rule rule, String where) {
        return new BrokenRule(rule, where, Map.of());
    }

    /** The same with one more figure, as its sentence names it. */
    public BrokenRule with(String name, double value, String unit) {
        return with(name, new Amount(value, unit));
    }

    /** @param figure a text, or a list of texts that does not change */
    public BrokenRule with(String name, Object figure) {
        Map<String, Object> more = new LinkedHashMap<>(figures);
        more.put(name, figure);
        return new BrokenRule(rule, where, more);
    }

    /** @throws BrokenRule where the value is not from least to most, these included; no number is too low */
    public static void between(String where, String name, double value, double least, double most, String unit) {
        if (value >= least && value <= most) return;
        throw of(value > most ? Rule.FIELD_HIGH : Rule.FIELD_LOW, where).with("name", name).with("value", value, unit).with("least", least, unit).with("most", most, unit);
    }

    /** @throws BrokenRule where money is negative, a thousand million or more, or finer than a millionth */
    public static void money(String where, String name, BigDecimal money) {
        BigDecimal exact = money.stripTrailingZeros();
        if (money.signum() < 0 || exact.precision() - exact.scale() > 9) between(where, name, money.doubleValue(), 0, 999_999_999, "");
        if (exact.scale() > 6) throw of(Rule.FIELD_FINE, where).with("name", name).with("value", money.toPlainString()).with("step", "0.000001");
    }

    /** @throws BrokenRule where a list has more entries than {@code most} */
    public static void atMost(String where, String name, long entries, long most, String noun) {
        if (entries > most) throw of(Rule.FIELD_MANY, where).with("name", name).with("entries", entries, noun).with("most", most, noun);
    }

    /** A name that may be given once is given twice; {@code what} is what it names. */
    public static BrokenRule twice(String where, String what, String name) {
        return of(Rule.FIELD_TWICE, where).with("what", what).with("value", name);
    }

    /** What was given, as a refusal repeats it. */
    public static String cut(String given) {
        return given.length() <= 40 ? given : given.substring(0, 40) + "...";
    }

    public Rule rule() {
        return rule;
    }

    public String where() {
        return where;
    }

    /** Each an {@link Amount}, a text or a list of texts. */
    public Map<String, Object> figures() {
        return figures;
    }
}

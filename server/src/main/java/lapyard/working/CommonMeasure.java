package lapyard.working;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Collection;
import java.util.stream.LongStream;

/** The largest amount that goes into each of some without a rest. */
public final class CommonMeasure {
    private CommonMeasure() {}

    /** Of amounts of 0 or more; 1 where there is none above 0. */
    public static BigDecimal of(Collection<BigDecimal> amounts) {
        int scale = amounts.stream().mapToInt(BigDecimal::scale).reduce(0, Math::max);
        BigInteger common = amounts.stream().map(amount -> amount.setScale(scale).unscaledValue()).reduce(BigInteger.ZERO, BigInteger::gcd);
        return common.signum() == 0 ? BigDecimal.ONE : new BigDecimal(common, scale);
    }

    /** Of whole numbers of 0 or more; 1 where there is none above 0. */
    public static long of(LongStream numbers) {
        return Math.max(1, numbers.mapToObj(BigInteger::valueOf).reduce(BigInteger.ZERO, BigInteger::gcd).longValueExact());
    }
}

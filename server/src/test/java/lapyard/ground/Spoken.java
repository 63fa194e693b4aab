package lapyard.ground;

import java.util.Locale;
import lapyard.plan.Finding;

/** A finding as it is read aloud: the fact, then its ways out. */
final class Spoken {
    private Spoken() {}

    static String of(Finding finding) {
        StringBuilder spoken = new StringBuilder(finding.text()).append('.');
        String between = " ";
        for (String way : finding.ways()) {
            spoken.append(between)
                    .append(between.equals(" ") ? way : way.substring(0, 1).toLowerCase(Locale.ROOT) + way.substring(1));
            between = ", or ";
        }
        return finding.ways().isEmpty() ? spoken.toString() : spoken.append('.').toString();
    }
}

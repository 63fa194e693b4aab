package lapyard.ground;

import java.util.Locale;
import lapyard.plan.Finding;
import lapyard.plan.Told;

/** A finding as it is read aloud: the fact, then its ways out. */
final class Spoken {
    private Spoken() {}

    static String of(Finding finding) {
        StringBuilder spoken = new StringBuilder(Told.text(finding)).append('.');
        String between = " ";
        for (String way : Told.ways(finding)) {
            spoken.append(between)
                    .append(between.equals(" ") ? way : way.substring(0, 1).toLowerCase(Locale.ROOT) + way.substring(1));
            between = ", or ";
        }
        return Told.ways(finding).isEmpty() ? spoken.toString() : spoken.append('.').toString();
    }
}

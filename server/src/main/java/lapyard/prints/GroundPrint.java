package lapyard.prints;

import java.util.List;
import lapyard.diagrams.AccessSheets;
import lapyard.diagrams.SettingOutSheets;
import lapyard.diagrams.ShadeSheet;
import lapyard.drawing.Page;
import lapyard.ground.SettingOut;
import lapyard.ground.SunHours;
import lapyard.job.JobSheet;
import lapyard.plan.FindingKind;

/** Sheets about the ground. */
final class GroundPrint {
    private GroundPrint() {}

    /** @throws CannotPrint where there is no baseline to measure from */
    static SettingOut out(JobSheet sheet) {
        SettingOut out = SettingOut.of(sheet.garden(), sheet.ground().fall());
        if (out.baseline().isEmpty()) throw new CannotPrint(out.findings());
        return out;
    }

    /** @throws CannotPrint where no place and day are given */
    static SunHours sun(JobSheet sheet) {
        return SunHours.of(sheet.garden(), sheet.ground().fall()).orElseThrow(() -> CannotPrint.of(FindingKind.SUN_NO_PLACE));
    }

    static List<Page> settingOut(JobSheet sheet, PrintAsk ask) {
        return SettingOutSheets.pages(sheet.garden(), out(sheet), ask.bench(sheet));
    }

    static List<Page> access(JobSheet sheet, PrintAsk ask) {
        if (!sheet.ground().access().standard().named()) {
            throw CannotPrint.of(FindingKind.ACCESS_NO_STANDARD);
        }
        return AccessSheets.pages(sheet.ground().access(), ask.bench(sheet));
    }

    static List<Page> shade(JobSheet sheet, PrintAsk ask) {
        return List.of(ShadeSheet.page(sheet.garden(), sun(sheet), ask.bench(sheet)));
    }
}

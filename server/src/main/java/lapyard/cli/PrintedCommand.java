package lapyard.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** A command that prints what it found to standard output and what is wrong to standard error. */
abstract class PrintedCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    final PrintWriter out() {
        return spec.commandLine().getOut();
    }

    final PrintWriter err() {
        return spec.commandLine().getErr();
    }

    final int refuse(String why) {
        err().println(why);
        err().flush();
        return Lapyard.REFUSED;
    }

    /** Text of a file or a finding as one line. */
    static String line(String text) {
        return text.replaceAll("\\p{Cntrl}+", " ");
    }
}

package platecall.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Function;
import java.util.logging.Level;
import java.util.logging.Logger;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;
import platecall.intake.BadDay;
import platecall.plan.BadPlan;
import platecall.report.UnwritableFolderException;

/**
 * The command line. Exit codes: 0 fine, 1 the plan breaks a rule, misses a call or, in {@code odds}, breaks a promise, in
 * {@code safety}, has something eaten that by its readings isn't safe, 2 bad input or usage.
 */
@Command(
        name = "platecall",
        description = "Plans food on a film set: the right plate at camera, at its peak, when the camera rolls.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        subcommands = {
            NewCommand.class,
            CheckCommand.class,
            PlanCommand.class,
            ReplanCommand.class,
            AuditCommand.class,
            ConvertCommand.class,
            SchemaCommand.class,
            CopiesCommand.class,
            LooksCommand.class,
            SafetyCommand.class,
            OddsCommand.class,
            WhatIfCommand.class,
            BenchCommand.class,
        },
        footer = {
            "",
            "DAY is a folder of CSV sheets, a workbook (.xlsx) or a .json file.",
            "Exit code: 0 fine, 1 the plan breaks a rule, misses a call (odds: or a promise; safety:",
            "or food isn't safe by its readings), 2 bad input or usage."
        })
public final class Main {

    /** Held here, or the level set below would be forgotten with it. */
    private static final Logger METRICS = Logger.getLogger("io.micrometer");

    static final int FINE = 0;
    static final int NOT_READY = 1;
    static final int BAD_INPUT = 2;

    @Option(
            names = "--debug",
            scope = CommandLine.ScopeType.INHERIT,
            description = "if something goes wrong, show where in the program")
    private boolean debug;

    private Main() {}

    /** Runs a command; ends the Java machine only if the exit code is not 0, so that a caller inside it goes on. */
    public static void main(String[] args) {
        // two searches side by side register the same gauge; the metrics library would say so on the terminal
        METRICS.setLevel(Level.OFF);
        // the terminal's own encoding may be anything; all that is printed is UTF-8
        PrintWriter out = utf8(FileDescriptor.out);
        PrintWriter err = utf8(FileDescriptor.err);
        int code = run(out, err, args);
        if (code != FINE) {
            System.exit(code);
        }
    }

    private static PrintWriter utf8(FileDescriptor stream) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(stream), StandardCharsets.UTF_8), true);
    }

    /**
     * Runs a command.
     *
     * @return the exit code
     */
    static int run(PrintWriter out, PrintWriter err, String... args) {
        Main main = new Main();
        CommandLine line = new CommandLine(main).setOut(out).setErr(err);
        List.of(Long.class, long.class)
                .forEach(type -> line.registerConverter(type, text -> number(text, Long::valueOf, "whole number")));
        List.of(Integer.class, int.class)
                .forEach(type -> line.registerConverter(type, text -> number(text, Integer::valueOf, "whole number")));
        List.of(Double.class, double.class)
                .forEach(type -> line.registerConverter(type, text -> number(text, Double::valueOf, "number")));
        line.setParameterExceptionHandler((wrong, given) -> tellUsage(wrong));
        line.setExecutionExceptionHandler((failure, command, parsed) -> main.tell(failure, err));
        try {
            return line.execute(args);
        } catch (Error failure) {
            return main.tell(failure, err);
        } finally {
            out.flush();
            err.flush();
        }
    }

    private static <N> N number(String text, Function<String, N> read, String what) {
        try {
            return read.apply(text);
        } catch (NumberFormatException broken) {
            throw new TypeConversionException("[" + text + "] is not a " + what);
        }
    }

    /** What is wrong with the words of a command, how it goes, and where to read on. */
    private static int tellUsage(ParameterException wrong) {
        CommandLine command = wrong.getCommandLine();
        PrintWriter err = command.getErr();
        err.println(wrong.getMessage());
        UnmatchedArgumentException.printSuggestions(wrong, err);
        err.print("Usage: " + command.getHelp().synopsis("Usage: ".length()));
        err.println("Maybe look at " + command.getCommandSpec().qualifiedName() + " --help.");
        return BAD_INPUT;
    }

    private int tell(Throwable failure, PrintWriter err) {
        if (failure instanceof BadDay bad) {
            err.println(bad.report());
        } else if (failure instanceof BadPlan || failure instanceof UnwritableFolderException) {
            err.println(failure.getMessage());
        } else {
            err.println("Something went wrong inside Platecall: " + failure);
            err.println(debug ? "Where it happened:" : "Maybe run it again with --debug, which shows where.");
        }
        if (debug) {
            failure.printStackTrace(err);
        }
        return BAD_INPUT;
    }
}

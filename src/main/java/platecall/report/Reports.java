package platecall.report;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import platecall.day.Day;
import platecall.odds.Odds;
import platecall.plan.Plan;
import platecall.units.Moment;
import platecall.units.WholeFiles;

/** All papers, lists and pictures of one plan. */
public final class Reports {

    /** Name of the file that says what changes for those who have another plan in their hands. */
    public static final String CHANGES = "changes.csv";

    private Reports() {}

    /**
     * Every report by its file name, in the order in which they are best read. The same arguments give the same bytes.
     *
     * @param day the day that the plan is for
     * @param plan an audited plan
     * @param odds how sure it is
     * @param changes what changes for those who have another plan of the day in their hands
     * @param toSettle what is to be settled before anybody eats, a sentence each
     * @param printedAt the minute that the papers carry
     */
    public static Map<String, byte[]> of(
            Day day, Plan plan, Odds odds, Changes changes, List<String> toSettle, Moment printedAt) {
        ZonedDateTime at = printedAt.in(day.facts().zone());
        Imprint print = Imprint.of(plan, at);
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(
                "readiness.pdf",
                ReadinessPage.of(day, plan, odds, toSettle, print, Paper.A4).pdf());
        files.put(
                "readiness-letter.pdf",
                ReadinessPage.of(day, plan, odds, toSettle, print, Paper.LETTER).pdf());
        files.put("readiness.csv", ReadinessCsv.of(day, plan, odds));
        RunSheet sheet = RunSheet.of(day, plan, changes, toSettle, print, Paper.A4);
        files.put("run-sheet.pdf", sheet.pdf());
        files.put(
                "run-sheet-letter.pdf",
                RunSheet.of(day, plan, changes, toSettle, print, Paper.LETTER).pdf());
        files.put("run-sheet.html", sheet.html());
        files.put("sequence.csv", SequenceCsv.of(day, plan));
        picture(files, day, GanttCamera.of(day, plan), GanttCamera.TITLE);
        picture(files, day, GanttStations.of(day, plan), GanttStations.TITLE);
        picture(files, day, GanttHands.of(day, plan), GanttHands.TITLE);
        return files;
    }

    private static void picture(Map<String, byte[]> files, Day day, TimeChart chart, String what) {
        files.put("gantt-" + what + ".png", Image.png(chart));
        files.put("gantt-" + what + ".svg", Image.svg(chart, Gantt.title(day, what)));
    }

    /**
     * Looks whether files can be written into a folder that may not be there yet, before hours go into what comes into it. Leaves
     * nothing there.
     *
     * @throws UnwritableFolderException if not
     */
    public static void mustBeWritable(Path folder) throws UnwritableFolderException {
        mustHaveAName(folder);
        Path there = folder.toAbsolutePath().normalize();
        Deque<Path> missing = new ArrayDeque<>();
        while (!Files.exists(there) && there.getParent() != null) {
            missing.push(there);
            there = there.getParent();
        }
        if (!Files.isDirectory(there) || !Files.isWritable(there)) {
            throw new UnwritableFolderException(folder, there);
        }
        Deque<Path> made = new ArrayDeque<>();
        try {
            // some folders don't tell until somebody writes into them
            for (Path path : missing) {
                made.push(Files.createDirectories(path));
                there = path;
            }
            made.push(Files.createTempFile(there, ".", ".part"));
        } catch (IOException unwritable) {
            throw new UnwritableFolderException(folder, unwritable);
        } finally {
            made.forEach(Reports::deleteOwn);
        }
    }

    /** Deletes what is empty and was made just now. */
    private static void deleteOwn(Path path) {
        try {
            Files.deleteIfExists(path);
        } catch (IOException inUse) {
            // somebody else has put something there meanwhile
        }
    }

    private static void mustHaveAName(Path folder) throws UnwritableFolderException {
        if (folder.toString().isBlank()) {
            throw new UnwritableFolderException(folder, new FileSystemException("", null, "it has no name"));
        }
    }

    /**
     * Removes the changes that came with another plan from a folder, so that nobody takes them for those of a plan that is there now.
     *
     * @param none a file without any changes: what doesn't begin like it isn't ours
     * @return whether there were any
     * @throws UnwritableFolderException if they can't be removed
     */
    public static boolean removeChanges(Path folder, byte[] none) throws UnwritableFolderException {
        Path changes = folder.resolve(CHANGES);
        try (InputStream in = Files.newInputStream(changes)) {
            if (!Arrays.equals(in.readNBytes(none.length), none)) {
                return false;
            }
        } catch (IOException noFile) {
            return false;
        }
        try {
            Files.delete(changes);
            return true;
        } catch (IOException stuck) {
            throw new UnwritableFolderException(
                    folder,
                    new FileSystemException(
                            changes.toString(), null, CHANGES + " of another plan is there and can't be removed"));
        }
    }

    /**
     * Writes files into a folder, which is made if it isn't there; the paths as written.
     *
     * @param files bytes by file name
     * @throws UnwritableFolderException if a file can't be written, as {@link WholeFiles#write} says
     */
    public static List<Path> write(Map<String, byte[]> files, Path folder) throws UnwritableFolderException {
        mustHaveAName(folder);
        Map<Path, byte[]> there = new LinkedHashMap<>();
        files.forEach((name, bytes) -> there.put(folder.resolve(name), bytes));
        try {
            WholeFiles.write(there);
        } catch (IOException e) {
            throw new UnwritableFolderException(folder, e);
        }
        return new ArrayList<>(there.keySet());
    }
}

package platecall.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileReaderTest {

    @TempDir
    Path folder;

    private String problemsOfProject(String text) throws IOException {
        Path file = Files.writeString(folder.resolve("x.sm"), text);
        return catchThrowableOfType(BadFileException.class, () -> ProjectFile.read(file))
                .getMessage()
                .replace(file.toString(), "x.sm");
    }

    private String problemsOfJobShop(String text) throws IOException {
        Path file = Files.writeString(folder.resolve("x.jss"), text);
        return catchThrowableOfType(BadFileException.class, () -> JobShopFile.read(file))
                .getMessage()
                .replace(file.toString(), "x.jss");
    }

    private static String twelve() throws IOException {
        return Files.readString(BenchFiles.folder().resolve("twelve.sm"));
    }

    @Test
    void readsAProjectWithItsDurationsRequestsAndPrecedence() {
        Project project = BenchFiles.twelve();
        assertThat(project.tasks).isEqualTo(12);
        assertThat(project.durations).containsExactly(0, 3, 2, 5, 4, 2, 3, 4, 2, 4, 6, 0);
        assertThat(project.requests[10]).containsExactly(2, 5);
        assertThat(project.capacities).containsExactly(6, 8);
        assertThat(project.successors[4]).containsExactly(6, 7);
        assertThat(project.criticalPath).isEqualTo(14);
    }

    @Test
    void readsAJobShopAsTasksOnMachinesOfCapacityOne() {
        Project shop = BenchFiles.ft06();
        assertThat(shop.tasks).isEqualTo(36);
        assertThat(shop.horizon).isEqualTo(26 + 47 + 34 + 35 + 25 + 30);
        assertThat(shop.criticalPath).isEqualTo(47);
        assertThat(shop.requests[6]).containsExactly(0, 1, 0, 0, 0, 0);
        assertThat(shop.successors[5]).isEmpty();
    }

    @Test
    void saysEverythingThatIsWrongWithAProjectByLine() throws IOException {
        String text = twelve().replace("5 1 2 7 8", "5 2 3 7 8").replace("\n11 1 6 2 5", "\n11 1 six 2");
        assertThat(problemsOfProject(text))
                .isEqualToNormalizingNewlines("x.sm:13: job 5 has 2 modes; only 1 can be planned\n"
                        + "x.sm:13: 2 successors where 3 are announced\n"
                        + "x.sm:34: 'six' is not a whole number\n"
                        + "x.sm:34: 1 requests for 2 resources");
    }

    @Test
    void saysWhatIsMissingFromAProject() throws IOException {
        assertThat(problemsOfProject("nothing here"))
                .isEqualToNormalizingNewlines("x.sm: there is no line 'jobs ... : number'\n"
                        + "x.sm: there is no line '- renewable ... : number'\n"
                        + "x.sm: there is no line '- nonrenewable ... : number'\n"
                        + "x.sm: there is no line '- doubly constrained ... : number'");
        assertThat(problemsOfProject(twelve().replace("\n7 1 3 3 1", "").replace("\n6 8\n", "\n")))
                .isEqualToNormalizingNewlines(
                        "x.sm: there are no resource availabilities\nx.sm: job 7 is missing from the requests");
    }

    @Test
    void refusesACircleAndARequestAboveCapacity() throws IOException {
        assertThat(problemsOfProject(twelve().replace("\n9 1 1 12", "\n9 1 1 4")))
                .isEqualTo("x.sm: the precedence runs in a circle at or before tasks 4, 9");
        assertThat(problemsOfProject(twelve().replace("\n6 8\n", "\n4 8\n")))
                .isEqualTo("x.sm: task 2 asks for 5 of resource 1, which has 4; "
                        + "task 10 asks for 5 of resource 1, which has 4");
    }

    @Test
    void saysEverythingThatIsWrongWithAJobShopByLine() throws IOException {
        assertThat(problemsOfJobShop("")).isEqualTo("x.jss: there is no line with the number of jobs and machines");
        assertThat(problemsOfJobShop("# a remark\n2 2\n0 3 1 4\n0 3 2 x\n"))
                .isEqualToNormalizingNewlines(
                        "x.jss:4: 'x' is not a whole number\nx.jss:4: machine 2 is not one of 0 to 1");
        assertThat(problemsOfJobShop("2 2\n0 3 1 4\n")).isEqualTo("x.jss: 1 job lines where 2 are announced");
        assertThat(problemsOfJobShop("1 2\n0 3 1\n"))
                .isEqualTo("x.jss:2: 3 numbers where 2 pairs of machine and time are due");
        assertThat(problemsOfJobShop("1 1\n0 -3\n")).isEqualTo("x.jss: task 1 has the duration -3");
    }

    @Test
    void refusesASheetOfBestMakespansWithoutItsColumns() throws IOException {
        Files.writeString(folder.resolve("best-known.csv"), "name,value\n");
        assertThat(catchThrowableOfType(BadFileException.class, () -> BestKnown.of(folder)))
                .hasMessageEndingWith("the first line must name the columns file and best_known_makespan");
    }

    private BestKnown bestKnown(String text) throws IOException, BadFileException {
        Files.writeString(folder.resolve("best-known.csv"), text);
        return BestKnown.of(folder);
    }

    private String problemsOfBestKnown(String text) {
        return catchThrowableOfType(BadFileException.class, () -> bestKnown(text))
                .getMessage()
                .replace(folder.resolve("best-known.csv").toString(), "best-known.csv");
    }

    @Test
    void bestMakespansMayStandAsSpreadsheetsWriteThem() throws IOException, BadFileException {
        for (String text : List.of(
                "file,best_known_makespan\na.sm,43\n",
                "\uFEFFfile, best_known_makespan\r\n\r\na.sm, 43\r\n",
                "\"best_known_makespan\";\"source\";\"file\"\n\"43\";\"Kim; Lee\";\"a.sm\"\n;;\n",
                "File\tBest_known_makespan\na.sm\t43\nb.sm\t")) {
            BestKnown known = bestKnown(text);
            assertThat(known.makespan("a.sm")).as(text).hasValue(43);
            assertThat(known.makespan("b.sm")).isEmpty();
        }
    }

    @Test
    void bestMakespansThatCannotBeAreToldByRow() throws IOException {
        Files.writeString(folder.resolve("j301_1.sm"), "");
        Files.writeString(folder.resolve("ft06.jss"), "");
        assertThat(problemsOfBestKnown("""
                        file,best_known_makespan
                        a.sm,0
                        b.sm,-5

                        c.sm,4.5
                        d.sm,43,2
                        e.sm,43
                        e.sm,44
                        j301_l.sm,43
                        j301_2.sm,47
                        FT06,55
                        """)).isEqualToNormalizingNewlines("""
                        best-known.csv:2: '0' is not a whole number above 0
                        best-known.csv:3: '-5' is not a whole number above 0
                        best-known.csv:5: '4.5' is not a whole number above 0
                        best-known.csv:6: 3 cells where 2 are due
                        best-known.csv:8: 'e.sm' has row 7 already. Maybe remove one of the two.
                        best-known.csv:11: 'FT06' is not a file of this folder. Maybe ft06.jss.
                        best-known.csv:9: 'j301_l.sm' is not a file of this folder. Maybe j301_1.sm.""");
        assertThat(problemsOfBestKnown("file,best_known_makespan\n\"a.sm,43\n"))
                .isEqualTo(
                        "best-known.csv: is not CSV: a quotation mark is opened and not closed, or stands in a cell");
    }

    @Test
    void aBestMakespanThatNoScheduleCanReachIsTold() throws IOException, BadFileException {
        BestKnown known = bestKnown("file,best_known_makespan\ntwelve.sm,13\nft06.jss,55\n");
        assertThat(known.impossible(BenchFiles.twelve()))
                .hasValueSatisfying(problem -> assertThat(problem)
                        .endsWith("best-known.csv:2: '13' is less than any schedule of twelve.sm can take"));
        assertThat(known.impossible(BenchFiles.ft06())).isEmpty();
        assertThat(bestKnown("file,best_known_makespan\ntwelve.sm,15\n").impossible(BenchFiles.twelve()))
                .isPresent();
    }
}

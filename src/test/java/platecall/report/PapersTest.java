package platecall.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import platecall.day.Absence;
import platecall.day.Day;
import platecall.day.TestDays;
import platecall.plan.Breach;
import platecall.plan.Plan;
import platecall.plan.Plan.Readiness;
import platecall.plan.Rule;
import platecall.plan.TestPlans;
import platecall.report.RunSheet.Line;
import platecall.report.RunSheet.Section;
import platecall.units.Moment;

/** Run sheets and the readiness page, as printed. */
class PapersTest {

    private static final double POINTS_PER_MM = 72 / 25.4;
    private static final double FOOT_MM = 17;

    private static Imprint imprint(Day day, Plan plan) {
        return Imprint.of(
                plan,
                Moment.of(day.facts().date().atTime(0, 30).atZone(day.facts().zone()))
                        .in(day.facts().zone()));
    }

    private static RunSheet sheet(Day day, Plan plan, String paper) {
        return RunSheet.of(day, plan, imprint(day, plan), paper);
    }

    private static List<Section> sections(RunSheet sheet) {
        return Stream.concat(sheet.people().stream(), sheet.stations().stream()).toList();
    }

    private static byte[] innSheet;

    /** The inn's run sheet, printed once. */
    private static byte[] innSheet() {
        if (innSheet == null) {
            innSheet = sheet(InnPlans.day(), InnPlans.plan(), "A4").pdf();
        }
        return innSheet;
    }

    private static List<String> pages(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<String> pages = new ArrayList<>();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(document).replace("\r", ""));
            }
            return pages;
        }
    }

    @Test
    void everyPageSaysWhoseItIsAndWhichOfHowMany() throws IOException {
        RunSheet sheet = sheet(InnPlans.day(), InnPlans.plan(), "A4");
        List<String> pages = pages(innSheet());
        List<String> names = sections(sheet).stream().map(Section::name).toList();
        assertThat(names)
                .startsWith("Ada", "Bruno", "Cleo", "Dmitri", "Élodie", "Farah", "hob")
                .contains("freezer");
        List<String> headings = sections(sheet).stream()
                .map(section -> section.name() + " " + section.about())
                .toList();
        TreeSet<String> seen = new TreeSet<>();
        int together = 0;
        for (int i = 0; i < pages.size(); i++) {
            String page = pages.get(i);
            assertThat(page)
                    .contains("page " + (i + 1) + " of " + pages.size())
                    .contains("Printed 2026-03-14 00:30 · plan " + sheet.print().planVersion() + " · Platecall 0.1.0")
                    .contains("licensed practice decide")
                    .containsPattern("time what (where|who), setup\n");
            List<String> onPage = page.lines().filter(headings::contains).toList();
            assertThat(onPage).isNotEmpty();
            boolean ofPerson = onPage.stream()
                    .anyMatch(line -> headings.indexOf(line) < sheet.people().size());
            assertThat(onPage).hasSizeLessThanOrEqualTo(ofPerson ? 1 : headings.size());
            seen.addAll(onPage);
            together = Math.max(together, onPage.size());
        }
        assertThat(together).as("stations on one page").isGreaterThan(1);
        assertThat(seen).containsExactlyInAnyOrderElementsOf(headings);
    }

    @Test
    void noRowIsSplitOverPages() throws IOException {
        for (String page : pages(innSheet())) {
            String body = page.split("time what (where|who), setup\n")[1];
            assertThat(body.lines().findFirst().orElseThrow())
                    .matches("\\d\\d:\\d\\d.*|(Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day .*");
        }
    }

    @Test
    void linesOnPaperAreTheLinesOfTheSheet() throws IOException {
        RunSheet sheet = sheet(InnPlans.day(), InnPlans.plan(), "A4");
        String all = String.join("\n", pages(innSheet()));
        List<String> times =
                all.lines().filter(line -> line.matches("\\d\\d:\\d\\d")).toList();
        assertThat(times)
                .containsExactlyElementsOf(sections(sheet).stream()
                        .flatMap(section -> section.lines().stream())
                        .map(Line::time)
                        .toList());
    }

    @Test
    void typeIsBigEnoughForArmsLength() throws IOException {
        List<Float> small = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(innSheet())) {
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition text) {
                    boolean foot = text.getPageHeight() - text.getY() < FOOT_MM * POINTS_PER_MM;
                    if (!foot && text.getFontSize() < 14) {
                        small.add(text.getFontSize());
                    }
                }
            };
            stripper.getText(document);
        }
        assertThat(small).isEmpty();
    }

    @Test
    void papersHaveTheSizeThatTheyAreFor() throws IOException {
        EggDay eggs = new EggDay();
        for (String paper : List.of("A4", "letter")) {
            PDRectangle size = paper.equals("A4") ? PDRectangle.A4 : PDRectangle.LETTER;
            try (PDDocument document =
                    Loader.loadPDF(sheet(eggs.day(), eggs.plan(), paper).pdf())) {
                assertThat(document.getPage(0).getMediaBox().getWidth())
                        .isCloseTo(size.getWidth(), org.assertj.core.api.Assertions.within(1f));
                assertThat(document.getPage(0).getMediaBox().getHeight())
                        .isCloseTo(size.getHeight(), org.assertj.core.api.Assertions.within(1f));
            }
        }
    }

    @Test
    void aPersonReadsEveryDeedInOrder() {
        EggDay eggs = new EggDay();
        List<Section> sections = sections(sheet(eggs.day(), eggs.plan(), "A4"));
        assertThat(sections).extracting(Section::name).containsExactly("Ada", "oven", "fridge");
        assertThat(told(sections.get(0)))
                .containsExactly(
                        "02:00 2 min | Bake: put in | Baked egg hero\u00a01\u20112 | 180 °C, until 02:20 | oven, 2 trays | S1",
                        "02:17 3 min | Bake: take out | Baked egg hero\u00a01\u20112"
                                + " | core 68 °C by probe, then to fridge, first out 03:50 | oven, 2 trays | S1",
                        "03:00 30 min | Meal break |   | back at 03:30 |  | ",
                        "03:50 4 min | Crack | Baked egg hero\u00a01 |  | bench | S1",
                        "03:54 6 min | Carry | Baked egg hero\u00a01 | arrive by 04:00 | to set | S1",
                        "04:00 4 min | Crack | Baked egg hero\u00a02 |  | bench | S1",
                        "04:04 6 min | Carry | Baked egg hero\u00a02 | arrive by 04:10 | to set | S1");
        assertThat(told(sections.get(1)))
                .containsExactly(
                        "01:44 16 min | Set to 180 °C |   | must be there by 02:00 |  | ",
                        "02:00 20 min | Bake | Baked egg hero\u00a01\u20112 | 180 °C, until 02:20, takes 2 of 4 trays | Ada | S1");
        assertThat(told(sections.get(2)))
                .containsExactly("02:20 100 min | Store | Baked egg hero\u00a01\u20112"
                        + " | after bake, out from 03:50 to 04:00,"
                        + " discard each 240 min after it comes out, the first by 07:50 |  | S1");
    }

    @Test
    void whoIsAwayOverNightIsBackOnADate() {
        Day day = TestDays.firstEgg()
                .person(
                        "Cleo",
                        person -> person.away = List.of(
                                new Absence.During(TestDays.span("2026-03-13T12:00", "2026-03-15T12:00")),
                                new Absence.During(TestDays.span("2026-03-15T13:00", "2026-03-15T14:00"))))
                .build();

        assertThat(sheet(day, TestPlans.of(day).build(), "A4").people().get(0).lines())
                .extracting(line -> line.dateBefore() + ", " + line.time() + " " + line.what() + " " + line.notes())
                .containsExactly(
                        "Friday 13 March 2026, 12:00 Away [back at Sun 15 Mar 12:00]",
                        "Sunday 15 March 2026, 13:00 Away [back at 14:00]");
    }

    private static List<String> told(Section section) {
        return section.lines().stream()
                .map(line -> line.time() + " " + line.minutes() + " | " + line.what() + " | " + line.dish() + " "
                        + line.copies() + " | " + String.join(", ", line.notes()) + " | " + line.where() + " | "
                        + line.setup())
                .toList();
    }

    @Test
    void dressingAndAllergensAreToldOnEveryLineOfTheDish() throws IOException {
        EggDay eggs = new EggDay();
        eggs.edible = false;
        String first = pages(sheet(eggs.day(), eggs.plan(), "A4").pdf()).get(0);
        assertThat(first.split("DO NOT EAT", -1)).hasSize(7);
        assertThat(first.split("contains egg", -1)).hasSize(7);
        eggs.edible = true;
        assertThat(pages(sheet(eggs.day(), eggs.plan(), "A4").pdf()).get(0)).doesNotContain("DO NOT EAT");
    }

    @Test
    void datesStandWhereTheyBegin() {
        Section freezer = sheet(InnPlans.day(), InnPlans.plan(), "A4").stations().stream()
                .filter(section -> section.name().equals("freezer"))
                .findFirst()
                .orElseThrow();
        assertThat(freezer.lines().get(0).dateBefore()).isEqualTo("Friday 13 March 2026");
        assertThat(freezer.lines().get(0).notes()).anyMatch(note -> note.contains("Sat 14 Mar"));
        assertThat(freezer.lines().stream().map(Line::dateBefore).filter(date -> !date.isEmpty()))
                .doesNotHaveDuplicates();
    }

    @Test
    void timesThatAreTwiceInANightCarryTheirOffset() throws IOException {
        // Europe/Berlin, 25 October 2026: 03:00 CEST is 02:00 CET (IANA time zone database)
        EggDay eggs = new EggDay(ZoneId.of("Europe/Berlin"), LocalDate.of(2026, 10, 25));
        assertThat(sheet(eggs.day(), eggs.plan(), "A4").people().get(0).lines())
                .extracting(Line::time)
                .startsWith("02:00 +02", "02:17 +02", "02:00 +01", "02:50 +01");
    }

    @Test
    void hostileNamesAreTextOnThePage() throws Exception {
        EggDay eggs = new EggDay();
        eggs.dishName = "<script>alert('x')</script> & \"pie\" ]]>\u0007";
        eggs.person = "</td><h1>Ada";
        eggs.setup = "<b>1";
        Day day = eggs.day();
        Plan plan = eggs.plan();
        String html = new String(sheet(day, plan, "A4").html(), StandardCharsets.UTF_8);
        assertThat(html).contains("&lt;script&gt;").doesNotContain("<script", "<h1>", "<b>1", "\u0007");
        assertThat(pages(sheet(day, plan, "A4").pdf()).get(0))
                .contains("<script>alert('x')</script>")
                .contains("</td><h1>Ada");
        String readiness = Html.of("readiness.jte", ReadinessPage.of(day, plan, imprint(day, plan)));
        assertThat(readiness).contains("&lt;b&gt;1").doesNotContain("<b>1");
        assertThat(DocumentBuilderFactory.newInstance()
                        .newDocumentBuilder()
                        .parse(new ByteArrayInputStream(
                                html.replace("<!DOCTYPE html>", "").getBytes(StandardCharsets.UTF_8)))
                        .getDocumentElement()
                        .getTagName())
                .isEqualTo("html");
    }

    @Test
    void samePlanAndMinuteGiveTheSameBytes() {
        EggDay eggs = new EggDay();
        assertThat(Reports.of(eggs.day(), eggs.plan(), eggs.at(0, 30)))
                .containsExactlyInAnyOrderEntriesOf(Reports.of(eggs.day(), eggs.plan(), eggs.at(0, 30)));
    }

    @Test
    void planVersionTellsPlansApart() {
        EggDay eggs = new EggDay();
        String one = imprint(eggs.day(), eggs.plan()).planVersion();
        assertThat(one)
                .matches("[0-9A-F]{6}")
                .isEqualTo(imprint(eggs.day(), eggs.plan()).planVersion());
        assertThat(imprint(eggs.day(), eggs.plan(List.of(), 1)).planVersion()).isNotEqualTo(one);
    }

    private static ReadinessPage readiness(Day day, Plan plan) {
        return ReadinessPage.of(day, plan, imprint(day, plan));
    }

    @Test
    void theAnswerIsOneLine() {
        EggDay eggs = new EggDay();
        assertThat(readiness(eggs.day(), eggs.plan()).answer()).isEqualTo("The setup is ready at its call.");
        assertThat(readiness(eggs.day(), eggs.plan(List.of(), 7)).answer())
                .isEqualTo("1 of 1 setup late: S1 by 7 min.");
        assertThat(readiness(InnPlans.day(), InnPlans.plan()).answer())
                .isEqualTo("All 12 setups are ready at their calls.");
        Plan crowded = crowded(12);
        assertThat(readiness(InnPlans.day(), crowded).answer())
                .isEqualTo("6 of 12 setups late: 1A by 12 min, 1C not at all, 3A by 12 min, 4 not at all and 2 more.");
    }

    @Test
    void aSetupWhoseLaterPlatesAreLateIsNotCalledReady() {
        EggDay eggs = new EggDay();
        Plan late = eggs.plan(List.of(), 3);
        Readiness inTime = eggs.plan().verdict().setups().get(0);
        ReadinessPage page =
                readiness(eggs.day(), late.withVerdict(new Plan.Verdict(List.of(), 3, 0, List.of(inTime))));
        assertThat(page.rows().get(0).stateWords()).isEqualTo("READY, THEN SHORT");
        assertThat(page.answer()).isEqualTo("The setup is ready at its call, but later plates run short: S1.");
        assertThat(page.good()).isFalse();
    }

    @Test
    void everyStateIsInWords() throws IOException {
        List<String> pages = pages(readiness(InnPlans.day(), crowded(15)).pdf());
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0))
                .contains("READY", "LATE 12 min", "NOT READY", "−12 min")
                .contains("The plan breaks 4 rules, first of them:")
                .contains("hob serves 5 pots");
        assertThat(pages.get(0).split("hob serves 5 pots", -1)).hasSize(4);
    }

    @Test
    void readinessIsOnePageHoweverManySetupsThereAre() throws IOException {
        for (int setups : new int[] {1, 15, 40}) {
            assertThat(pages(readiness(InnPlans.day(), crowded(setups)).pdf())).hasSize(1);
        }
    }

    /** The inn's plan with a verdict on {@code count} setups, of which every other is late or lacks something. */
    private static Plan crowded(int count) {
        Plan plan = InnPlans.plan();
        List<Readiness> known = plan.verdict().setups();
        List<Readiness> setups = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Readiness from = known.get(i % known.size());
            boolean late = i % 4 == 0;
            boolean missing = i % 4 == 2;
            setups.add(new Readiness(
                    from.setup(),
                    from.call().plus(i / known.size()),
                    missing ? Optional.empty() : Optional.of(from.call().plus(late ? 12 : -3)),
                    missing ? 0 : late ? -12 : 3,
                    from.heroPeakTo(),
                    from.resetsQueued(),
                    from.nextResetAt(),
                    missing
                            ? "Not makeable: soup hero 1, soup hero 2"
                            : late
                                    ? "LATE by up to 12 min: pie hero 1, pie hero 2, loaf background 1"
                                    : "Ready 3 min before call"));
        }
        Breach breach = new Breach(Rule.CAPACITY, 5, "hob serves 5 pots at 11:15, but has 4 burners, for 5 min");
        return plan.withVerdict(new Plan.Verdict(List.of(breach, breach, breach, breach), 12, 0, setups));
    }
}

package platecall.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
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
import platecall.audit.Audit;
import platecall.day.Absence;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Part;
import platecall.day.Release;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.day.Use;
import platecall.odds.Odds;
import platecall.odds.TestOdds;
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

    private static RunSheet sheet(Day day, Plan plan, Paper paper) {
        return RunSheet.of(day, plan, Changes.none(day, plan), List.of(), imprint(day, plan), paper);
    }

    private static List<Section> sections(RunSheet sheet) {
        return Stream.concat(sheet.people().stream(), sheet.stations().stream()).toList();
    }

    private static byte[] innSheet;

    /** The inn's run sheet, printed once. */
    private static byte[] innSheet() {
        if (innSheet == null) {
            innSheet = sheet(InnPlans.day(), InnPlans.plan(), Paper.A4).pdf();
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
        RunSheet sheet = sheet(InnPlans.day(), InnPlans.plan(), Paper.A4);
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
        RunSheet sheet = sheet(InnPlans.day(), InnPlans.plan(), Paper.A4);
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
        for (Paper paper : Paper.values()) {
            PDRectangle size = paper == Paper.A4 ? PDRectangle.A4 : PDRectangle.LETTER;
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
        List<Section> sections = sections(sheet(eggs.day(), eggs.plan(), Paper.A4));
        assertThat(sections).extracting(Section::name).containsExactly("Ada", "oven", "fridge");
        assertThat(told(sections.get(0)))
                .containsExactly(
                        "01:44  | Set oven to 180 °C |   | must be there by 02:00, takes 16 min by itself | oven | ",
                        "02:00 2 min | Bake: put in | Baked egg hero\u00a01\u20112 | 180 °C, until 02:20 | oven, 2 trays | S1",
                        "02:17 3 min | Bake: take out | Baked egg hero\u00a01\u20112"
                                + " | core 68 °C by probe: ____ °C, then to fridge, first out 03:50 | oven, 2 trays | S1",
                        "03:00 30 min | Meal break |   | back at 03:30 |  | ",
                        "03:50 4 min | Crack | Baked egg hero\u00a01 |  | bench | S1",
                        "03:54 6 min | Carry | Baked egg hero\u00a01 | arrive by 04:00 | to set | S1",
                        "04:00 4 min | Crack | Baked egg hero\u00a02 |  | bench | S1",
                        "04:04 6 min | Carry | Baked egg hero\u00a02 | arrive by 04:10 | to set | S1");
        assertThat(told(sections.get(1)))
                .containsExactly(
                        "01:44  | Set to 180 °C |   | must be there by 02:00, takes 16 min by itself | Ada | ",
                        "02:00 20 min | Bake | Baked egg hero\u00a01\u20112 | 180 °C, until 02:20, takes 2 of 4 trays | Ada | S1");
        assertThat(told(sections.get(2)))
                .containsExactly("02:20 100 min | Store | Baked egg hero\u00a01\u20112"
                        + " | after bake, out from 03:50 to 04:00,"
                        + " if it stays out discard each 240 min after it comes out, the first by 07:50 |  | S1");
    }

    /** Two eggs that were baked one by one are baked together now. */
    @Test
    void whatWasDoneAtSeveralTimesIsToldCopyByCopy() {
        EggDay eggs = new EggDay();
        List<Plan.Work> now = eggs.plan().work();
        List<Plan.Work> old = new ArrayList<>(now.subList(1, now.size()));
        for (int egg : List.of(1, 2)) {
            Plan.Work bake = now.get(0);
            old.add(new Plan.Work(
                    "old" + egg,
                    bake.kind(),
                    bake.dish(),
                    bake.step(),
                    List.of(bake.copies().get(egg - 1)),
                    eggs.span(2, 10 * egg, 20),
                    bake.stations(),
                    bake.ovenCelsius(),
                    bake.hands(),
                    List.of()));
        }
        Plan before = eggs.doing(old);
        Changes changes = Changes.of(eggs.day(), before, eggs.plan(), before, Map.of());
        RunSheet sheet =
                RunSheet.of(eggs.day(), eggs.plan(), changes, List.of(), imprint(eggs.day(), eggs.plan()), Paper.A4);

        assertThat(told(sections(sheet).get(0)))
                .anyMatch(line -> line.contains("hero 1 was 02:10; hero 2 was 02:20, 180 °C, until 02:20"));
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

        assertThat(sheet(day, TestPlans.of(day).build(), Paper.A4)
                        .people()
                        .get(0)
                        .lines())
                .extracting(line -> line.dateBefore() + ", " + line.time() + " " + line.what() + " " + line.notes())
                .containsExactly(
                        "Friday 13 March 2026, 12:00 Away [back at Sun 15 Mar 12:00]",
                        "Sunday 15 March 2026, 13:00 Away [back at 14:00]");
    }

    /** Egg 2 has been shown at 04:13, and Ada has it in her hands until 04:10: she can be there and back if the walk takes 3 minutes. */
    @Test
    void whoBringsFoodBackHasTheMinutesForTheWalk() {
        EggDay eggs = new EggDay();
        eggs.heldIn = Optional.of("fridge");
        eggs.helpers = List.of("Ben");
        String back = "04:13  | Bring back to fridge | Baked egg hero\u00a02";
        eggs.walk = 3;
        List<Section> near = sections(sheet(eggs.day(), eggs.plan(), Paper.A4));
        assertThat(told(near.get(0)))
                .anyMatch(line -> line.startsWith(back + " | from set, leave 04:10, back 04:16, keep until"));
        assertThat(told(near.get(1))).noneMatch(line -> line.startsWith(back));
        eggs.walk = 4;
        List<Section> far = sections(sheet(eggs.day(), eggs.plan(), Paper.A4));
        assertThat(told(far.get(0))).noneMatch(line -> line.startsWith(back));
        assertThat(told(far.get(1))).anyMatch(line -> line.startsWith(back) && !line.contains("or whoever"));
    }

    @Test
    void foodThatIsKeptUntilReleaseIsOnPaper() {
        EggDay eggs = new EggDay();
        eggs.heldIn = Optional.of("fridge");
        List<Section> sections = sections(sheet(eggs.day(), eggs.plan(), Paper.A4));
        assertThat(told(sections.get(0)))
                .contains(
                        "04:03  | Bring back to fridge | Baked egg hero\u00a01"
                                + " | from set, or whoever comes from there, keep until released 04:20, throw nothing away before | fridge | S1");
        eggs.helpers = List.of("Ben");
        assertThat(told(sections(sheet(eggs.day(), eggs.plan(), Paper.A4)).get(1)))
                .as("Ada has egg 2 in her hands then")
                .containsExactly("04:03  | Bring back to fridge | Baked egg hero\u00a01"
                        + " | from set, keep until released 04:20, throw nothing away before | fridge | S1");
        assertThat(told(sections.get(2)))
                .contains("04:03 17 min | Keep for release | Baked egg hero\u00a01"
                        + " | keep until released 04:20, throw nothing away before | Ada | S1");
    }

    /** The kitchen closes at 18:00, and the egg's take is over at 18:03. */
    @Test
    void whereNobodyIsThereToBringFoodBackSomebodyIsToBeFound() {
        Day day = TestDays.firstEgg()
                .setup("S1", "17:58", setup -> setup.release = new Release.At(TestDays.at("18:30")))
                .dish("egg", dish -> dish.heldIn = Optional.of("fridge"))
                .station("fridge", Station.Kind.FRIDGE, 4, fridge -> {})
                .build();
        Plan plan = TestPlans.of(day)
                .step("egg", "plate", 1, "17:55-17:56", plate -> plate.by("Ana"))
                .build();
        assertThat(told(sections(sheet(day, plan, Paper.A4)).get(0)))
                .contains(
                        "18:03  | Bring back to fridge | Egg hero\u00a01 | from kitchen, nobody is on then: find somebody,"
                                + " keep until released 18:30, throw nothing away before | fridge | S1");
        assertThat(new String(SequenceCsv.of(day, plan), StandardCharsets.UTF_8))
                .contains(",Ana,no,nobody is on then: find somebody; from kitchen; keep until released 18:30");
    }

    /** Called at 10:00 with two takes until 10:20, the egg comes at 10:08; the pan is there from six to noon only. */
    @Test
    void aHandDoubleOfALateSetupIsToldSoAndAStationItsHours() {
        Day day = TestDays.firstEgg()
                .person("Ben", ben -> ben.away = List.of(new Absence.HandDouble("S1")))
                .need("S1", "egg", "plate", need -> need.copies(1))
                .station(
                        "burners",
                        Station.Kind.BURNERS,
                        2,
                        burners -> burners.hours = List.of(TestDays.span("06:00-12:00")))
                .build();
        Plan plan = TestPlans.of(day)
                .step("egg", "fry", 1, "10:02-10:06", fry -> fry.on("burners", 1))
                .step("egg", "plate", 1, "10:07-10:08", plate -> plate.by("Ana"))
                .build();
        RunSheet sheet = sheet(day, plan.withVerdict(Audit.of(day, plan)), Paper.A4);
        assertThat(told(sections(sheet).get(1)))
                .anySatisfy(row -> assertThat(row)
                        .startsWith("10:00 20 min | Hand double in setup S1")
                        .contains("food 8 min late: maybe back as much later, back at 10:20"));
        assertThat(sheet.stations().get(0).about()).endsWith(", kitchen, open 06:00\u201312:00");
    }

    /** FDA Food Code 3-501.19(B): four hours from 57 °C. The soup of 11:30 is eaten in the take that is shot, that of 12:20 is to be thrown away by 16:20. */
    @Test
    void whatIsEatenInATakeThatIsShotIsNotToldToTheSet() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "12:00", setup -> setup.takes(2).shot(1, "12:40"))
                .dish("soup", dish -> dish.controlled = true)
                .need("S1", "soup", "cook", need -> {
                    need.copies(2);
                    need.eatenBy = List.of("Guest");
                })
                .step("soup", "cook", 30, step -> {
                    step.core = Optional.of(75.0);
                    step.hands = 1;
                })
                .person("Ana", person -> {})
                .diner("Guest")
                .build();
        TestPlans plan = TestPlans.of(day)
                .step("soup", "cook", 1, "11:00-11:30", work -> work.by("Ana"))
                .step("soup", "cook", 2, "11:50-12:20", work -> work.by("Ana"));
        assertThat(ReadinessPage.discardBy(day, plan.build())).containsExactly(Map.entry("S1", TestDays.at("15:30")));
        assertThat(ReadinessPage.discardBy(day, plan.asOf("12:05").build()))
                .containsExactly(Map.entry("S1", TestDays.at("16:20")));
    }

    /** FDA Food Code 3-501.19(B): four hours from 57 °C, so what was cooked by 11:30 is thrown away by 15:30, whatever is kept with it. */
    @Test
    void foodThatIsKeptTogetherHasTheEarliestTimeAfterWhichItMustNotBeEaten() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "12:00", setup -> setup.release = new Release.At(TestDays.at("13:00")))
                .dish("soup", dish -> {
                    dish.controlled = true;
                    dish.heldIn = Optional.of("fridge");
                })
                .need("S1", "soup", "cook", need -> {
                    need.copies(1);
                    need.part = Part.BACKGROUND;
                })
                .need("S1", "soup", "cook", need -> {
                    need.copies(2);
                    need.plates = 2;
                    need.eatenBy = List.of("Guest");
                })
                .step("soup", "cook", 30, step -> {
                    step.core = Optional.of(75.0);
                    step.hands = 1;
                })
                .station("fridge", Station.Kind.FRIDGE, 9, station -> {})
                .person("Ana", person -> {})
                .diner("Guest")
                .build();
        TestPlans plan = TestPlans.of(day);
        String[] copies = {"S1/soup/cook/background#1", "S1/soup/cook/hero#1", "S1/soup/cook/hero#2"};
        String[] times = {"10:30-11:00", "11:20-11:50", "11:00-11:30"};
        for (int i = 0; i < copies.length; i++) {
            plan.add(Plan.Work.Kind.STEP, "soup", "cook", copies[i], TestDays.span(times[i]), work -> work.by("Ana"));
        }
        assertThat(told(sections(sheet(day, plan.build(), Paper.A4)).get(0)))
                .filteredOn(line -> line.contains("Bring back"))
                .singleElement()
                .asString()
                .contains("DO NOT EAT after 15:30");
    }

    /** The first take is 7 minutes late, and with it the second, and the end of the last. */
    @Test
    void whatALateSetupUsesStaysForItsTakesAndIsReleasedLater() {
        EggDay eggs = new EggDay();
        eggs.heldIn = Optional.of("fridge");
        List<Section> sections = sections(sheet(eggs.day(), eggs.plan(List.of(), 7), Paper.A4));
        assertThat(sections.stream().flatMap(section -> told(section).stream()))
                .contains(
                        "04:10 17 min | Keep for release | Baked egg hero\u00a01"
                                + " | keep until released 04:27, throw nothing away before | Ada | S1",
                        "04:20 7 min | Keep for release | Baked egg hero\u00a02"
                                + " | keep until released 04:27, throw nothing away before | Ada | S1");
    }

    /** Egg S1 is released after S2, of 11:00, whose shooting is over at 11:10 by the sheets and begins 7 minutes late. */
    @Test
    void whatIsReleasedAfterAnotherSetupWaitsForThatIfItIsLate() {
        Day day = TestDays.firstEgg()
                .setup("S1", "10:00", setup -> setup.release = new Release.After("S2"))
                .setup("S2", "11:00", setup -> {})
                .dish("egg", dish -> dish.heldIn = Optional.of("fridge"))
                .dish("tea", dish -> {})
                .need("S2", "tea", "pour", need -> {})
                .step("tea", "pour", 2, pour -> pour.hands = 1)
                .station("fridge", Station.Kind.FRIDGE, 4, fridge -> {})
                .build();
        Plan plan = TestPlans.of(day)
                .step("egg", "plate", 1, "09:55-09:56", plate -> plate.by("Ana"))
                .step("tea", "pour", 1, "11:05-11:07", pour -> pour.by("Ana"))
                .build();
        Plan audited = plan.withVerdict(Audit.of(day, plan));
        assertThat(KeptBack.of(day, audited))
                .extracting(kept -> kept.copy().id() + " " + kept.span())
                .containsExactly("S1/egg/plate/hero#1 " + TestDays.span("10:05-11:17"));
    }

    /** The stand-in is wanted baked: nobody is to set fire to it. */
    @Test
    void aDeadlineIsForTheCopiesThatGoOn() {
        Day day = TestDays.firstEgg()
                .dish("pie", dish -> {})
                .need("S1", "pie", "flame", need -> need.copies(1))
                .need("S1", "pie", "bake", need -> {
                    need.part = Part.STAND_IN;
                    need.copies(2);
                })
                .step("pie", "bake", 10, bake -> {
                    bake.hands = 1;
                    bake.batchMost = Optional.of(2);
                })
                .step("pie", "flame", 2, flame -> flame.after("bake").most(40).hands = 1)
                .build();
        Plan plan = TestPlans.of(day)
                .step("pie", "bake", 1, "09:20-09:30", bake -> bake.by("Ana").and("S1/pie/bake/stand-in#1"))
                .add(
                        Plan.Work.Kind.STEP,
                        "pie",
                        "bake",
                        "S1/pie/bake/stand-in#2",
                        TestDays.span("09:30-09:40"),
                        bake -> bake.by("Ana"))
                .step("pie", "flame", 1, "09:50-09:52", flame -> flame.by("Ana"))
                .build();
        assertThat(sections(sheet(day, plan, Paper.A4)).get(0).lines())
                .extracting(line -> line.time() + " " + line.notes())
                .contains("09:20 [flame hero 1 within 40 min]", "09:30 []");
    }

    /**
     * FDA Food Code 3-501.19(B): four hours out at most after 57 °C. Baked, then dressed in 15 minutes, eaten in the take at its call and up
     * to 120 minutes after plate-up, as long as it is usable: the sheets' four hours in between would be too long.
     */
    @Test
    void aDeadlineIsNoLongerThanTheSafetyClockAllows() {
        for (boolean eaten : new boolean[] {true, false}) {
            Day day = TestDays.firstEgg()
                    .diner("Mina")
                    .setup("S1", "14:00", setup -> {})
                    .dish("cake", dish -> {
                        dish.look = Look.table(0, 90, 120);
                        dish.controlled = true;
                    })
                    .need("S1", "cake", "dress", need -> need.eatenBy = eaten ? List.of("Mina") : List.of())
                    .step("cake", "bake", 30, bake -> {
                        bake.uses("burners", 1).core = Optional.of(90.0);
                        bake.hands = 1;
                    })
                    .step("cake", "dress", 15, dress -> dress.after("bake").most(240).hands = 1)
                    .build();
            assertThat(notesOfBake(day, "13:40-13:55")).contains(eaten ? "dress within 105 min" : "dress within 4 h");
            // held up beyond its share it has what the plan gives it of the rest
            assertThat(notesOfBake(day, "14:30-14:45")).contains(eaten ? "dress within 120 min" : "dress within 4 h");
        }
    }

    private static List<String> notesOfBake(Day day, String dressed) {
        Plan plan = TestPlans.of(day)
                .step(
                        "cake",
                        "bake",
                        1,
                        "12:00-12:30",
                        bake -> bake.on("burners", 1).by("Ana"))
                .step("cake", "dress", 1, dressed, dress -> dress.by("Ana"))
                .build();
        return sections(sheet(day, plan, Paper.A4)).get(0).lines().get(0).notes();
    }

    @Test
    void whoBringsAPlateThatIsToppedUpIsTold() {
        for (int takes : new int[] {1, 2}) {
            Day day = TestDays.firstEgg()
                    .setup("S1", "10:00", setup -> setup.takes(takes))
                    .need("S1", "egg", "plate", need -> need.use = new Use.ToppedUp(4))
                    .build();
            Plan plan = TestPlans.of(day)
                    .step("egg", "fry", 1, "09:51-09:55", fry -> fry.by("Ana"))
                    .step("egg", "plate", 1, "09:55-09:56", plate -> plate.by("Ana"))
                    .build();
            assertThat(sections(sheet(day, plan, Paper.A4)).get(0).lines())
                    .extracting(line -> line.time() + " " + line.notes().contains("top up after each take: 4 min"))
                    .containsExactly("09:51 false", "09:55 " + (takes == 2));
        }
    }

    @Test
    void whatStartsByItselfIsOnThePageOfWhoHadItLast() {
        EggDay eggs = new EggDay();
        Plan plan = eggs.with(eggs.extra("chill", eggs.span(4, 30, 20), "fridge", List.of()));
        List<Section> sections = sections(sheet(eggs.day(), plan, Paper.A4));
        assertThat(told(sections.get(0)))
                .endsWith("04:30  | Chill: put in | Baked egg hero\u00a01"
                        + " | goes on by itself until 04:50 | fridge | S1");
        assertThat(told(sections.get(2)))
                .endsWith("04:30 20 min | Chill | Baked egg hero\u00a01 | until 04:50 | Ada | S1");
        // the kitchen closes at 12:00
        Plan late = eggs.with(eggs.extra("chill", eggs.span(12, 5, 20), "fridge", List.of()));
        assertThat(told(sections(sheet(eggs.day(), late, Paper.A4)).get(0)))
                .endsWith("12:05  | Chill: put in | Baked egg hero\u00a01"
                        + " | nobody is on then: find somebody, goes on by itself until 12:25 | fridge | S1");
    }

    @Test
    void whatGoesOnByItselfDoesSoUntilHandsAreBookedForIt() {
        EggDay eggs = new EggDay();
        Plan plan = eggs.with(eggs.extra(
                "chill", eggs.span(4, 30, 20), "fridge", List.of(new Plan.Hands("Ada", eggs.span(4, 47, 3)))));
        assertThat(told(sections(sheet(eggs.day(), plan, Paper.A4)).get(0)))
                .contains("04:30  | Chill: put in | Baked egg hero\u00a01"
                        + " | goes on by itself until 04:47 | fridge | S1");
    }

    /** Common practice, no source: hands are washed between raw food and food that is ready, once; dressing that isn't food doesn't clean them. */
    @Test
    void whoHandledRawFoodCleansHandsBeforeFoodThatIsReady() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("S1", "12:00", setup -> {})
                .dish("egg", dish -> {})
                .dish("toast", dish -> {})
                .dish("wax", dish -> dish.edible = false)
                .need("S1", "egg", "fry", need -> need.copies(1))
                .need("S1", "toast", "butter", need -> need.copies(2))
                .need("S1", "wax", "pour", need -> need.copies(1))
                .step("egg", "crack", 2, step -> {
                    step.raw = true;
                    step.hands = 1;
                })
                .step("egg", "fry", 5, step -> step.after("crack").hands = 1)
                .step("toast", "butter", 1, step -> step.hands = 1)
                .step("wax", "pour", 1, step -> step.hands = 1)
                .build();
        Plan plan = TestPlans.of(day)
                .step("toast", "butter", 2, "10:59-11:00", work -> work.by("Ana"))
                .step("egg", "crack", 1, "11:00-11:02", work -> work.by("Ana"))
                .step("egg", "fry", 1, "11:02-11:07", work -> work.by("Ana"))
                .step("wax", "pour", 1, "11:07-11:08", work -> work.by("Ana"))
                .step("toast", "butter", 1, "11:08-11:09", work -> work.by("Ana"))
                .build();
        assertThat(sections(sheet(day, plan, Paper.A4)).get(0).lines())
                .filteredOn(line -> line.notes().contains("clean hands and tools first, after raw food"))
                .extracting(Line::time)
                .containsExactly("11:08");
    }

    /**
     * A hen is carved raw by Ana by 10:20. Nobody is booked to put it into the oven at 10:24, nor the next one at 10:30, while she has toast in
     * hand; nor to let the bread cool at 10:40, while she cuts raw tartare.
     */
    @Test
    void whatNobodyIsBookedForSoilsHandsAsWellAndIsSpoiltByThem() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("S1", "11:00", setup -> setup.release = new Release.At(TestDays.at("12:00")))
                .setup("S2", "11:30", setup -> {})
                .dish("hen", dish -> {})
                .dish("tartare", dish -> dish.heldIn = Optional.of("fridge"))
                .dish("toast", dish -> {})
                .dish("bread", dish -> {})
                .need("S2", "hen", "roast", need -> need.copies(2))
                .need("S1", "tartare", "cut", need -> need.copies(1))
                .need("S2", "toast", "butter", need -> need.copies(3))
                .need("S2", "bread", "cool", need -> need.copies(1))
                .step("hen", "carve", 5, step -> {
                    step.raw = true;
                    step.hands = 1;
                })
                .step("hen", "roast", 30, step -> step.after("carve").uses("oven", 1))
                .step("tartare", "cut", 5, step -> {
                    step.raw = true;
                    step.hands = 1;
                })
                .step("toast", "butter", 1, step -> step.hands = 1)
                .step("bread", "cool", 10, step -> {})
                .station("oven", Station.Kind.OVEN, 2, oven -> {})
                .station("fridge", Station.Kind.FRIDGE, 2, fridge -> {})
                .build();
        Plan plan = TestPlans.of(day)
                .step("hen", "carve", 1, "10:15-10:20", work -> work.by("Ana"))
                .step("toast", "butter", 1, "10:20-10:21", work -> work.by("Ana"))
                .step("hen", "roast", 1, "10:24-10:54", work -> work.on("oven", 1))
                .step("toast", "butter", 2, "10:27-10:35", work -> work.by("Ana"))
                .step("hen", "roast", 2, "10:30-11:00", work -> work.on("oven", 1))
                .step("tartare", "cut", 1, "10:36-10:45", work -> work.by("Ana"))
                .step("bread", "cool", 1, "10:40-10:50", work -> {})
                .step("toast", "butter", 3, "10:46-10:47", work -> work.by("Ana"))
                .build();
        assertThat(sections(sheet(day, plan, Paper.A4)).get(0).lines())
                .extracting(line -> line.time() + " " + line.what()
                        + line.notes().stream()
                                .filter(note -> note.startsWith("clean hands"))
                                .map(note -> ": " + note)
                                .findFirst()
                                .orElse(""))
                .containsExactly(
                        "10:15 Carve",
                        "10:20 Butter: clean hands and tools first, after raw food",
                        "10:24 Roast: put in",
                        "10:27 Butter: clean hands and tools first, after raw food",
                        "10:30 Roast: put in: clean hands and tools before you go on",
                        "10:36 Cut",
                        "10:40 Cool: start: clean hands and tools first, after raw food",
                        "10:46 Butter: clean hands and tools first, after raw food",
                        "11:05 Bring back to fridge");
    }

    /** Ben takes over what Ana has begun to fry raw, and butters toast then. */
    @Test
    void whoTakesOverRawFoodCleansHandsAfterIt() {
        Day day = TestDays.firstEgg()
                .dish("toast", dish -> {})
                .need("S1", "egg", "plate", need -> need.copies(1))
                .need("S1", "toast", "butter", need -> need.copies(1))
                .step("egg", "crack", 2, step -> {
                    step.raw = true;
                    step.hands = 1;
                })
                .step("toast", "butter", 1, step -> step.hands = 1)
                .build();
        Plan plan = TestPlans.of(day)
                .step("egg", "crack", 1, "09:50-09:52", work -> work.by("Ana"))
                .step(
                        "egg",
                        "fry",
                        1,
                        "09:52-09:56",
                        work -> work.hands("Ana", "09:52-09:53").hands("Ben", "09:53-09:56"))
                .step("toast", "butter", 1, "09:57-09:58", work -> work.by("Ben"))
                .build();
        assertThat(sections(sheet(day, plan, Paper.A4)).get(1).lines())
                .filteredOn(line -> line.notes().contains("clean hands and tools first, after raw food"))
                .extracting(Line::time)
                .containsExactly("09:57");
    }

    /** The first tartare is brought back at 11:05, when its take is over; bread, sliced at 11:10, and the second one at 11:35. */
    @Test
    void rawFoodThatIsBroughtBackSoilsHands() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("S1", "11:00", setup -> setup.release = new Release.At(TestDays.at("12:00")))
                .setup("S2", "11:30", setup -> setup.release = new Release.At(TestDays.at("12:00")))
                .setup("S3", "11:30", setup -> setup.release = new Release.At(TestDays.at("12:10")))
                .dish("tartare", dish -> dish.heldIn = Optional.of("fridge"))
                .dish("bread", dish -> dish.heldIn = Optional.of("fridge"))
                .need("S1", "tartare", "cut", need -> {})
                .need("S2", "bread", "slice", need -> {})
                .need("S3", "tartare", "cut", need -> {})
                .step("tartare", "cut", 5, step -> {
                    step.raw = true;
                    step.hands = 1;
                })
                .step("bread", "slice", 1, step -> step.hands = 1)
                .station("fridge", Station.Kind.FRIDGE, 2, fridge -> {})
                .build();
        Plan plan = TestPlans.of(day)
                .step("tartare", "cut", 1, "10:40-10:45", work -> work.by("Ana"))
                .step("bread", "slice", 1, "11:10-11:11", work -> work.by("Ana"))
                .add(
                        Plan.Work.Kind.STEP,
                        "tartare",
                        "cut",
                        "S3/tartare/cut/hero#1",
                        TestDays.span("11:20-11:25"),
                        work -> work.by("Ana"))
                .build();
        assertThat(sections(sheet(day, plan, Paper.A4)).get(0).lines())
                .filteredOn(line -> line.notes().contains("clean hands and tools first, after raw food"))
                .extracting(Line::time)
                .containsExactly("11:10", "11:35");
    }

    /** At 09:53 Ann takes over from Tom, who is away from then on, what Jory has in hand from 09:51 to 09:55. */
    @Test
    void whoStaysAtWorkThatAnotherTakesOverIsToldAllThatHoldsAtItsEnd() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .person("Jory", person -> {})
                .person("Tom", person -> {})
                .person("Ann", person -> {})
                .diner("Mina")
                .setup("S1", "10:00", setup -> {})
                .dish("egg", dish -> dish.controlled = true)
                .need("S1", "egg", "plate", need -> need.eatenBy = List.of("Mina"))
                .step("egg", "fry", 4, step -> {
                    step.hands = 2;
                    step.core = Optional.of(63.0);
                })
                .step("egg", "plate", 1, step -> step.after("fry").most(0).hands = 1)
                .build();
        TestPlans plan = TestPlans.of(day)
                .step(
                        "egg",
                        "fry",
                        1,
                        "09:51-09:55",
                        work -> work.by("Jory").hands("Tom", "09:51-09:53").hands("Ann", "09:53-09:55"))
                .step("egg", "plate", 1, "09:55-09:56", work -> work.by("Jory"));
        String rest = ", core 63 °C by probe: ____ °C, plate at once";
        String fry = "09:51 4 min | Fry | Egg hero\u00a01 | with ";
        assertThat(told(sections(sheet(day, plan.build(), Paper.A4)).get(0)).get(0))
                .startsWith(fry + "Tom until 09:53, Ann from 09:53" + rest);
        assertThat(told(sections(sheet(day, plan.asOf("09:52").build(), Paper.A4))
                                .get(0))
                        .get(0))
                .startsWith(fry + "Tom until 09:53, Ann from 09:53" + rest);
        List<Section> relieved = sections(sheet(day, plan.asOf("09:53").build(), Paper.A4));
        assertThat(told(relieved.get(0)).get(0)).startsWith(fry + "Ann" + rest);
        assertThat(told(relieved.get(1)).get(0)).startsWith("09:53 2 min | Fry | Egg hero\u00a01 | with Jory" + rest);
    }

    /** Ben joins Ada at 02:18, when she has begun to take out. */
    @Test
    void whoTakesOutAndIsJoinedIsToldToTakeOut() {
        EggDay eggs = new EggDay();
        eggs.helpers = List.of("Ben");
        List<Plan.Work> all = new ArrayList<>(eggs.plan().work());
        Plan.Work bake = all.get(0);
        all.set(
                0,
                new Plan.Work(
                        bake.id(),
                        bake.kind(),
                        bake.dish(),
                        bake.step(),
                        bake.copies(),
                        bake.span(),
                        bake.stations(),
                        bake.ovenCelsius(),
                        List.of(
                                new Plan.Hands("Ada", eggs.span(2, 0, 2)),
                                new Plan.Hands("Ada", eggs.span(2, 17, 3)),
                                new Plan.Hands("Ben", eggs.span(2, 18, 2))),
                        bake.storage()));
        assertThat(told(sections(sheet(eggs.day(), eggs.doing(all), Paper.A4)).get(0)))
                .contains(
                        "02:17 3 min | Bake: take out | Baked egg hero\u00a01\u20112"
                                + " | with Ben from 02:18, core 68 °C by probe: ____ °C, then to fridge, first out 03:50 | oven, 2 trays | S1");
    }

    /** The carry is over at 04:26, Ada is back at 04:29. */
    @Test
    void whoIsOnTheWayBackFromSetHasItOnTheSheetOfTheRestOfTheDay() {
        EggDay eggs = new EggDay();
        for (int now : List.of(28, 29)) {
            eggs.asOf = Optional.of(eggs.at(4, now));
            Plan.Work carry = new Plan.Work(
                    "w6",
                    Plan.Work.Kind.CARRY,
                    "egg",
                    "carry",
                    List.of("S1/egg/crack/hero#1"),
                    eggs.span(4, 20, 6),
                    List.of(),
                    Optional.empty(),
                    List.of(new Plan.Hands("Ada", eggs.span(4, 20, 9))),
                    List.of());
            assertThat(sections(sheet(eggs.day(), eggs.with(carry), Paper.A4)).stream()
                            .flatMap(section -> section.lines().stream())
                            .filter(line -> line.what().equals("Carry"))
                            .map(line -> line.time() + " " + line.notes().contains("back at 04:29")))
                    .containsExactlyElementsOf(now == 28 ? List.of("04:20 true") : List.of());
        }
    }

    @Test
    void rawFoodIsSaidToBeRawWhereverItIsCarriedOrStored() {
        EggDay eggs = new EggDay();
        eggs.raw = true;
        List<Section> sections = sections(sheet(eggs.day(), eggs.plan(), Paper.A4));
        assertThat(sections.get(0).lines())
                .filteredOn(line -> line.what().equals("Carry"))
                .hasSize(2)
                .allSatisfy(line -> assertThat(line.notes()).contains("still raw: keep apart"));
        assertThat(sections.get(2).lines())
                .allSatisfy(line -> assertThat(line.notes()).contains("still raw: keep apart"));
    }

    @Test
    void rowsMoveTogetherWhereThatSavesAPage() throws IOException {
        EggDay eggs = new EggDay();
        RunSheet of = sheet(eggs.day(), eggs.plan(), Paper.A4);
        Line line = of.people().get(0).lines().get(1);
        int saved = 0;
        for (int rows = 14; rows <= 26; rows += 2) {
            Section person = new Section("Ada", "", List.of(), Collections.nCopies(rows, line), 0);
            RunSheet sheet = new RunSheet(of.title(), List.of(person), List.of(), of.caution(), of.print(), of.paper());
            int loose = Pdf.of(Html.of("runsheet.jte", sheet), of.print()).pages();
            int pages = pages(sheet.pdf()).size();
            assertThat(pages).isLessThanOrEqualTo(loose);
            saved += loose - pages;
        }
        assertThat(saved).isPositive();
    }

    @Test
    void aWordLongerThanItsColumnIsBroken() throws IOException {
        EggDay eggs = new EggDay();
        eggs.dishName = "Q".repeat(150);
        List<Float> ends = new ArrayList<>();
        try (PDDocument document =
                Loader.loadPDF(sheet(eggs.day(), eggs.plan(), Paper.A4).pdf())) {
            new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition text) {
                    if (text.getUnicode().equals("Q")) {
                        ends.add(text.getX() + text.getWidth());
                    }
                }
            }.getText(document);
        }
        assertThat(ends)
                .hasSizeGreaterThan(600)
                .allMatch(end -> end < PDRectangle.A4.getWidth() - (10 + 36.5) * POINTS_PER_MM);
    }

    /** Forty stations with rows of one to eleven lines, so that headings would come to lie anywhere. */
    @Test
    void noHeadingStandsAtTheEndOfAPageWithoutARow() throws IOException {
        List<Section> stations = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            List<RunSheet.Line> lines = new ArrayList<>();
            for (int row = 0; row <= i % 3; row++) {
                lines.add(new RunSheet.Line(
                        row == 0 ? "Saturday 14 March 2026" : "",
                        "09:41",
                        "17 h 31 min",
                        "Store",
                        "Leek and curd pasty",
                        "hero 1-5 and setup 3 background; ".repeat(i % 4),
                        Collections.nCopies(i % 7, "if it stays out discard each 224 min after it comes out"),
                        false,
                        "milk, wheat",
                        "",
                        "3, 7",
                        false));
            }
            stations.add(new Section("store " + i, "fridge, 40 plates, kitchen", List.of(), lines, 0));
        }
        EggDay eggs = new EggDay();
        List<String> pages = pages(
                new RunSheet("Many", List.of(), stations, "Mind", imprint(eggs.day(), eggs.plan()), Paper.A4).pdf());
        assertThat(pages).hasSizeGreaterThan(15);
        for (String page : pages) {
            int heading = page.lastIndexOf("time what who, setup");
            assertThat(page.substring(heading)).containsPattern("\n09:41");
        }
    }

    @Test
    void thePageInABrowserHasHeadingsAndNames() {
        EggDay eggs = new EggDay();
        String html = new String(sheet(eggs.day(), eggs.plan(), Paper.A4).html(), StandardCharsets.UTF_8);
        assertThat(html)
                .contains(
                        "lang=\"en\"",
                        "<h2 id=\"person-0\">Ada</h2>",
                        "<a href=\"#person-0\">Ada</a>",
                        "scope=\"col\"",
                        "aria-label=\"box to tick: 03:50 Crack\"")
                .doesNotContainPattern("<th[^>]*></th>");
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
        String first = pages(sheet(eggs.day(), eggs.plan(), Paper.A4).pdf()).get(0);
        assertThat(first.split("DO NOT EAT", -1)).hasSize(7);
        assertThat(first.split("contains egg", -1)).hasSize(7);
        eggs.edible = true;
        assertThat(pages(sheet(eggs.day(), eggs.plan(), Paper.A4).pdf()).get(0)).doesNotContain("DO NOT EAT");
    }

    @Test
    void datesStandWhereTheyBegin() {
        Section freezer = sheet(InnPlans.day(), InnPlans.plan(), Paper.A4).stations().stream()
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
        List<Line> lines =
                sheet(eggs.day(), eggs.plan(), Paper.A4).people().get(0).lines();
        assertThat(lines)
                .extracting(Line::dateBefore)
                .filteredOn(before -> !before.isEmpty())
                .containsExactly("Sunday 25 October 2026", "Clocks go back at 03:00 to 02:00");
        assertThat(lines.get(3).dateBefore()).startsWith("Clocks");
        assertThat(lines)
                .extracting(Line::time)
                .startsWith("01:44", "02:00 +02", "02:17 +02", "02:00 +01", "02:50 +01", "02:54 +01", "03:00");
    }

    @Test
    void hostileNamesAreTextOnThePage() throws Exception {
        EggDay eggs = new EggDay();
        eggs.dishName = "<script>alert('x')</script> & \"pie\" ]]>\u0007";
        eggs.person = "</td><h1>Ada";
        eggs.setup = "<b>1";
        Day day = eggs.day();
        Plan plan = eggs.plan();
        String html = new String(sheet(day, plan, Paper.A4).html(), StandardCharsets.UTF_8);
        assertThat(html).contains("&lt;script&gt;").doesNotContain("<script", "<h1>", "<b>1", "\u0007");
        assertThat(pages(sheet(day, plan, Paper.A4).pdf()).get(0))
                .contains("<script>alert('x')</script>")
                .contains("</td><h1>Ada");
        String readiness = Html.of(
                "readiness.jte", ReadinessPage.of(day, plan, odds(day, plan), List.of(), imprint(day, plan), Paper.A4));
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
    void whatTheTypefaceLacksIsPlainerOrBoxedAndToldOnce() throws IOException {
        EggDay eggs = new EggDay();
        eggs.dishName = "Souffle\u0301 \uFF34\uFF41\uFF52\uFF54 \uFF1Cb\uFF1E \u5BFF\uD83C\uDF73\uFE0F";
        for (byte[] pdf : List.of(
                sheet(eggs.day(), eggs.plan(), Paper.A4).pdf(),
                Pdf.of(
                                "<html><body style=\"font-family: '" + Fonts.FAMILY + "'\">" + eggs.dishName
                                        + "</body></html>",
                                imprint(eggs.day(), eggs.plan()))
                        .bytes())) {
            String all = String.join("\n", pages(pdf));
            assertThat(all).contains("Souffl\u00e9 Tart <b> \u25A1\u25A1").doesNotContain("#");
            assertThat(all.split("\u25A1 stands for what this typeface has no character for: U\\+5BFF, U\\+1F373", -1))
                    .hasSize(2);
        }
        assertThat(Glyphs.explained("<body>Crème brûlée \u2011 ½ Żurek</body>"))
                .isEqualTo("<body>Crème brûlée \u2011 ½ Żurek</body>");
        assertThat(Glyphs.explained("<b>\u0338x</b>")).isEqualTo("<b>x</b>");
    }

    @Test
    void pagesAreCountedForEachPartThatBeginsOnOne() {
        String next = "<div style=\"page-break-before: always\">on</div>";
        String part = next.replace("<div", "<div class=\"a new-page\"");
        assertThat(Pdf.pagesOf("<html><body>one</body></html>")).containsExactly(1);
        assertThat(Pdf.pagesOf("<html><body>one" + next + part + part + next + next + "</body></html>"))
                .containsExactly(2, 1, 3);
    }

    @Test
    void onAPhoneWhereAndSetupStandUnderTheDeed() throws IOException {
        EggDay eggs = new EggDay();
        String html = new String(sheet(eggs.day(), eggs.plan(), Paper.A4).html(), StandardCharsets.UTF_8);
        String phone = html.substring(html.indexOf("@media screen and (max-width: 40em)"), html.indexOf("</style>"));
        assertThat(phone).contains("tr.task, .lines tr.pause { display: grid;", ".lines td.where { grid-column: 3; }");
        // nothing of it reaches the paper
        assertThat(pages(Pdf.of(html, imprint(eggs.day(), eggs.plan())).bytes()))
                .isEqualTo(pages(Pdf.of(html.replace(phone, ""), imprint(eggs.day(), eggs.plan()))
                        .bytes()));
    }

    @Test
    void samePlanAndMinuteGiveTheSameBytes() {
        EggDay eggs = new EggDay();
        assertThat(Reports.of(
                        eggs.day(),
                        eggs.plan(),
                        odds(eggs.day(), eggs.plan()),
                        Changes.none(eggs.day(), eggs.plan()),
                        List.of("Sal eats dough, which is raw"),
                        eggs.at(0, 30)))
                .containsExactlyInAnyOrderEntriesOf(Reports.of(
                        eggs.day(),
                        eggs.plan(),
                        odds(eggs.day(), eggs.plan()),
                        Changes.none(eggs.day(), eggs.plan()),
                        List.of("Sal eats dough, which is raw"),
                        eggs.at(0, 30)));
    }

    @Test
    void whatIsToBeSettledBeforeAnybodyEatsIsOnBothPapers() {
        EggDay eggs = new EggDay();
        List<String> remarks = List.of("setup S1: Sal eats dough, which is raw", "b", "c", "d", "e", "f");
        String told =
                "To settle before anybody eats: setup S1: Sal eats dough, which is raw; b; c; d; and 2 more, see check.";
        Imprint print = imprint(eggs.day(), eggs.plan());
        assertThat(ReadinessPage.of(eggs.day(), eggs.plan(), odds(eggs.day(), eggs.plan()), remarks, print, Paper.A4)
                        .safety())
                .startsWith(told);
        assertThat(RunSheet.of(eggs.day(), eggs.plan(), Changes.none(eggs.day(), eggs.plan()), remarks, print, Paper.A4)
                        .people())
                .allSatisfy(person -> assertThat(person.news()).contains(told));
    }

    /** Plates that last two takes: the third take, at 12:20, brings in the second one; one that is topped up stays. */
    @Test
    void platesThatLastAreTheSameUntilTheTakeThatBringsInNewOnes() {
        assertThat(resets(new Use.LastsTakes(2), 2)).isEqualTo("3, new plates from take 3, there 12:15");
        assertThat(resets(new Use.LastsTakes(2), 3))
                .as("nobody waits for a spare")
                .isEqualTo("3, new plates from take 3, there 12:15");
        assertThat(resets(new Use.ToppedUp(1), 1)).isEqualTo("3, same plates");
        assertThat(resets(new Use.LastsTakes(2), 3, 1)).isEqualTo("3, new plates from take 3, there 12:15");
        assertThat(resets(new Use.LastsTakes(2), 2, 1))
                .as("the second plate is the extra look")
                .isEqualTo("1, same plates");
    }

    private static String resets(Use use, int copies) {
        return resets(use, copies, 0);
    }

    private static String resets(Use use, int copies, int extraLooks) {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "12:00", setup -> setup.takes(4))
                .dish("stack", dish -> {})
                .need("S1", "stack", "plate", need -> {
                    need.use = use;
                    need.copies(copies).extraLooks = extraLooks;
                })
                .step("stack", "plate", 5, step -> {})
                .build();
        TestPlans plan = TestPlans.of(day).step("stack", "plate", 1, "11:50-11:55", work -> {});
        for (int number = 2; number <= copies; number++) {
            plan.step("stack", "plate", number, number == 2 ? "12:10-12:15" : "12:20-12:25", work -> {});
        }
        Plan made = plan.build();
        return readiness(day, made.withVerdict(Audit.of(day, made)))
                .rows()
                .get(0)
                .resets();
    }

    /** Nobody has hands on the thaw, nor before it; it stands on Ana's sheet all the same. */
    @Test
    void somebodyIsToldToStartWhatBeginsByItself() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("S1", "12:00", setup -> {})
                .dish("pie", dish -> {})
                .need("S1", "pie", "cut", need -> need.copies(1))
                .step("pie", "thaw", 60, step -> {})
                .step("pie", "cut", 5, step -> step.after("thaw").hands = 1)
                .build();
        for (String thawed : List.of("09:00-10:00", "00:10-01:10")) {
            Plan plan = TestPlans.of(day)
                    .step("pie", "thaw", 1, thawed, work -> {})
                    .step("pie", "cut", 1, "11:50-11:55", work -> work.by("Ana"))
                    .build();
            assertThat(sections(sheet(day, plan, Paper.A4)).get(0).lines())
                    .extracting(Line::what)
                    .containsExactly("Thaw: start", "Cut");
        }
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

    private static Odds odds(Day day, Plan plan) {
        return TestOdds.of(day, plan, 50, 1);
    }

    private static ReadinessPage readiness(Day day, Plan plan) {
        return ReadinessPage.of(day, plan, odds(day, plan), List.of(), imprint(day, plan), Paper.A4);
    }

    /** Dee eats the stew; Cid and Eve are of the cast. Nobody eats the wax in either setup, and nothing in the second. */
    @Test
    void whereSomebodyEatsWhoMustNotEatWhichFoodIsTold() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("1", "11:00", setup -> {})
                .setup("2", "12:00", setup -> {})
                .dish("stew", dish -> {})
                .dish("broth", dish -> {})
                .dish("wax", dish -> dish.edible = false)
                .need("1", "stew", "cook", need -> need.eatenBy = List.of("Dee"))
                .need("1", "broth", "boil", need -> {})
                .need("1", "wax", "melt", need -> {})
                .need("2", "stew", "cook", need -> {})
                .step("stew", "cook", 5, step -> step.hands = 1)
                .step("broth", "boil", 5, step -> step.hands = 1)
                .step("broth", "garnish", 5, step -> step.after("boil"))
                .step("wax", "melt", 5, step -> step.hands = 1)
                .ingredient("stew", "root", root -> root.allergens = List.of("celery"))
                .ingredient("broth", "stalk", stalk -> stalk.allergens = List.of("celery"))
                .ingredient("broth", "nuts", nuts -> nuts.step = Optional.of("garnish"))
                .ingredient("wax", "walnut oil", oil -> oil.allergens = List.of("nuts"))
                .diner("Cid", "celery", "nuts")
                .diner("Dee", "nuts")
                .diner("Eve")
                .build();
        TestPlans plan = TestPlans.of(day)
                .step("stew", "cook", 1, "10:00-10:05", work -> work.by("Ana"))
                .step("broth", "boil", 1, "10:10-10:15", work -> work.by("Ana"))
                .step("wax", "melt", 1, "10:20-10:25", work -> work.by("Ana"));
        Plan audited = plan.build();
        List<Readiness> setups = day.setups().stream()
                .map(setup -> new Readiness(
                        setup.id(),
                        setup.call(),
                        Optional.of(setup.call()),
                        0,
                        Optional.empty(),
                        0,
                        Optional.empty(),
                        "Ready"))
                .toList();
        assertThat(readiness(day, audited.withVerdict(new Plan.Verdict(List.of(), 0, 0, setups)))
                        .rows())
                .extracting(ReadinessPage.Row::words)
                .containsExactly("Ready; DO NOT EAT: Wax; Cid must not eat Stew (celery), Broth (celery)", "Ready");
    }

    @Test
    void theAnswerIsOneLine() {
        EggDay eggs = new EggDay();
        assertThat(readiness(eggs.day(), eggs.plan()).answer()).isEqualTo("The setup is ready at its call.");
        assertThat(readiness(eggs.day(), eggs.plan(List.of(), 7)).answer())
                .isEqualTo("1 of 1 setup late: setup S1 by 7 min.");
        assertThat(readiness(InnPlans.day(), InnPlans.plan()).answer())
                .matches(
                        "All 12 setups are planned to be ready at their calls; (probably late: setup \\w+ \\((under )?\\d+ % sure\\).*|least sure is setup \\w+ \\(\\d+ %\\))\\.");
        Plan crowded = crowded(12);
        assertThat(readiness(InnPlans.day(), crowded).answer())
                .isEqualTo(
                        "The plan breaks 4 rules, see below; 6 of 12 setups late: setup 1A by 12 min, setup 1C not at all, setup 3A by 12 min, setup 4 not at all and 2 more.");
    }

    @Test
    void noSetupIsSureWhereARuleIsBroken() {
        EggDay eggs = new EggDay();
        Breach breach = new Breach(Rule.OPEN, 20, "oven is closed");
        ReadinessPage page = readiness(eggs.day(), eggs.plan(List.of(breach), 0));
        assertThat(page.answer())
                .isEqualTo("The plan breaks 1 rule, see below; the setup is planned to be ready at its call.");
        assertThat(page.good()).isFalse();
        assertThat(page.rows().get(0).sure()).isEmpty();
    }

    @Test
    void whatIsReadyLessOftenThanPromisedIsNotCalledSure() {
        EggDay eggs = new EggDay();
        assertThat(sure(eggs, 0.95).rows().get(0).stateWords()).isEqualTo("READY");
        ReadinessPage half = sure(eggs, 0.5);
        assertThat(half.rows().get(0).stateWords()).isEqualTo("READY, NOT SURE");
        assertThat(half.rows().get(0).words()).endsWith("; 95 % sure by 04:07");
        assertThat(half.answer()).isEqualTo("The setup is planned to be ready at its call; but only 50 % sure.");
        assertThat(half.good()).isTrue();
        ReadinessPage less = sure(eggs, 0.4999);
        assertThat(less.rows().get(0).stateWords()).isEqualTo("PROBABLY LATE");
        assertThat(less.answer())
                .isEqualTo("The setup is planned to be ready at its call; probably late: setup S1 (49 % sure).");
        assertThat(less.good()).isFalse();
        assertThat(readiness(eggs.day(), eggs.plan()).rows())
                .as("each step has its minutes for certain")
                .extracting(row -> row.stateWords() + " " + row.sure())
                .containsExactly("READY 100\u00a0%");
    }

    /** The page where the egg, called at 04:00, is ready so often at its call, and seven minutes later as often as promised. */
    private static ReadinessPage sure(EggDay eggs, double chance) {
        return ReadinessPage.of(
                eggs.day(), eggs.plan(), oddsOf(eggs, chance), List.of(), imprint(eggs.day(), eggs.plan()), Paper.A4);
    }

    private static Odds oddsOf(EggDay eggs, double chance) {
        Moment call = eggs.day().setups().get(0).call();
        Optional<Moment> by = Optional.of(call.plus(7));
        return new Odds(
                100, chance, 0, List.of(new Odds.OfSetup("S1", call, chance, chance, chance, by, by, 1, List.of())));
    }

    /** The page for the AD and the list for a spreadsheet must not differ in what is sure. */
    @Test
    void chancesStandInTheListWhereTheyStandOnThePage() {
        EggDay eggs = new EggDay();
        String sound = new String(ReadinessCsv.of(eggs.day(), eggs.plan(), oddsOf(eggs, 0.5)), StandardCharsets.UTF_8);
        assertThat(sound).contains(",50.0,50.0,");
        Plan broken = eggs.plan(List.of(new Breach(Rule.OPEN, 20, "oven is closed")), 0);
        assertThat(new String(ReadinessCsv.of(eggs.day(), broken, oddsOf(eggs, 0.5)), StandardCharsets.UTF_8))
                .doesNotContain("50.0");
    }

    @Test
    void aBrokenRuleThatIsOverTakesNoChancesAway() {
        EggDay eggs = new EggDay();
        Breach over = new Breach(
                Rule.CLOCK,
                6,
                "egg stood too long",
                Optional.of(eggs.day().setups().get(0).call()));
        Plan plan = eggs.plan(List.of(over), 0);
        ReadinessPage page = readiness(eggs.day(), plan);
        assertThat(page.rules()).isEqualTo("The plan can't mend 1 rule that was broken:");
        assertThat(page.answer())
                .isEqualTo(readiness(eggs.day(), eggs.plan(List.of(), 0)).answer());
        assertThat(new String(ReadinessCsv.of(eggs.day(), plan, oddsOf(eggs, 0.5)), StandardCharsets.UTF_8))
                .contains(",50.0,50.0,");
    }

    /** By hand: usable until 04:10, the first take complete at 04:09 or 04:10. */
    @Test
    void whatIsPastUseOnceTheFirstTakeIsCompleteIsNamed() {
        EggDay eggs = new EggDay();
        Readiness inTime = eggs.plan().verdict().setups().get(0);
        for (int late : List.of(9, 10)) {
            Readiness setup = readinessOf(inTime.setup(), inTime.call(), -late, inTime);
            Plan plan = eggs.plan().withVerdict(new Plan.Verdict(List.of(), late, 0, List.of(setup)));
            assertThat(readiness(eggs.day(), plan).rows().get(0).words().contains("; past use by then: Baked egg"))
                    .isEqualTo(late == 10);
        }
        Readiness setup = readinessOf(inTime.setup(), inTime.call(), -10, inTime);
        eggs.part = Part.STAND_IN;
        Plan plan = eggs.plan().withVerdict(new Plan.Verdict(List.of(), 10, 0, List.of(setup)));
        assertThat(readiness(eggs.day(), plan).rows().get(0).words())
                .as("a stand-in isn't in the shot")
                .doesNotContain("past use");
    }

    @Test
    void aSetupWithoutPlatesForItsLikelyTakesIsShort() {
        EggDay eggs = new EggDay();
        Readiness inTime = eggs.plan().verdict().setups().get(0);
        Readiness one = readinessOf(inTime.setup(), inTime.call(), 0, inTime);
        Plan plan = eggs.plan().withVerdict(new Plan.Verdict(List.of(), 0, 0, List.of(one)));
        assertThat(readiness(eggs.day(), plan).rows().get(0).stateWords()).isEqualTo("READY");
        eggs.takesLikely = 2;
        assertThat(readiness(eggs.day(), plan).rows().get(0).stateWords()).isEqualTo("READY, THEN SHORT");
    }

    @Test
    void dressingIsNamedOnTheReadinessPage() {
        EggDay eggs = new EggDay();
        assertThat(readiness(eggs.day(), eggs.plan()).rows().get(0).words()).doesNotContain("DO NOT EAT");
        eggs.edible = false;
        assertThat(readiness(eggs.day(), eggs.plan()).rows().get(0).words()).endsWith("; DO NOT EAT: Baked egg");
    }

    /** By hand: hands are wanted at 02:00, the oven takes 16 minutes to be hot by then. */
    @Test
    void theKitchenCallAndTheOvenThatComesBeforeItAreOnTheReadinessPage() {
        EggDay eggs = new EggDay();
        assertThat(readiness(eggs.day(), eggs.plan()).kitchenCalls())
                .isEqualTo("Kitchen call: 02:00 (first oven set 01:44).");
        eggs.asOf = Optional.of(eggs.at(2, 1));
        assertThat(readiness(eggs.day(), eggs.plan()).kitchenCalls()).isEmpty();
    }

    /** 68 °C is 155 °F in the FDA Food Code 2022, 3-401.11 (A) (2). */
    @Test
    void onLetterPaperDegreesAreInFahrenheitAsWell() {
        EggDay eggs = new EggDay();
        assertThat(String.join(
                        "\n",
                        told(sections(sheet(eggs.day(), eggs.plan(), Paper.LETTER))
                                .get(0))))
                .contains(
                        "Set oven to 180 °C (356 °F)",
                        "180 °C (356 °F), until",
                        "core 68 °C (155 °F) by probe: ____ °C");
        assertThat(String.join(
                        "\n",
                        told(sections(sheet(eggs.day(), eggs.plan(), Paper.A4)).get(0))))
                .contains("core 68 °C by probe: ____ °C")
                .doesNotContain("°F");
    }

    /** By hand from F = 1.8 C + 32 (NIST SP 811, B.8); the FDA Food Code rounds its 63 and 74 °C down, to 145 and 165 °F. */
    @Test
    void whatMustBeReachedIsNeverLessInFahrenheit() {
        assertThat(Paper.LETTER.atLeast(74)).isEqualTo("74 °C (166 °F)");
        assertThat(Paper.LETTER.atLeast(68)).isEqualTo("68 °C (155 °F)");
        assertThat(Paper.LETTER.atLeast(63)).isEqualTo("63 °C (146 °F)");
        assertThat(Paper.LETTER.atLeast(62.5)).isEqualTo("62.5 °C (145 °F)");
        assertThat(Paper.LETTER.degrees(-18)).isEqualTo("-18 °C (0 °F)");
        assertThat(Paper.A4.atLeast(62.5)).isEqualTo("62.5 °C");
    }

    /** By hand: egg 1 was wanted at 04:00, the bearer's hands are free again at 04:29. */
    @Test
    void whoCarriesKnowsWhatIsLateAndWhenTheWayBackIsOver() {
        EggDay eggs = new EggDay();
        Plan.Work late = new Plan.Work(
                "w6",
                Plan.Work.Kind.CARRY,
                "egg",
                "carry",
                List.of("S1/egg/crack/hero#1"),
                eggs.span(4, 20, 6),
                List.of(),
                Optional.empty(),
                List.of(new Plan.Hands("Ada", eggs.span(4, 20, 9))),
                List.of());
        assertThat(told(sections(sheet(eggs.day(), eggs.with(late), Paper.A4)).get(0)))
                .contains("04:20 6 min | Carry | Baked egg hero\u00a01"
                        + " | arrive by 04:26, LATE, wanted 04:00, back at 04:29 | to set | S1");
    }

    @Test
    void aSetupWhoseLaterPlatesAreLateIsNotCalledReady() {
        EggDay eggs = new EggDay();
        Plan late = eggs.plan(List.of(), 3);
        Readiness inTime = eggs.plan().verdict().setups().get(0);
        ReadinessPage page =
                readiness(eggs.day(), late.withVerdict(new Plan.Verdict(List.of(), 3, 0, List.of(inTime))));
        assertThat(page.rows().get(0).stateWords()).isEqualTo("READY, THEN SHORT");
        assertThat(page.answer()).isEqualTo("The setup is ready at its call, but later plates run short: setup S1.");
        assertThat(page.good()).isFalse();
    }

    /** Ready at 09:57 for 10:00, the stand-in at 09:35 for 09:30, or usable until 09:20. */
    @Test
    void aStandInThatIsLateForLightingIsNoLaterPlate() {
        String ready = "The setup is ready at its call";
        assertThat(withStandIn("09:34-09:35", 60))
                .isEqualTo("STAND-IN LATE: " + ready + "; stand-in late for lighting: setup S1.");
        assertThat(withStandIn("09:00-09:10", 10))
                .isEqualTo("STAND-IN PAST USE: " + ready + "; stand-in past use: setup S1.");
        assertThat(withStandIn("09:29-09:30", 60)).isEqualTo("READY: " + ready + ".");
    }

    private static String withStandIn(String plated, int usable) {
        Day day = TestDays.firstEgg()
                .setup("S1", "10:00", setup -> setup.lighting = Optional.of(TestDays.at("09:30")))
                .dish("egg", dish -> dish.look = Look.table(0, usable, usable))
                .need("S1", "egg", "plate", need -> need.part = Part.STAND_IN)
                .need("S1", "egg", "plate", need -> {})
                .build();
        Plan plan = TestPlans.of(day)
                .add(
                        Plan.Work.Kind.STEP,
                        "egg",
                        "plate",
                        "S1/egg/plate/stand-in#1",
                        TestDays.span(plated),
                        work -> work.by("Ben"))
                .add(
                        Plan.Work.Kind.STEP,
                        "egg",
                        "plate",
                        "S1/egg/plate/hero#1",
                        TestDays.span("09:56-09:57"),
                        work -> work.by("Ana"))
                .build();
        Plan audited = plan.withVerdict(
                new Plan.Verdict(List.of(), 0, 0, Audit.of(day, plan).setups()));
        ReadinessPage page = readiness(day, audited);
        return page.rows().get(0).stateWords() + ": " + page.answer();
    }

    @Test
    void whatIsShortIsSaidBesideWhatIsLate() {
        EggDay eggs = new EggDay();
        eggs.usableMinutes = 6;
        assertThat(readiness(eggs.day(), eggs.plan()).answer()).isEqualTo("First take past use: setup S1.");
        assertThat(readiness(eggs.day(), eggs.plan()).rows().get(0).stateWords())
                .isEqualTo("FIRST TAKE PAST USE");
        Plan both = eggs.plan();
        List<Readiness> setups = new ArrayList<>(both.verdict().setups());
        setups.add(0, readinessOf("S0", eggs.at(3, 0), -5, setups.get(0)));
        Day day = eggs.day();
        Day two = eggs.with(
                day,
                List.of(eggs.setup("S0", 3), eggs.setup(eggs.setup, 4)),
                List.of(eggs.need("S0"), eggs.need(eggs.setup)));
        Plan plan = both.withVerdict(new Plan.Verdict(List.of(), 5, 0, setups));
        assertThat(readiness(two, plan).answer())
                .isEqualTo("1 of 2 setups late: setup S0 by 5 min; first take past use: setup S1.");
        eggs.usableMinutes = 16;
        eggs.laterUsableMinutes = 6;
        plan = eggs.plan().withVerdict(new Plan.Verdict(List.of(), 5, 0, setups));
        assertThat(readiness(two, plan).answer())
                .isEqualTo("1 of 2 setups late: setup S0 by 5 min; later plates short: setup S1.");
    }

    @Test
    void thePlateThatIsLatestIsToldBesideAFirstTakeThatIsLateByLess() {
        EggDay eggs = new EggDay();
        eggs.usableMinutes = 100;
        Readiness inTime = eggs.plan().verdict().setups().get(0);
        List<Readiness> setups = List.of(readinessOf("S0", eggs.at(3, 0), -5, inTime), inTime);
        Day two = eggs.with(
                eggs.day(),
                List.of(eggs.setup("S0", 3), eggs.setup(eggs.setup, 4)),
                List.of(eggs.need("S0"), eggs.need(eggs.setup)));
        for (int late : List.of(5, 45)) {
            Plan plan = eggs.plan(List.of(), late).withVerdict(new Plan.Verdict(List.of(), 5 + late, 0, setups));
            assertThat(readiness(two, plan).answer())
                    .isEqualTo("1 of 2 setups late: setup S0 by 5 min; later plates short: setup S1"
                            + (late > 5 ? "; worst: setup S1, Baked egg hero 1 by 45 min." : "."));
        }
    }

    private static Readiness readinessOf(String setup, Moment call, int margin, Readiness like) {
        return new Readiness(
                setup, call, Optional.of(call.plus(-margin)), margin, like.heroPeakTo(), 0, Optional.empty(), "");
    }

    @Test
    void aHeroWhosePeakIsOverAtTheCallIsSaidToBePast() {
        EggDay eggs = new EggDay();
        Readiness fresh = eggs.plan().verdict().setups().get(0);
        Readiness faded = new Readiness(
                fresh.setup(),
                fresh.call(),
                fresh.ready(),
                0,
                Optional.of(eggs.at(3, 59)),
                18,
                Optional.of(eggs.at(3, 49)),
                "Ready at call");
        ReadinessPage page =
                readiness(eggs.day(), eggs.plan().withVerdict(new Plan.Verdict(List.of(), 0, 3, List.of(faded))));
        assertThat(page.rows().get(0).stateWords()).isEqualTo("PAST PEAK AT CALL");
        assertThat(page.rows().get(0).resets()).isEqualTo("18, next one there with the first");
        assertThat(page.answer()).isEqualTo("The setup is ready at its call; past peak at call: setup S1.");
        assertThat(page.good()).isTrue();
        // one that is ready and later short is past peak at its call as well
        page = readiness(
                eggs.day(), eggs.plan(List.of(), 3).withVerdict(new Plan.Verdict(List.of(), 3, 3, List.of(faded))));
        assertThat(page.rows().get(0).stateWords()).isEqualTo("READY, THEN SHORT");
        assertThat(page.answer())
                .isEqualTo(
                        "The setup is ready at its call, but later plates run short: setup S1; past peak at call: setup S1.");
    }

    @Test
    void noColumnOfTheReadinessPageLeavesThePaper() throws IOException {
        EggDay eggs = new EggDay(ZoneId.of("Europe/Berlin"), LocalDate.of(2026, 10, 25));
        eggs.setup = "a setup with-a-long-name-without-any-place-to-break-it";
        Plan plan = eggs.plan();
        Readiness one = plan.verdict().setups().get(0);
        List<Readiness> setups =
                List.of(one, readinessOf(one.setup(), one.call().plus(1440), -777, one));
        byte[] pdf = readiness(eggs.day(), plan.withVerdict(new Plan.Verdict(List.of(), 777, 0, setups)))
                .pdf();
        assertThat(pages(pdf))
                .singleElement()
                .satisfies(page -> assertThat(page)
                        .contains("Monday 26 October 2026")
                        .contains("verdict")
                        .contains("03:04", "−777", "LATE 777 min")
                        .containsPattern("READY +Ready at call"));
        List<Float> out = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition text) {
                    if (text.getX() + text.getWidth() > text.getPageWidth() - 12 * POINTS_PER_MM + 1) {
                        out.add(text.getX());
                    }
                }
            }.getText(document);
        }
        assertThat(out).isEmpty();
    }

    @Test
    void whatIsNotMadeIsCountedApartFromOtherRules() {
        EggDay eggs = new EggDay();
        Breach unmade = new Breach(Rule.COPIES, 1, "1 egg is not made");
        Breach closed = new Breach(Rule.OPEN, 20, "oven is closed");
        assertThat(readiness(eggs.day(), eggs.plan(List.of(), 0)).rules()).isEqualTo("The plan breaks no rule.");
        assertThat(readiness(eggs.day(), eggs.plan(List.of(unmade), 0)).rules())
                .isEqualTo("The plan has too few copies for 1 need:");
        ReadinessPage both = readiness(eggs.day(), eggs.plan(List.of(unmade, closed, unmade), 0));
        assertThat(both.answer()).startsWith("The plan breaks 1 rule, see below");
        assertThat(both.rules())
                .isEqualTo(
                        "The plan breaks 1 rule and has too few copies for 2 needs, so nothing tells how sure it is:");
    }

    @Test
    void everyStateIsInWords() throws IOException {
        List<String> pages = pages(readiness(InnPlans.day(), crowded(15)).pdf());
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0))
                .contains("READY", "LATE 12 min", "NOT READY", "−12 min")
                .contains("The plan breaks 4 rules, so nothing tells how sure it is; first of them:")
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

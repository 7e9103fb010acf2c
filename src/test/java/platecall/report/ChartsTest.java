package platecall.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import platecall.day.Day;
import platecall.plan.Plan;
import platecall.report.Labels.Placed;
import platecall.units.Moment;
import platecall.units.Span;

class ChartsTest {

    private static Stream<TimeChart> charts() {
        return charts(InnPlans.day(), InnPlans.plan());
    }

    private static Stream<TimeChart> charts(Day day, Plan plan) {
        return Stream.of(GanttCamera.of(day, plan), GanttStations.of(day, plan), GanttHands.of(day, plan));
    }

    private static TimeChart.Picture drawn(TimeChart chart) {
        TimeChart.Picture picture = chart.picture();
        Graphics2D g = new BufferedImage(picture.width, picture.height, BufferedImage.TYPE_INT_RGB).createGraphics();
        picture.draw(g);
        g.dispose();
        return picture;
    }

    private static Document svg(TimeChart chart) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(Image.svg(chart, "title")));
    }

    private static List<String> texts(Document svg) {
        NodeList texts = svg.getElementsByTagName("text");
        return Stream.iterate(0, i -> i < texts.getLength(), i -> i + 1)
                .map(i -> texts.item(i).getTextContent().strip())
                .toList();
    }

    @ParameterizedTest
    @MethodSource("charts")
    void noLabelTouchesAnotherOrLeavesThePicture(TimeChart chart) {
        TimeChart.Picture picture = drawn(chart);
        List<Placed> labels = picture.labels();
        assertThat(labels).hasSizeGreaterThan(60);
        Rectangle2D all = new Rectangle2D.Double(0, 0, picture.width, picture.height);
        for (int i = 0; i < labels.size(); i++) {
            assertThat(all.contains(labels.get(i).area()))
                    .as(labels.get(i).text())
                    .isTrue();
            for (int j = 0; j < i; j++) {
                assertThat(labels.get(i).area().intersects(labels.get(j).area()))
                        .as(labels.get(i) + " over " + labels.get(j))
                        .isFalse();
            }
        }
    }

    @ParameterizedTest
    @MethodSource("charts")
    void everyCallIsLabelledAndEveryInkIsInTheLegend(TimeChart chart) {
        List<String> labels = drawn(chart).labels().stream().map(Placed::text).toList();
        assertThat(labels).contains("call 1A 09:00", "call 6B 16:45", "call 8 18:10");
    }

    @Test
    void legendNamesSetupsAndMeanings() {
        assertThat(drawn(GanttHands.of(InnPlans.day(), InnPlans.plan())).labels())
                .extracting(Placed::text)
                .contains("for 1A", "for 8", "for several setups", "meal break", "closed or away");
        assertThat(drawn(GanttCamera.of(InnPlans.day(), InnPlans.plan())).labels())
                .extracting(Placed::text)
                .contains("take rolls", "at its peak", "usable, past its peak", "late");
    }

    @Test
    void everyCopyHasItsRowAndItsTimes() throws Exception {
        List<String> texts = texts(svg(GanttCamera.of(InnPlans.day(), InnPlans.plan())));
        assertThat(texts).contains("Setup 1A · 09:00 · inn", "goose hero 1", "soup hero 4", "cream insert 4");
        assertThat(texts.stream().filter(text -> text.startsWith("there ")))
                .hasSize(InnPlans.plan().copies().size());
    }

    @ParameterizedTest
    @MethodSource("charts")
    void vectorPicturesAreWellFormedAndKeepTheirWidths(TimeChart chart) throws Exception {
        Document svg = svg(chart);
        assertThat(svg.getDocumentElement().getTagName()).isEqualTo("svg");
        assertThat(svg.getDocumentElement().getAttribute("role")).isEqualTo("img");
        assertThat(svg.getElementsByTagName("desc").item(0).getTextContent()).contains("sequence.csv");
        assertThat(svg.getDocumentElement().getAttribute("viewBox")).startsWith("0 0 ");
        assertThat(svg.getElementsByTagName("title").item(0).getTextContent()).isEqualTo("title");
        NodeList texts = svg.getElementsByTagName("text");
        assertThat(texts.getLength()).isGreaterThan(60);
        for (int i = 0; i < texts.getLength(); i++) {
            Element text = (Element) texts.item(i);
            assertThat(Double.parseDouble(text.getAttribute("textLength"))).isPositive();
            assertThat(text.getAttribute("font-family")).startsWith("'DejaVu Sans Condensed'");
        }
    }

    @ParameterizedTest
    @MethodSource("charts")
    void pixelPicturesHaveTheMeasuresOfTheChart(TimeChart chart) throws IOException {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(Image.png(chart)));
        TimeChart.Picture picture = chart.picture();
        assertThat(image.getWidth()).isEqualTo(picture.width);
        assertThat(image.getHeight()).isEqualTo(picture.height);
    }

    @Test
    void aHugePictureIsMadeSmallerSoThatItFitsIntoMemory() throws IOException {
        TimeChart chart = new TimeChart("huge", Clock.of(InnPlans.day(), InnPlans.plan()), 5);
        chart.show(Span.ofMinutes(InnDay.at(0, 9, 0), 600));
        chart.row("high", 1, 15_000);
        TimeChart.Picture picture = chart.picture();
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(Image.png(chart)));
        assertThat((long) picture.width * picture.height).isGreaterThan(45_000_000);
        assertThat((long) image.getWidth() * image.getHeight()).isBetween(39_900_000L, 40_100_000L);
    }

    @Test
    void theNightBetweenTwoKitchenDaysIsLeftOut() throws Exception {
        List<String> texts = texts(svg(GanttHands.of(InnPlans.day(), InnPlans.plan())));
        assertThat(texts).contains("Friday 13 March 2026", "Saturday 14 March 2026", "19:00", "09:00");
        assertThat(texts).doesNotContain("23:00", "00:00", "03:00");
    }

    @Test
    void aPictureGrowsWithItsRows() {
        Clock clock = Clock.of(InnPlans.day(), InnPlans.plan());
        Span hour = Span.ofMinutes(InnDay.at(0, 9, 0), 60);
        TimeChart few = new TimeChart("few", clock, 5);
        few.show(hour);
        few.row("one", 1, 20);
        TimeChart many = new TimeChart("many", clock, 5);
        many.show(hour);
        for (int i = 0; i < 60; i++) {
            many.row("row " + i, 1, 20);
        }
        assertThat(many.picture().height - few.picture().height).isEqualTo(59 * 27);
    }

    /** By hand: ten hours of one low row are a page's shape in four bands; in three they are too wide, in five too high. */
    @Test
    void aWideChartIsLaidOutInBandsThatShowAllOfItsTime() throws Exception {
        EggDay eggs = new EggDay(ZoneId.of("Etc/GMT-3"), LocalDate.of(2026, 3, 14));
        TimeChart chart = new TimeChart("wide", Clock.of(eggs.day(), eggs.plan()), 5);
        chart.row("one", 1, 20);
        chart.show(new Span(eggs.at(8, 0), eggs.at(18, 0)));
        for (int hour = 8; hour < 18; hour++) {
            chart.call(eggs.at(hour, 25), "call " + hour);
        }
        int wide = chart.picture().width;
        chart.inBands();
        TimeChart.Picture picture = drawn(chart);
        assertThat(picture.width).isLessThan(wide / 3);
        assertThat(picture.labels())
                .extracting(Placed::text)
                .containsExactlyInAnyOrder(
                        IntStream.range(8, 18).mapToObj(hour -> "call " + hour).toArray(String[]::new));
        List<String> texts = texts(svg(chart));
        assertThat(texts).contains("08:00", "11:15", "14:45", "18:00");
        assertThat(texts.stream().filter("one"::equals)).hasSize(4);
    }

    @Test
    void theHourThatComesTwiceIsOnTheAxisTwice() throws Exception {
        // Europe/Berlin, 25 October 2026: 03:00 CEST is 02:00 CET (IANA time zone database)
        EggDay eggs = new EggDay(ZoneId.of("Europe/Berlin"), LocalDate.of(2026, 10, 25));
        List<String> texts = texts(svg(GanttHands.of(eggs.day(), eggs.plan())));
        assertThat(texts).contains("02:00 +02", "02:00 +01").doesNotContain("02:00");
    }

    @Test
    void timesOnTheAxisNeitherTouchNorLeaveThePicture() throws Exception {
        // as above: times of the hour that comes twice are wider; and the axis ends a minute after a quarter
        EggDay eggs = new EggDay(ZoneId.of("Europe/Berlin"), LocalDate.of(2026, 10, 25));
        TimeChart chart = new TimeChart("twice", Clock.of(eggs.day(), eggs.plan()), 4.4);
        chart.row("one", 1, 20);
        chart.show(new Span(eggs.at(1, 0), eggs.at(4, 46)));
        NodeList texts = svg(chart).getElementsByTagName("text");
        List<Element> times = Stream.iterate(0, i -> i < texts.getLength(), i -> i + 1)
                .map(i -> (Element) texts.item(i))
                .filter(text -> text.getTextContent().strip().matches("\\d\\d:\\d\\d( \\+\\d\\d)?"))
                .toList();
        assertThat(times).extracting(Element::getTextContent).contains("01:45", "02:00 +02", "02:30 +01", "03:45");
        for (int i = 0; i < times.size(); i++) {
            double end = number(times.get(i), "x") + number(times.get(i), "textLength");
            boolean last = i + 1 == times.size()
                    || !times.get(i).getAttribute("y").equals(times.get(i + 1).getAttribute("y"));
            assertThat(end).isLessThan(last ? chart.picture().width - 14 : number(times.get(i + 1), "x"));
        }
    }

    private static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }

    @Test
    void aCopyPastUseOnCameraIsNotCalledLate() throws Exception {
        EggDay eggs = new EggDay();
        eggs.usableMinutes = 12;
        eggs.laterUsableMinutes = 7;
        assertThat(texts(svg(GanttCamera.of(eggs.day(), eggs.plan(List.of(), 4)))))
                .contains(
                        "there 04:04, late 4 min, past its peak, past use on camera by 1 min",
                        "there 04:10, peak to 04:14, past use on camera by 2 min");
    }

    @Test
    void whatIsStoredHasNoColourOfASetup() {
        assertThat(Palette.FILLS).doesNotContain(GanttStations.STORED.fill());
    }

    @Test
    void axisRunsOnPastMidnight() throws Exception {
        EggDay eggs = new EggDay(ZoneId.of("Etc/GMT-3"), LocalDate.of(2026, 3, 14));
        Clock clock = Clock.of(eggs.day(), eggs.plan());
        TimeChart chart = new TimeChart("night", clock, 5);
        chart.row("one", 1, 20);
        chart.show(new Span(eggs.at(23, 0), eggs.at(25, 0)));
        assertThat(texts(svg(chart)))
                .containsSubsequence("23:45", "00:00", "00:15")
                .contains("Sat 14 Mar to Sun 15 Mar");
    }

    @Test
    void callsCloseTogetherAreStaggered() {
        EggDay eggs = new EggDay();
        TimeChart chart = new TimeChart("calls", Clock.of(eggs.day(), eggs.plan()), 5);
        chart.row("one", 1, 20);
        for (int i = 0; i < 4; i++) {
            chart.call(eggs.at(4, 5 * i), "call " + i + " 04:0" + i);
        }
        List<Placed> labels = drawn(chart).labels();
        assertThat(labels).hasSize(4);
        assertThat(labels.stream().map(label -> label.area().getY()).distinct()).hasSize(4);
    }

    @Test
    void worksAtTheSameTimeGetLanesOfTheirOwn() {
        EggDay eggs = new EggDay();
        assertThat(TimeChart.lanes(
                        List.of(eggs.span(2, 0, 10), eggs.span(2, 5, 10), eggs.span(2, 10, 10), eggs.span(1, 0, 5))))
                .containsExactly(0, 1, 0, 0);
    }

    @Test
    void longNamesAreCutToTheirRoom() {
        String cut = Labels.cut("an exceedingly long name of a dish that nobody can carry", 100);
        assertThat(cut).startsWith("an exc").endsWith("…");
        assertThat(Labels.width(cut)).isLessThanOrEqualTo(100);
        assertThat(Labels.cut("short", 100)).isEqualTo("short");
    }

    @Test
    void hostileNamesAreTextInPictures() throws Exception {
        EggDay eggs = new EggDay();
        eggs.person = "<script>x</script> & \u0001";
        byte[] svg = Image.svg(GanttHands.of(eggs.day(), eggs.plan()), "t");
        assertThat(new String(svg, StandardCharsets.UTF_8))
                .contains("&lt;script")
                .doesNotContain("<script>");
        assertThat(texts(svg(GanttHands.of(eggs.day(), eggs.plan())))).contains("<script>x</script> &");
    }

    @Test
    void aPlanWithoutWorkStillHasPictures() {
        EggDay eggs = new EggDay();
        Plan plan = eggs.plan();
        Plan empty = new Plan(
                plan.day(),
                plan.dayDigest(),
                plan.version(),
                1,
                0,
                Optional.empty(),
                List.<Moment>of(),
                List.of(),
                List.of(),
                List.of(),
                plan.points(),
                plan.bound(),
                plan.verdict());
        assertThat(charts(eggs.day(), empty).map(ChartsTest::drawn))
                .allSatisfy(picture -> assertThat(picture.width).isGreaterThan(300));
    }
}

package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static platecall.audit.Audited.sentences;
import static platecall.audit.Audited.totals;
import static platecall.day.TestDays.span;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Rule;
import platecall.plan.TestPlans;

class OvenRuleTest {

    /** Bread at 220 °C and meringue at 100 °C in an oven that gains 10 °C and loses 5 °C a minute. */
    private static TestDays breadAndMeringue() {
        return new TestDays()
                .place("kitchen", place -> {})
                .setup("S1", "12:00", setup -> {})
                .dish("bread", dish -> {})
                .dish("meringue", dish -> {})
                .need("S1", "bread", "bake", need -> {})
                .need("S1", "meringue", "bake", need -> {})
                .step("bread", "bake", 30, step -> step.uses("oven", 1).oven = Optional.of(220))
                .step("meringue", "bake", 60, step -> step.uses("oven", 1).oven = Optional.of(100))
                .station("oven", Station.Kind.OVEN, 2, station -> {
                    station.hours = List.of(span("08:00-16:00"));
                    station.heat = 10;
                    station.cool = 5;
                });
    }

    private static TestPlans plan(Day day, String bread, String meringue) {
        return TestPlans.of(day)
                .step("bread", "bake", 1, bread, work -> work.on("oven", 1).at(220))
                .step(
                        "meringue",
                        "bake",
                        1,
                        meringue,
                        work -> work.on("oven", 1).at(100));
    }

    @Test
    void coolingDownTakesItsTime() {
        Day day = breadAndMeringue().build();

        // (220 - 100) °C at 5 °C a minute: 24 minutes
        assertThat(totals(day, plan(day, "08:30-09:00", "09:24-10:24"))).isEmpty();
        assertThat(totals(day, plan(day, "08:30-09:00", "09:22-10:22"))).isEqualTo(Map.of(Rule.OVEN, 2L));
        assertThat(sentences(day, plan(day, "08:30-09:00", "09:22-10:22")))
                .containsExactly("oven needs 24 minutes from 220 to 100 °C after bake of Bread #1 for setup S1 until"
                        + " 09:00, but bake of Meringue #1 for setup S1 starts at 09:22, 2 minutes too early");
    }

    @Test
    void heatingUpTakesItsTime() {
        Day day = breadAndMeringue().build();

        // (220 - 100) °C at 10 °C a minute: 12 minutes
        assertThat(totals(day, plan(day, "09:42-10:12", "08:30-09:30"))).isEmpty();
        assertThat(totals(day, plan(day, "09:39-10:09", "08:30-09:30"))).isEqualTo(Map.of(Rule.OVEN, 3L));
    }

    @Test
    void oneOvenHasOneTemperature() {
        Day day = breadAndMeringue().build();

        // 10 minutes side by side and the 24 minutes of the change
        assertThat(totals(day, plan(day, "08:30-09:00", "08:50-09:50"))).isEqualTo(Map.of(Rule.OVEN, 34L));
    }

    @Test
    void theSameTemperatureIsShared() {
        Day day = breadAndMeringue()
                .step("meringue", "bake", 60, step -> step.uses("oven", 1).oven = Optional.of(220))
                .build();
        TestPlans plan = TestPlans.of(day)
                .step(
                        "bread",
                        "bake",
                        1,
                        "08:30-09:00",
                        work -> work.on("oven", 1).at(220))
                .step(
                        "meringue",
                        "bake",
                        1,
                        "08:40-09:40",
                        work -> work.on("oven", 1).at(220));

        assertThat(totals(day, plan)).isEmpty();
    }

    /** What is in longest tells until when the oven can't change, not what was put in last. */
    @Test
    void theChangeBeginsOnceAllIsOut() {
        Day day = breadAndMeringue()
                .dish("tart", dish -> {})
                .need("S1", "tart", "bake", need -> {})
                .step("tart", "bake", 10, step -> step.uses("oven", 1).oven = Optional.of(220))
                .build();
        TestPlans plan = plan(day, "08:30-09:00", "09:20-10:20")
                .step(
                        "tart",
                        "bake",
                        1,
                        "08:40-08:50",
                        work -> work.on("oven", 1).at(220));
        // from 09:00 to 09:24, not from 08:50
        assertThat(totals(day, plan)).isEqualTo(Map.of(Rule.OVEN, 4L));
    }

    @Test
    void anOvenOpensCold() {
        Day day = breadAndMeringue().build();

        // (220 - 20) °C at 10 °C a minute: 20 minutes
        assertThat(totals(day, plan(day, "08:20-08:50", "09:30-10:30"))).isEmpty();
        assertThat(totals(day, plan(day, "08:15-08:45", "09:30-10:30"))).isEqualTo(Map.of(Rule.OVEN, 5L));
        assertThat(sentences(day, plan(day, "08:15-08:45", "09:30-10:30")))
                .containsExactly("oven opens cold at 08:00 and needs 20 minutes to 220 °C, but bake of Bread #1 for"
                        + " setup S1 starts at 08:15, 5 minutes too early");
    }

    @Test
    void anOvenIsColdAgainAtItsNextOpening() {
        Day day = breadAndMeringue()
                .station("oven", Station.Kind.OVEN, 2, station -> {
                    station.hours = List.of(span("07:00-09:00"), span("10:00-12:00"));
                    station.heat = 10;
                })
                .build();

        // (100 - 20) °C at 10 °C a minute: 8 minutes from 10:00
        assertThat(totals(day, plan(day, "08:30-09:00", "10:08-11:08"))).isEmpty();
        assertThat(totals(day, plan(day, "08:30-09:00", "10:05-11:05"))).isEqualTo(Map.of(Rule.OVEN, 3L));
    }
}

package platecall.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.plan.Plan;
import platecall.plan.Plan.Hands;
import platecall.plan.Plan.Work;
import platecall.plan.TestPlans;
import platecall.report.Stretch.Phase;
import platecall.units.Span;

/** How work and copies are named. */
class WordsTest {

    private final EggDay eggs = new EggDay();

    private Work work(int minutes, Hands... hands) {
        return new Work(
                "w",
                Work.Kind.STEP,
                "egg",
                "bake",
                List.of("S1/egg/crack/hero#1"),
                eggs.span(2, 0, minutes),
                List.of(),
                Optional.empty(),
                List.of(hands),
                List.of());
    }

    private Hands hands(String person, int from, int minutes) {
        return new Hands(person, eggs.span(2, from, minutes));
    }

    @Test
    void workWithHandsThroughoutIsOneStretch() {
        assertThat(Stretch.of(work(10, hands("Ada", 0, 10)))).singleElement().satisfies(stretch -> {
            assertThat(stretch.phase()).isEqualTo(Phase.WHOLE);
            assertThat(stretch.who()).containsExactly("Ada");
        });
        assertThat(Stretch.of(work(10))).singleElement().satisfies(stretch -> {
            assertThat(stretch.phase()).isEqualTo(Phase.WHOLE);
            assertThat(stretch.handsOn()).isFalse();
        });
    }

    @Test
    void handsAtBothEndsGiveThreeStretchesWithoutGaps() {
        List<Stretch> stretches = Stretch.of(work(20, hands("Ada", 0, 2), hands("Bo", 17, 3)));
        assertThat(stretches).extracting(Stretch::phase).containsExactly(Phase.FIRST, Phase.ALONE, Phase.LAST);
        assertThat(stretches).extracting(Stretch::who).containsExactly(List.of("Ada"), List.of(), List.of("Bo"));
        assertThat(stretches)
                .extracting(Stretch::span)
                .containsExactly(eggs.span(2, 0, 2), eggs.span(2, 2, 15), eggs.span(2, 17, 3));
    }

    @Test
    void aSecondPairOfHandsThatComesLaterEndsNoWork() {
        assertThat(Stretch.of(work(10, hands("Ada", 0, 10), hands("Bo", 4, 6))))
                .extracting(Stretch::phase)
                .containsExactly(Phase.BETWEEN, Phase.BETWEEN);
    }

    @Test
    void handsOutsideTheWorkAreLeftOut() {
        Span early = eggs.span(1, 50, 5);
        assertThat(Stretch.of(work(10, new Hands("Ada", early))))
                .extracting(Stretch::span)
                .containsExactly(eggs.span(2, 0, 10));
    }

    @Test
    void copiesAreNamedByRanges() {
        Plan plan = InnPlans.plan();
        Copies copies = new Copies(plan);
        List<String> soup =
                List.of("2/soup/ladle/hero#1", "2/soup/ladle/hero#3", "2/soup/ladle/hero#2", "1C/soup/ladle/hero#4");
        assertThat(copies.names(soup)).isEqualTo("setup 1C hero 4; setup 2 hero 1-3");
        assertThat(copies.names(soup.subList(0, 2))).isEqualTo("hero 1, 3");
        assertThat(copies.setups(soup)).containsExactly("1C", "2");
        assertThatThrownBy(() -> copies.names(List.of("9/nothing")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("[9/nothing]");
    }

    @Test
    void namesLoseWhatNoPaperCanShow() {
        assertThat(Wording.plain(" a\u0000b\tc\nd\uD800 ")).isEqualTo("a b c d");
    }

    @Test
    void anOvenIsSetByWhoeverIsFreeIfTheOneWhoPutsTheFoodInIsNot() {
        eggs.helpers = List.of("Bo", "Cy");
        Plan busy = eggs.with(eggs.extra(
                "peel",
                eggs.span(1, 40, 10),
                "bench",
                List.of(new Hands("Ada", eggs.span(1, 40, 10)), new Hands("Bo", eggs.span(1, 40, 10)))));
        Station oven = eggs.day().station("oven").orElseThrow();
        assertThat(OvenChange.of(eggs.day(), oven, busy).get(0).who()).contains("Cy");
        assertThat(OvenChange.of(eggs.day(), oven, eggs.plan()).get(0).who()).contains("Ada");
    }

    @Test
    void noNumberIsPartedFromItsUnitAndNoLineBeginsWithADot() {
        RunSheet.Line line = new RunSheet.Line(
                "",
                "",
                "15 h 47 min",
                "",
                "",
                "",
                List.of("180 °C", "then within 20 min"),
                false,
                "egg",
                "",
                "",
                false);
        assertThat(line.words()).containsExactly("180 °C ·", "then", "within", "20 min ·");
        assertThat(line.length()).isEqualTo("15\u00a0h 47\u00a0min");
    }

    @Test
    void onlyAnOvenIsSet() {
        Plan.Work bake = eggs.plan().work().get(0);
        List<Plan.StationHold> both = List.of(bake.stations().get(0), new Plan.StationHold("bench", 1));
        Plan plan = eggs.doing(List.of(new Plan.Work(
                bake.id(),
                bake.kind(),
                bake.dish(),
                bake.step(),
                bake.copies(),
                bake.span(),
                both,
                bake.ovenCelsius(),
                bake.hands(),
                bake.storage())));
        Station oven = eggs.day().station("oven").orElseThrow();
        Station bench = eggs.day().station("bench").orElseThrow();

        assertThat(OvenChange.of(eggs.day(), oven, plan)).hasSize(1);
        assertThat(OvenChange.of(eggs.day(), bench, plan)).isEmpty();
        assertThat(OvenChange.celsius(oven, plan.work().get(0))).contains(180);
        assertThat(OvenChange.celsius(bench, plan.work().get(0))).isEmpty();
    }

    @Test
    void theOvenIsSetInTimeForItsFirstUse() {
        // 160 degrees at 10 a minute: 16 minutes (own calculation)
        assertThat(OvenChange.of(eggs.day(), eggs.day().station("oven").orElseThrow(), eggs.plan()))
                .containsExactly(new OvenChange("oven", eggs.at(1, 44), eggs.at(2, 0), 180, Optional.of("Ada")));
    }

    /** Cid must not eat celery, which is in the stew that Dee eats, a vegan; nuts are nowhere, and Eve eats nothing. */
    @Test
    void whoEatsBesideFoodThatHeOrSheMustNotEatIsTold() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("S1", "11:00", setup -> {})
                .dish("tart", dish -> {})
                .dish("stew", dish -> dish.carry = 5)
                .need("S1", "tart", "dress", need -> need.eatenBy = List.of("Cid"))
                .need("S1", "stew", "cook", need -> need.eatenBy = List.of("Dee"))
                .step("tart", "cut", 5, step -> step.hands = 1)
                .step("tart", "dress", 5, step -> step.after("cut").hands = 1)
                .step("stew", "chop", 5, step -> step.hands = 1)
                .step("stew", "cook", 5, step -> step.after("chop").hands = 1)
                .ingredient("stew", "root", ingredient -> ingredient.allergens = List.of("celery"))
                .diner("Cid", "celery", "nuts")
                .vegan("Dee")
                .diner("Eve", "celery")
                .build();
        Plan plan = TestPlans.of(day)
                .step("tart", "cut", 1, "10:00-10:05", work -> work.by("Ana"))
                .step("tart", "dress", 1, "10:05-10:10", work -> work.by("Ana"))
                .step("stew", "chop", 1, "10:10-10:15", work -> work.by("Ana"))
                .step("stew", "cook", 1, "10:15-10:20", work -> work.by("Ana"))
                .carry("stew", 1, "10:20-10:25", work -> work.by("Ana"))
                .build();
        Wording wording = new Wording(day, plan);
        assertThat(wording.crossContact())
                .contains("Allergies and diets: Cid no celery (in Stew), no nuts, eats Tart; Dee vegan, eats Stew."
                        + " Clean hands, boards, tools and stations between other food and theirs.");
        assertThat(plan.work().stream()
                        .map(work ->
                                String.join(", ", wording.notes(Stretch.of(work).get(0), ""))))
                .satisfiesExactly(
                        cut -> assertThat(cut).isEqualTo("for Cid (no celery, nuts), gloves or tongs"),
                        dress -> assertThat(dress).isEqualTo("eaten by Cid (no celery, nuts), gloves or tongs"),
                        chop -> assertThat(chop).isEqualTo("gloves or tongs"),
                        cook -> assertThat(cook).isEqualTo("for Dee (vegan), gloves or tongs"),
                        carry -> assertThat(carry).endsWith("eaten by Dee (vegan)"));
    }

    /** Nothing of the day has nuts in it. */
    @Test
    void anAllergyIsToldThoughNoDishHasItInIt() {
        Day day = TestDays.firstEgg()
                .need("S1", "egg", "plate", need -> need.eatenBy = List.of("Cid"))
                .diner("Cid", "nuts")
                .diner("Eve", "milk")
                .build();
        assertThat(new Wording(day, TestPlans.of(day).build()).crossContact())
                .contains("Allergies and diets: Cid no nuts, eats Egg."
                        + " Clean hands, boards, tools and stations between other food and theirs.");
    }

    /** By hand: the first stew is cut from 06:00 on and stands out, cold, for its four hours until 10:00; the second one from 10:30 on. */
    @Test
    void whatStoodTooLongIsWarnedOffAtEachStepFromThenOn() {
        Day day = new TestDays()
                .with(days -> days.kitchen = List.of(TestDays.span("06:00-22:00")))
                .place("kitchen", place -> {})
                .person("Ana", person -> {})
                .setup("S1", "12:00", setup -> setup.takes(2))
                .dish("stew", dish -> dish.controlled = true)
                .need("S1", "stew", "plate", need -> need.copies(2))
                .step("stew", "cut", 10, step -> step.raw = true)
                .step("stew", "fry", 10, step -> step.after("cut").uses("hob", 1).core = Optional.of(74.0))
                .step("stew", "plate", 5, step -> step.after("fry"))
                .station("hob", Station.Kind.BURNERS, 2, station -> {})
                .build();
        Plan plan = TestPlans.of(day)
                .step("stew", "cut", 1, "06:00-06:10", work -> work.by("Ana"))
                .step("stew", "cut", 2, "10:30-10:40", work -> work.by("Ana"))
                .step(
                        "stew",
                        "fry",
                        1,
                        "11:30-11:40",
                        work -> work.and("S1/stew/plate/hero#2").on("hob", 1))
                .step("stew", "plate", 1, "11:40-11:45", work -> work.by("Ana"))
                .step("stew", "plate", 2, "11:50-11:55", work -> work.by("Ana"))
                .build();
        Wording wording = new Wording(day, plan);
        assertThat(plan.work())
                .extracting(work -> wording.notes(Stretch.of(work).get(0), "").stream()
                        .filter(note -> note.contains("DO NOT EAT"))
                        .toList())
                .containsExactly(
                        List.of(),
                        List.of(),
                        List.of("hero 1: DO NOT EAT after 10:00"),
                        List.of("DO NOT EAT after 10:00"),
                        List.of());
        assertThat(RunSheet.of(
                                day,
                                plan,
                                Changes.none(day, plan),
                                List.of(),
                                Imprint.of(plan, eggs.span(2, 0, 1).start().in(TestDays.ZONE)),
                                Paper.A4)
                        .stations())
                .flatExtracting(RunSheet.Section::lines)
                .flatExtracting(RunSheet.Line::notes)
                .contains("hero 1: DO NOT EAT after 10:00");
    }

    /** Celery goes in at the second of three steps, flour at the first; Cid eats the tart and must have no celery. */
    @Test
    void eachWorkTellsWhatAllergensAreInByThenAndWhoMustNotHaveThem() {
        Day day = new TestDays()
                .place("kitchen", place -> {})
                .place("set", place -> place.walk.put("kitchen", 3))
                .person("Ana", person -> {})
                .setup("S1", "11:00", setup -> setup.place = "set")
                .dish("tart", dish -> {})
                .dish("stew", dish -> {})
                .need("S1", "tart", "cut", need -> need.eatenBy = List.of("Cid"))
                .need("S1", "stew", "serve", need -> {})
                .step("tart", "cut", 5, step -> step.hands = 1)
                .step("stew", "thicken", 5, step -> step.hands = 1)
                .step("stew", "cook", 5, step -> {
                    step.after("thicken");
                    step.hands = 1;
                })
                .step("stew", "serve", 5, step -> {
                    step.after("cook");
                    step.hands = 1;
                })
                .ingredient("stew", "flour", flour -> flour.allergens = List.of("wheat"))
                .ingredient("stew", "root", root -> {
                    root.allergens = List.of("celery");
                    root.step = Optional.of("cook");
                })
                .ingredient("stew", "walnuts", walnuts -> walnuts.step = Optional.of("serve"))
                .diner("Cid", "celery", "walnuts")
                .diner("Eve", "wheat")
                .build();
        Plan plan = TestPlans.of(day)
                .step("tart", "cut", 1, "10:00-10:05", work -> work.by("Ana"))
                .step("stew", "thicken", 1, "10:10-10:15", work -> work.by("Ana"))
                .step("stew", "cook", 1, "10:15-10:20", work -> work.by("Ana"))
                .step("stew", "serve", 1, "10:20-10:25", work -> work.by("Ana"))
                .carry("stew", 1, "10:25-10:28", work -> work.by("Ana"))
                .build();
        Wording wording = new Wording(day, plan);
        String all = "celery (not for Cid), walnuts (not for Cid), wheat";
        assertThat(plan.work())
                .extracting(wording::allergens)
                .containsExactly("", "wheat", "celery (not for Cid), wheat", all, all);
        assertThat(wording.allergens("stew", "no such step")).isEqualTo(all);
        assertThat(RunSheet.of(
                                day,
                                plan,
                                Changes.none(day, plan),
                                List.of(),
                                Imprint.of(plan, eggs.span(2, 0, 1).start().in(TestDays.ZONE)),
                                Paper.A4)
                        .people()
                        .get(0)
                        .lines())
                .extracting(RunSheet.Line::allergens)
                .containsExactly("", "wheat", "celery (not for Cid), wheat", all, all);
    }
}

package platecall.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.entry;
import static platecall.audit.Audited.eggs;
import static platecall.audit.Audited.secondEgg;
import static platecall.day.TestDays.at;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Part;
import platecall.day.TestDays;
import platecall.day.Use;
import platecall.plan.Plan.Readiness;
import platecall.plan.Plan.Work;
import platecall.plan.TestPlans;

class ReadinessTableTest {

    private static Readiness first(Day day, TestPlans plan) {
        return Audit.of(day, plan.build()).setups().get(0);
    }

    /** Egg 1 is there at 09:57, egg 2 at 10:12. */
    private static TestPlans secondAt1012(Day day) {
        return TestPlans.of(day)
                .step("egg", "crack", 1, "09:50-09:52", work -> work.by("Ana"))
                .step("egg", "fry", 1, "09:52-09:56", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, "09:56-09:57", work -> work.by("Ana"))
                .step("egg", "crack", 2, "10:05-10:07", work -> work.by("Ana"))
                .step("egg", "fry", 2, "10:07-10:11", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 2, "10:11-10:12", work -> work.by("Ana"));
    }

    @Test
    void aSetupIsReadyWhenItsFirstTakeIsAtCamera() {
        Day day = TestDays.firstEgg().build();

        assertThat(first(day, eggs(day)))
                .isEqualTo(new Readiness(
                        "S1",
                        at("10:00"),
                        Optional.of(at("09:57")),
                        3,
                        Optional.of(at("10:12")),
                        1,
                        Optional.of(at("10:07")),
                        "Ready 3 min before call"));
    }

    @Test
    void aLateFirstTakeHasANegativeMargin() {
        Day day = TestDays.firstEgg().build();
        TestPlans plan = secondEgg(TestPlans.of(day)
                .step("egg", "crack", 1, "10:00-10:02", work -> work.by("Ben"))
                .step("egg", "fry", 1, "10:02-10:06", work -> work.by("Ben").on("burners", 1))
                .step("egg", "plate", 1, "10:06-10:07", work -> work.by("Ben")));

        assertThat(first(day, plan).marginMinutes()).isEqualTo(-7);
        assertThat(first(day, plan).words()).isEqualTo("LATE by 7 min: Egg #1");
        assertThat(Audit.of(day, plan.build()).lateMinutes()).isEqualTo(7);
    }

    @Test
    void aLateResetIsNamedBesideTheReadyFirstTake() {
        Day day = TestDays.firstEgg().build();
        TestPlans plan = secondAt1012(day);

        assertThat(first(day, plan).words()).isEqualTo("LATE by 2 min: Egg #2; first take ready 3 min before call");
    }

    /** One plate that lasts both takes, and a spare of it that comes at 10:12: nothing waits for that. */
    @Test
    void aLateSpareDoesNotKeepTheFirstTakeWaiting() {
        Day day = TestDays.firstEgg()
                .need("S1", "egg", "plate", need -> {
                    need.use = new Use.LastsTakes(2);
                    need.copies(2);
                })
                .build();
        TestPlans plan = secondAt1012(day);

        assertThat(first(day, plan).marginMinutes()).isEqualTo(3);
        assertThat(first(day, plan).words()).isEqualTo("LATE by 12 min: Egg #2; first take ready 3 min before call");
    }

    /** Two eggs for two takes, the second there at 10:07, and two spares, at 10:20; with the first of three shot, the third take's is the third. */
    @Test
    void theNextResetWaitsForNoSpare() {
        for (boolean shot : new boolean[] {false, true}) {
            Day day = TestDays.firstEgg()
                    .setup("S1", "10:00", setup -> {
                        setup.takes(shot ? 3 : 2);
                        if (shot) {
                            setup.shot(1, "10:10");
                        }
                    })
                    .need("S1", "egg", "plate", need -> need.copies(4))
                    .build();
            TestPlans plan = eggs(day);
            for (int number : List.of(3, 4)) {
                String plated = shot && number == 3 ? "10:13-10:14" : "10:19-10:20";
                plan.step("egg", "plate", number, plated, work -> work.by("Ben"));
            }
            assertThat(first(day, plan).resetsQueued()).isEqualTo(1);
            assertThat(first(day, plan).nextResetAt()).contains(at(shot ? "10:14" : "10:07"));
        }
    }

    @Test
    void whatIsNotMadeIsNamed() {
        Day day = TestDays.firstEgg().build();

        Readiness none = first(day, TestPlans.of(day));
        assertThat(none.ready()).isEmpty();
        assertThat(none.marginMinutes()).isZero();
        assertThat(none.words()).isEqualTo("Not makeable: Egg #1, Egg #2");
    }

    @Test
    void whatIsNotEvenInThePlanIsNamed() {
        Day day = TestDays.firstEgg().build();

        assertThat(first(day, TestPlans.of(day).copies("S1/egg/plate/hero", 0)).words())
                .isEqualTo("Not makeable: Egg");
    }

    @Test
    void aDishShownPastUseIsNamed() {
        Day day = TestDays.firstEgg()
                .dish("egg", dish -> dish.look = Look.table(0, 4, 6))
                .build();

        // plated three minutes before they roll, seen for five: two minutes past use
        assertThat(first(day, eggs(day)).words())
                .isEqualTo("PAST USE on camera by up to 2 min: Egg #1, Egg #2; first take ready 3 min before call");
    }

    /** Plated three minutes before they roll. */
    @Test
    void aHeroPastItsPeakIsTold() {
        Day lasts = TestDays.firstEgg()
                .dish("egg", dish -> dish.look = Look.table(0, 4, 60))
                .build();
        Day fades = TestDays.firstEgg()
                .dish("egg", dish -> dish.look = Look.table(0, 3, 60))
                .build();
        assertThat(first(lasts, eggs(lasts)).words()).isEqualTo("Ready 3 min before call");
        assertThat(first(fades, eggs(fades)).words())
                .isEqualTo("Ready 3 min before call; hero past peak when its take rolls");
    }

    @Test
    void aFlawIsTheWorstThatIsTheMatterWithASetupReadyAtItsCall() {
        assertThat(flaws(Look.table(0, 60, 90), 2)).isEmpty();
        assertThat(flaws(Look.table(0, 3, 60), 2)).containsExactly(entry("S1", Flaw.PAST_PEAK));
        assertThat(flaws(Look.table(0, 3, 60), 3)).containsExactly(entry("S1", Flaw.SHORT));
        assertThat(flaws(Look.table(0, 3, 6), 3)).containsExactly(entry("S1", Flaw.PAST_USE));
    }

    /** What is the matter with two eggs that stand in the plan, plated three minutes before they roll. */
    private static Map<String, Flaw> flaws(Look look, int wanted) {
        Day day = TestDays.firstEgg()
                .dish("egg", dish -> dish.look = look)
                .need("S1", "egg", "plate", need -> need.copies(wanted))
                .build();
        return Audit.flaws(day, eggs(day).build());
    }

    @Test
    void aLateResetMakesASetupShortAndALateOneHasNoFlaw() {
        Day day = TestDays.firstEgg().build();
        TestPlans lateReset = Audited.firstEgg(day)
                .step("egg", "crack", 2, "10:05-10:07", work -> work.by("Ana"))
                .step("egg", "fry", 2, "10:07-10:11", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 2, "10:11-10:12", work -> work.by("Ana"));
        assertThat(Audit.flaws(day, lateReset.build())).containsExactly(entry("S1", Flaw.SHORT));

        Day earlier = TestDays.firstEgg()
                .setup("S1", "09:50", setup -> setup.takes(2))
                .build();
        assertThat(first(earlier, eggs(earlier)).marginMinutes()).isNegative();
        assertThat(Audit.flaws(earlier, eggs(earlier).build())).isEmpty();
        assertThat(Audit.flaws(day, TestPlans.of(day).build())).isEmpty();
    }

    /** The first egg is plated two minutes earlier than the second before its take. */
    @Test
    void theWorstIsNamedFirst() {
        Day day = TestDays.firstEgg()
                .dish("egg", dish -> dish.look = Look.table(0, 4, 6))
                .build();
        TestPlans plan = Audited.firstEgg(day)
                .step("egg", "crack", 2, "09:58-10:00", work -> work.by("Ana"))
                .step("egg", "fry", 2, "10:00-10:04", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 2, "10:04-10:05", work -> work.by("Ana"));
        assertThat(first(day, plan).words()).startsWith("PAST USE on camera by up to 4 min: Egg #2, Egg #1; ");
    }

    @Test
    void withoutWhatIsOnlyInTheBackgroundItIsSaidWhenAllElseIsThere() {
        TestDays days = TestDays.firstEgg().need("S1", "egg", "plate", need -> {
            need.part = Part.BACKGROUND;
            need.copies(1);
        });
        Day day = days.need("S1", "egg", "plate", need -> need.copies(1)).build();
        for (String part : List.of("hero", "background")) {
            Readiness found = first(
                    day,
                    TestPlans.of(day)
                            .add(
                                    Work.Kind.STEP,
                                    "egg",
                                    "plate",
                                    "S1/egg/plate/" + part + "#1",
                                    TestDays.span("09:50-09:55"),
                                    work -> work.by("Ana")));
            assertThat(found.ready()).isEmpty();
            assertThat(found.words())
                    .isEqualTo(
                            part.equals("hero")
                                    ? "Not makeable: Egg #1 (background); all that the camera looks at is there by 09:55"
                                    : "Not makeable: Egg #1");
        }
    }

    @Test
    void aStandInIsPartOfTheFirstTake() {
        Day day = TestDays.firstEgg()
                .setup("S1", "10:00", setup -> setup.takes(2).lighting = Optional.of(at("09:30")))
                .need("S1", "egg", "plate", need -> need.part = Part.STAND_IN)
                .need("S1", "egg", "plate", need -> need.copies(1))
                .build();
        TestPlans plan = TestPlans.of(day)
                .step("egg", "crack", 1, "09:28-09:30", work -> work.by("Ana"))
                .step("egg", "fry", 1, "09:30-09:34", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, "09:34-09:35", work -> work.by("Ana"));

        assertThat(first(day, plan).words()).isEqualTo("Not makeable: Egg #1; LATE by 5 min: Egg #1 (stand-in)");
    }

    /** Eggs for both takes in time, and a stand-in at 09:40 for 09:30; then the second egg at 10:12 for 10:10. */
    @Test
    void aStandInThatIsLateForLightingMakesNothingShort() {
        Day day = TestDays.firstEgg()
                .setup("S1", "10:00", setup -> setup.takes(2).lighting = Optional.of(at("09:30")))
                .need("S1", "egg", "plate", need -> need.part = Part.STAND_IN)
                .need("S1", "egg", "plate", need -> {})
                .build();
        for (boolean late : new boolean[] {false, true}) {
            TestPlans plan = TestPlans.of(day);
            String[] plated = {"stand-in#1 09:39-09:40", "hero#1 09:56-09:57", "hero#2 10:06-10:07"};
            plated[2] = late ? "hero#2 10:11-10:12" : plated[2];
            for (String egg : plated) {
                plan.add(
                        Work.Kind.STEP,
                        "egg",
                        "plate",
                        "S1/egg/plate/" + egg.split(" ")[0],
                        TestDays.span(egg.split(" ")[1]),
                        work -> work.by("Ana"));
            }
            assertThat(Audit.flaws(day, plan.build()))
                    .containsExactly(entry("S1", late ? Flaw.SHORT : Flaw.STAND_IN_LATE));
        }
    }

    /** By hand: two eggs but one toast, so there is no second take; two takes are likely. */
    @Test
    void takesAreCountedByTheDishThatRunsOutFirst() {
        Day day = TestDays.firstEgg()
                .dish("toast", dish -> {})
                .step("toast", "cut", 1, step -> {})
                .need("S1", "toast", "cut", need -> need.copies(1))
                .build();
        TestPlans plan = TestPlans.of(day)
                .step("egg", "crack", 1, "09:50-09:52", work -> work.by("Ana"))
                .step("egg", "fry", 1, "09:52-09:56", work -> work.by("Ana").on("burners", 1))
                .step("egg", "plate", 1, "09:56-09:57", work -> work.by("Ana"))
                .step("toast", "cut", 1, "09:57-09:58", work -> work.by("Ana"));

        Readiness one = first(day, secondEgg(plan));
        assertThat(one.resetsQueued()).isZero();
        assertThat(one.nextResetAt()).isEmpty();
        assertThat(one.words()).endsWith("; plates for 1 of 2 likely takes");
    }

    /** Two takes are likely, four are shot at worst; of the eggs that are made the last ones are the extra looks. */
    @ParameterizedTest
    @CsvSource({
        "3, 2, 0, Ready 3 min before call; plates for 1 of 2 likely takes",
        "3, 1, 1, Ready 3 min before call",
        "3, 0, 2, Ready 3 min before call",
        "6, 2, 3, Ready 3 min before call",
        "2, 3, 0, Ready 3 min before call; plates for 1 of 2 likely takes"
    })
    void extraLooksAreNoResets(int copies, int extraLooks, int resets, String words) {
        Day day = withExtraLooks(copies, extraLooks, setup -> setup.takes(2).takesWorst = 4);
        Readiness found = first(day, eggsInTime(day, copies));
        assertThat(found.resetsQueued()).isEqualTo(resets);
        assertThat(found.nextResetAt().isPresent()).isEqualTo(resets > 0);
        assertThat(found.words()).isEqualTo(words);
    }

    /** By hand: one of three takes is shot with one of four eggs; of the three that are left one serves a take, two are looked at. */
    @Test
    void extraLooksAreLeftOutOfWhatIsLeftOfADayUnderWay() {
        Day day = withExtraLooks(4, 2, setup -> setup.takes(3).shot(1, "10:10"));
        Readiness found = first(day, eggsInTime(day, 4));
        assertThat(found.resetsQueued()).isZero();
        assertThat(found.words()).endsWith("; plates for 2 of 3 likely takes");
    }

    private static Day withExtraLooks(int copies, int extraLooks, Consumer<TestDays.SetupPart> setup) {
        return TestDays.firstEgg()
                .dish("egg", dish -> dish.look = Look.table(0, 60, 90))
                .setup("S1", "10:00", setup)
                .need("S1", "egg", "plate", need -> need.copies(copies).extraLooks = extraLooks)
                .build();
    }

    private static TestPlans eggsInTime(Day day, int copies) {
        TestPlans plan = TestPlans.of(day);
        for (int number = 1; number <= copies; number++) {
            plan.step("egg", "plate", number, "09:56-09:57", work -> work.by("Ana"));
        }
        return plan;
    }

    @Test
    void aSetupWithoutNeedsWantsNoFood() {
        Day day = TestDays.firstEgg().setup("S2", "11:00", setup -> {}).build();

        Readiness second = Audit.of(day, eggs(day).build()).setups().get(1);
        assertThat(second.words()).isEqualTo("No food wanted");
        assertThat(second.resetsQueued()).isZero();
        assertThat(second.ready()).isEmpty();
    }

    @Test
    void readyAtTheCallIsReady() {
        Day day = TestDays.firstEgg()
                .setup("S1", "09:57", setup -> setup.takes(2))
                .build();

        assertThat(first(day, eggs(day)).words()).isEqualTo("Ready at call");
    }
}

package platecall.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import platecall.day.Day;
import platecall.day.Look;
import platecall.day.Station;
import platecall.day.TestDays;
import platecall.looks.Looks;
import platecall.tasks.Breakdown;

class RuinTest {

    private static final int EARLY = 0;
    private static final int PREPARED = 1;
    private static final int PLATED = 2;

    /**
     * Two cooks: a plate ready 34 minutes before its call, until which one of them prepares something for later, the other plates
     * something that must stay where it is called. A third comes only later.
     */
    private static Kitchen kitchen(Dice dice) {
        TestDays days = new TestDays().place("kitchen", place -> {}).with(facts -> facts.mealAfter = Optional.of(360));
        days.station("counter", Station.Kind.COUNTER, 9, station -> {});
        for (String person : List.of("Ada", "Ben")) {
            days.person(person, hands -> hands.shifts = List.of(TestDays.span("06:00-18:00")));
        }
        days.person("Cal", hands -> hands.shifts = List.of(TestDays.span("11:00-18:00")));
        for (String dish : List.of("early", "prepared", "plated")) {
            days.dish(dish, part -> part.look = Look.table(0, 5, 600));
            days.setup(dish, dish.equals("prepared") ? "12:00" : "10:00", part -> {});
            days.need(dish, dish, "plate", need -> need.copies(1));
        }
        days.step("early", "plate", 4, step -> step.hands = 1);
        days.step("prepared", "cut", 34, step -> step.hands = 1);
        days.step("prepared", "plate", 4, step -> step.after("cut").hands = 1);
        days.step("plated", "plate", 34, step -> step.hands = 1);
        Day day = days.build();
        Kitchen kitchen = new Kitchen(Breakdown.of(day, dish -> Looks.of(day, dish), need -> 1));
        int call = kitchen.due[EARLY];
        place(kitchen, kitchen.base[PREPARED] + 1, kitchen.due[PREPARED] - 4, 1L);
        long cook = dice.chance(0.5) ? 1L : 2L;
        place(kitchen, kitchen.base[PREPARED], call - 34, cook);
        place(kitchen, kitchen.base[PLATED], call - 34, 3L - cook);
        place(kitchen, kitchen.base[EARLY], call - 38, 1L);
        kitchen.commit();
        return kitchen;
    }

    private static void place(Kitchen kitchen, int g, int start, long person) {
        kitchen.place(g, start, kitchen.kind[g].minutes, 0, person, 0, -1);
    }

    private static Ruin ruin(Kitchen kitchen, Dice dice, boolean[] frozen) {
        Ruin ruin = new Ruin(kitchen, dice, new long[kitchen.copies], frozen);
        ruin.activate(new int[] {EARLY, PLATED, PREPARED});
        return ruin;
    }

    /** Reckoned by hand: who is there is busy until the call, but preparation may go elsewhere. */
    @Property(tries = 50)
    void makesRoomByPreparationRatherThanByAPlate(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
        Dice dice = new Dice(seed);
        Kitchen kitchen = kitchen(dice);
        Ruin ruin = ruin(kitchen, dice, new boolean[kitchen.copies]);
        assertThat(kitchen.lookCost(EARLY)).isPositive();
        assertThat(ruin.chooseForRoom(EARLY)).isTrue();
        assertThat(Arrays.copyOf(ruin.full, ruin.fullCount)).containsExactly(EARLY);
        assertThat(Arrays.copyOf(ruin.heads, ruin.headCount)).containsExactly(PREPARED);
    }

    /** Reckoned by hand: nobody is taken away from a break, so that the plate has to give way. */
    @Property(tries = 50)
    void leavesABreakWhereItIs(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
        Dice dice = new Dice(seed);
        Kitchen kitchen = kitchen(dice);
        int prepared = kitchen.base[PREPARED];
        long cook = kitchen.handsA[prepared];
        int call = kitchen.due[EARLY];
        kitchen.remove(prepared);
        kitchen.remove(kitchen.base[EARLY]);
        place(kitchen, kitchen.base[EARLY], call - 34, cook);
        for (int i = 0; i < kitchen.breaks.length; i++) {
            if (kitchen.bits(1L << kitchen.breaks[i].person()) == cook && kitchen.breaks[i].after() < 0) {
                kitchen.placeBreak(i, call - 30);
            }
        }
        Ruin ruin = ruin(kitchen, dice, new boolean[kitchen.copies]);
        assertThat(ruin.chooseForRoom(EARLY)).isTrue();
        assertThat(Arrays.copyOf(ruin.full, ruin.fullCount)).containsExactly(EARLY, PLATED);
        assertThat(ruin.headCount).isZero();
    }

    /**
     * Reckoned by hand: a set rolls from 06:30 to 08:30, so that what is plated at 08:00 can be ground before 06:30 only. Then the
     * only cook prepares something for noon, which has to give way, though it is nowhere near that call.
     */
    @Property(tries = 50)
    void makesRoomForNoiseLongBeforeTheCall(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
        TestDays days = new TestDays().place("kitchen", place -> {});
        days.station("counter", Station.Kind.COUNTER, 9, station -> {});
        days.person("Ada", hands -> hands.shifts = List.of(TestDays.span("06:00-18:00")));
        days.setup("roll", "06:30", part -> {
            part.silent = true;
            part.cycle = 120;
            part.rolling = 120;
        });
        for (String dish : List.of("ground", "cut")) {
            days.dish(dish, part -> part.look = Look.table(0, 5, 600));
            days.setup(dish, dish.equals("ground") ? "08:00" : "12:00", part -> {});
            days.need(dish, dish, "plate", need -> need.copies(1));
            days.step(dish, "prepare", dish.equals("ground") ? 10 : 30, step -> {
                step.hands = 1;
                step.noisy = dish.equals("ground");
            });
            days.step(dish, "plate", 4, step -> step.after("prepare").hands = 1);
        }
        Day day = days.build();
        Kitchen kitchen = new Kitchen(Breakdown.of(day, dish -> Looks.of(day, dish), need -> 1));
        int six = kitchen.due[0] - 120;
        assertThat(kitchen.loud[0].end()).isEqualTo(six + 30);
        place(kitchen, kitchen.base[1] + 1, kitchen.due[1] - 4, 1L);
        place(kitchen, kitchen.base[1], six, 1L);
        kitchen.commit();
        Ruin ruin = new Ruin(kitchen, new Dice(seed), new long[] {Score.MISSING, 0}, new boolean[kitchen.copies]);
        ruin.activate(new int[] {0, 1});
        assertThat(ruin.chooseForNoise(1)).isFalse();
        boolean chosen = ruin.chooseForNoise(0);
        for (int tries = 0; !chosen && tries < 100; tries++) {
            chosen = ruin.chooseForNoise(0);
        }
        assertThat(chosen).isTrue();
        assertThat(Arrays.copyOf(ruin.full, ruin.fullCount)).containsExactly(0);
        assertThat(Arrays.copyOf(ruin.heads, ruin.headCount)).containsExactly(1);
    }

    @Test
    void makesNoRoomForWhatIsAtItsPeakOrMustStay() {
        Dice dice = new Dice(1);
        Kitchen kitchen = kitchen(dice);
        assertThat(kitchen.lookCost(PREPARED)).isZero();
        assertThat(ruin(kitchen, dice, new boolean[kitchen.copies]).chooseForRoom(PREPARED))
                .isFalse();
        Ruin ruin = ruin(kitchen, dice, new boolean[] {true, false, false});
        assertThat(ruin.chooseForRoom(EARLY)).isFalse();
        assertThat(ruin.fullCount + ruin.headCount).isZero();
    }
}

package platecall.bench;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ScheduleCheckerTest {

    /** A shortest schedule of the twelve tasks, own calculation: makespan 21. */
    private final int[] sound = {0, 0, 1, 14, 3, 3, 7, 15, 19, 11, 5, 21};

    private final Project twelve = BenchFiles.twelve();

    @Test
    void findsNothingInASoundSchedule() {
        assertThat(ScheduleChecker.broken(twelve, sound, 21)).isEmpty();
    }

    @Test
    void namesATaskThatStartsBeforeItsPredecessorEnds() {
        sound[8] = 18;
        assertThat(ScheduleChecker.broken(twelve, sound, 21))
                .containsExactly(
                        "task 9 starts at 18, before task 4 ends at 19",
                        "task 9 starts at 18, before task 8 ends at 19",
                        "at 18 the tasks need 7 of resource 1, which has 6");
    }

    @Test
    void namesTheTimeAndTheResourceThatIsOverbooked() {
        sound[9] = 12;
        assertThat(ScheduleChecker.broken(twelve, sound, 21))
                .containsExactly(
                        "at 15 the tasks need 8 of resource 1, which has 6",
                        "at 15 the tasks need 10 of resource 2, which has 8");
    }

    @Test
    void namesAStartBeforeZeroAndAFalseMakespan() {
        sound[1] = -1;
        assertThat(ScheduleChecker.broken(twelve, sound, 20))
                .contains("task 2 starts at -1, before 0", "the last task ends at 21, not at 20");
    }

    @Test
    void refusesAScheduleOfAnotherSize() {
        assertThat(ScheduleChecker.broken(twelve, new int[3], 0)).containsExactly("3 starts for 12 tasks");
    }

    @Test
    void refusesTwoOperationsAtATimeOnOneMachine() {
        Project shop = RandomProjects.jobShop(1, 2, 1);
        assertThat(ScheduleChecker.broken(shop, new int[] {0, 0}, Math.max(shop.durations[0], shop.durations[1])))
                .hasSize(Math.min(shop.durations[0], shop.durations[1]))
                .first()
                .isEqualTo("at 0 the tasks need 2 of resource 1, which has 1");
    }
}

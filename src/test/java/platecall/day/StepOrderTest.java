package platecall.day;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** An invented dish: meat is cut raw and fried, a sauce is stirred, both are plated; a dip is no part of it. */
class StepOrderTest {

    private static final Day DAY = new TestDays()
            .setup("S1", "12:00", setup -> {})
            .dish("meat", dish -> {})
            .need("S1", "meat", "plate", need -> {})
            .step("meat", "cut", 10, step -> step.raw = true)
            .step("meat", "fry", 10, step -> step.after("cut"))
            .step("meat", "sauce", 10, step -> {})
            .step("meat", "plate", 2, step -> {
                step.after("fry");
                step.anyTimeAfter = List.of("sauce");
            })
            .step("meat", "dip", 2, step -> step.after("sauce"))
            .build();

    private static final StepOrder ORDER = StepOrder.of(DAY, DAY.needs().get(0));

    private static Step step(String id) {
        return DAY.step("meat", id).orElseThrow();
    }

    private static List<String> ids(List<Step> steps) {
        return steps.stream().map(Step::id).toList();
    }

    @Test
    void onlyTheStepsOfTheStageCount() {
        assertThat(ids(ORDER.steps())).containsExactly("cut", "fry", "sauce", "plate");
        assertThat(ids(ORDER.backward())).containsExactly("plate", "sauce", "fry", "cut");
        assertThat(ORDER.isStage(step("plate"))).isTrue();
        assertThat(ORDER.isStage(step("sauce"))).isFalse();
        assertThat(new StepOrder(List.of()).isStage(step("plate"))).isFalse();
    }

    @Test
    void eachStepKnowsThoseRightBesideIt() {
        assertThat(ids(ORDER.before(step("plate")))).containsExactly("fry", "sauce");
        assertThat(ids(ORDER.before(step("cut")))).isEmpty();
        assertThat(ids(ORDER.after(step("sauce")))).containsExactly("plate");
        assertThat(ids(ORDER.after(step("plate")))).isEmpty();
    }

    @Test
    void rawFoodGoesIntoTheFirstStepAndIntoWhatFollowsARawOne() {
        assertThat(ORDER.steps())
                .filteredOn(ORDER::rawBefore)
                .extracting(Step::id)
                .containsExactly("cut", "fry", "sauce");
    }
}

package platecall.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import platecall.day.Day;
import platecall.day.Diner;
import platecall.day.Dish;
import platecall.day.Ingredient;
import platecall.day.Look;
import platecall.day.Need;
import platecall.day.Setup;
import platecall.day.Station;
import platecall.day.Step;
import platecall.day.Use;
import platecall.looks.Looks;
import platecall.plan.CopyStep;
import platecall.plan.Plan;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.StationHold;
import platecall.plan.Plan.Storing;
import platecall.plan.Plan.Work;
import platecall.safety.ClockReading;
import platecall.safety.Discard;
import platecall.safety.HandContact;
import platecall.safety.SafetyClock;
import platecall.safety.SafetyLimits;
import platecall.units.Moment;

/** The words for one day's plan that all its reports share. */
final class Wording {

    /** Printed wherever food is handled by a report of ours. */
    static final String CAUTION =
            "Food safety, allergens, heat, electricity, inedible looks: local codes, a thermometer"
                    + " and licensed practice decide.";

    static final String DO_NOT_EAT = "DO NOT EAT";

    /** Of what somebody must do who isn't on duty then. */
    static final String NOBODY = "nobody is on then: find somebody";

    private static final int MOST_TO_SETTLE = 4;

    /** Looks that only what is in a glass can have. */
    private static final Set<Look.Kind> DRINKS = Set.of(Look.Kind.FROTH, Look.Kind.CONDENSATION, Look.Kind.CARBONATION);

    final Day day;
    final Clock clock;
    final Copies copies;
    final Paper paper;
    /** For each need the most minutes between its steps that the safety clock leaves, once asked for. */
    private final Map<String, Map<SafetyLimits.Wait, Integer>> inTimeOf = new HashMap<>();

    private final Map<String, Dish> dishes = new LinkedHashMap<>();
    private final Map<String, Station> stations = new LinkedHashMap<>();
    private final Map<String, List<Step>> stepsOf = new LinkedHashMap<>();
    private final Map<List<String>, String> allergensAt = new HashMap<>();
    /** Those of the cast who eat something. */
    private final List<Diner> eating;
    /** Those of them who must not eat what is in food of the day. */
    private final Set<String> mustBeCareful;

    private final Map<Storing, Moment> discardBy;
    private final Set<List<String>> gloves;
    private final Map<Work, Moment> eatenUntil = new HashMap<>();
    private final Map<String, Moment> eatenUntilOf = new HashMap<>();
    private final Map<String, List<String>> eatersOf = new HashMap<>();
    private final Map<CopyStep, Moment> startOf = new HashMap<>();
    /** The last work on each copy, by the copy's id. */
    private final Map<String, Work> last = new HashMap<>();

    Wording(Day day, Plan plan) {
        this(day, plan, Paper.A4);
    }

    Wording(Day day, Plan plan, Paper paper) {
        this.day = day;
        this.paper = paper;
        clock = Clock.of(day, plan);
        copies = new Copies(plan);
        discardBy = SafetyClock.discardByOfStores(day, plan);
        gloves = HandContact.of(day).stream()
                .map(contact -> List.of(contact.step().dish(), contact.step().id()))
                .collect(Collectors.toSet());
        day.needs().forEach(need -> eatersOf.put(need.key(), need.eatenBy()));
        eatenUntil(plan);
        day.dishes().forEach(dish -> dishes.put(dish.id(), dish));
        day.stations().forEach(station -> stations.put(station.id(), station));
        day.steps()
                .forEach(step -> stepsOf.computeIfAbsent(step.dish(), key -> new ArrayList<>())
                        .add(step));
        Set<String> eaters =
                day.needs().stream().flatMap(need -> need.eatenBy().stream()).collect(Collectors.toSet());
        eating =
                day.cast().stream().filter(diner -> eaters.contains(diner.id())).toList();
        mustBeCareful = eating.stream()
                .filter(diner -> diner.allergies().stream()
                        .anyMatch(allergy -> !foodWith(allergy).isEmpty()))
                .map(Diner::id)
                .collect(Collectors.toSet());
    }

    /** Marks the last work on each copy that may be eaten and is at risk with the earliest time after which it must not be. */
    private void eatenUntil(Plan plan) {
        for (Work work : plan.work()) {
            work.copies()
                    .forEach(copy -> last.merge(
                            copy,
                            work,
                            (one, other) ->
                                    other.span().end().isBefore(one.span().end()) ? one : other));
            work.copies()
                    .forEach(copy -> startOf.put(work.with(copy), work.span().start()));
        }
        List<ClockReading> readings = new ArrayList<>(SafetyClock.of(day, plan));
        readings.addAll(SafetyClock.ofOnlySeenTooLong(day, plan));
        for (ClockReading reading : readings) {
            eatenUntilOf.put(reading.copy().id(), reading.discardBy());
            Optional.ofNullable(last.get(reading.copy().id()))
                    .ifPresent(work -> eatenUntil.merge(work, reading.discardBy(), Moment::earlier));
        }
    }

    /** Until when food may be used that comes out of a store; empty if no clock runs. */
    Optional<String> discard(List<Storing> stored, Moment reader) {
        return Discard.of(stored, discardBy).map(discard -> discard.words(clock.time(discard.by(), reader)));
    }

    /** A name without characters that no paper can show, so that it can't break a page. */
    static String plain(String text) {
        return text.replaceAll("[\\p{Cntrl}\\p{Cs}\uFFFE\uFFFF]+", " ").strip();
    }

    /** {@code 45 min}, {@code 2 h 5 min}. */
    static String length(int minutes) {
        return minutes <= 120
                ? minutes + " min"
                : minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
    }

    String dish(String id) {
        return plain(Optional.ofNullable(dishes.get(id)).map(Dish::name).orElse(id));
    }

    boolean inedible(String dish) {
        return Optional.ofNullable(dishes.get(dish)).map(it -> !it.edible()).orElse(false);
    }

    /** Allergens in what this work leaves in hand, in words; empty if none. */
    String allergens(Work work) {
        return allergens(
                work.dish(),
                work.kind() == Work.Kind.CARRY
                        ? work.copies().stream()
                                .map(id -> copies.copy(id).stage())
                                .toList()
                        : List.of(work.step()));
    }

    /** The same for what comes from a step. */
    String allergens(String dish, String step) {
        return allergens(dish, List.of(step));
    }

    private String allergens(String dish, List<String> steps) {
        return allergensAt.computeIfAbsent(
                Stream.concat(Stream.of(dish), steps.stream().distinct().sorted())
                        .toList(),
                key -> allergens(ingredients(dish, steps)));
    }

    /** What has gone in once these steps are done; all of the dish if a step is not known. */
    private List<Ingredient> ingredients(String dish, List<String> steps) {
        boolean known = steps.stream().allMatch(step -> step(dish, step).isPresent());
        Set<Step> done =
                steps.stream().flatMap(step -> day.stepsTo(dish, step).stream()).collect(Collectors.toSet());
        return day.ingredientsIn(dish, known ? done : day.stepsOf(dish));
    }

    /** {@code celery (not for Cid), milk}: with who of those who eat must not have it. */
    private String allergens(List<Ingredient> ingredients) {
        Map<String, List<String>> notFor = new TreeMap<>();
        ingredients.forEach(it -> it.allergens().forEach(allergen -> notFor.put(allergen, new ArrayList<>())));
        for (Diner diner : eating) {
            diner.harmedBy(ingredients)
                    .forEach(harmful -> notFor.computeIfAbsent(harmful, key -> new ArrayList<>())
                            .add(diner.id()));
        }
        return notFor.entrySet().stream()
                .map(it -> it.getKey()
                        + (it.getValue().isEmpty() ? "" : " (not for " + String.join(", ", it.getValue()) + ")"))
                .collect(Collectors.joining(", "));
    }

    Optional<Step> step(Work work) {
        return step(work.dish(), work.step());
    }

    private Optional<Step> step(String dish, String id) {
        return stepsOf.getOrDefault(dish, List.of()).stream()
                .filter(step -> step.id().equals(id))
                .findFirst();
    }

    Optional<Station> station(String id) {
        return Optional.ofNullable(stations.get(id));
    }

    String setups(Work work) {
        return String.join(", ", copies.setups(work.copies()));
    }

    /** {@code oven 1}, {@code oven 1, 2 trays}, or where a carry goes. */
    String where(Work work) {
        if (work.kind() == Work.Kind.CARRY) {
            return "to " + destination(work);
        }
        List<String> places = new ArrayList<>();
        for (StationHold hold : work.stations()) {
            String unit = station(hold.station()).map(Station::unit).orElse("");
            places.add(hold.station() + (hold.units() > 1 && !unit.isEmpty() ? ", " + hold.units() + " " + unit : ""));
        }
        return String.join("; ", places);
    }

    String destination(Work work) {
        return String.join(
                ", ",
                copies.setups(work.copies()).stream()
                        .map(id -> day.setup(id).map(Setup::place).orElse(id))
                        .distinct()
                        .toList());
    }

    /** What to do in a stretch: {@code roast}, {@code roast: put in}. */
    String what(Stretch stretch) {
        Work work = stretch.work();
        String name = work.kind() == Work.Kind.CARRY ? "carry" : work.step();
        return switch (stretch.phase()) {
            case WHOLE, BETWEEN -> name;
            case FIRST -> name + ": " + begin(work);
            case ALONE -> name + ": goes on by itself";
            case LAST -> name + ": " + finish(work);
        };
    }

    /** {@code proof: put in}, for what starts without hands on it. */
    String start(Work work) {
        return work.step() + ": " + begin(work);
    }

    private String begin(Work work) {
        return switch (kindOf(work)) {
            case OVEN, FRIDGE, FREEZER, HOT_HOLD, RACK -> "put in";
            case BURNERS -> "put on";
            case COUNTER, OTHER -> "start";
        };
    }

    private String finish(Work work) {
        return switch (kindOf(work)) {
            case OVEN, FRIDGE, FREEZER, HOT_HOLD, RACK -> "take out";
            case BURNERS -> "take off";
            case COUNTER, OTHER -> "finish";
        };
    }

    private Station.Kind kindOf(Work work) {
        return work.stations().stream()
                .flatMap(hold -> station(hold.station()).stream())
                .map(Station::kind)
                .findFirst()
                .orElse(Station.Kind.OTHER);
    }

    /**
     * What else must be known to do it well, each a short phrase.
     *
     * @param forReading where a core temperature is written down that is read, after the one to be reached; blank for none
     */
    List<String> notes(Stretch stretch, String forReading) {
        Work work = stretch.work();
        boolean begins = stretch.span().start().equals(work.span().start());
        boolean ends = stretch.span().end().equals(work.span().end());
        List<String> notes = new ArrayList<>();
        if (work.kind() == Work.Kind.CARRY) {
            notes.add(
                    "arrive by " + clock.time(work.span().end(), stretch.span().start()));
            late(work).ifPresent(notes::add);
            wayBack(work).ifPresent(notes::add);
        }
        if (begins) {
            work.ovenCelsius().ifPresent(celsius -> notes.add(paper.degrees(celsius)));
        }
        if (stretch.phase() == Stretch.Phase.FIRST) {
            notes.add("until " + clock.time(work.span().end(), stretch.span().start()));
        }
        Optional<Step> step = step(work);
        if (ends) {
            step.flatMap(Step::coreCelsius)
                    .ifPresent(celsius -> notes.add("core " + paper.atLeast(celsius) + " by probe" + forReading));
            notes.addAll(storage(work, stretch.span().start()));
            step.ifPresent(it -> notes.addAll(mostWaits(it, work)));
        }
        if (begins) {
            notes.addAll(forWhom(work));
        }
        if (ends) {
            eaten(work, stretch.span().start()).ifPresent(notes::add);
            notes.addAll(toppedUp(work));
            notes.addAll(gone(List.of(work), stretch.span().start()));
        }
        if (begins
                && gloves.contains(List.of(work.dish(), work.step()))
                && !stretch.who().isEmpty()) {
            notes.add(isDrink(work.dish()) ? "no bare hands on the rim" : "gloves or tongs");
        }
        if (step.map(Step::noisy).orElse(false)) {
            notes.add("noisy");
        }
        if (ends) {
            notes.addAll(raw(work));
        }
        return notes;
    }

    /** {@code LATE, call was 11:40}, for what arrives after it is wanted. */
    private Optional<String> late(Work work) {
        return work.copies().stream()
                .map(id -> copies.copy(id).due())
                .min(Moment::compareTo)
                .filter(due -> due.isBefore(work.span().end()))
                .map(due -> "LATE, wanted " + clock.time(due, work.span().start()));
    }

    /** When who carries is back, if the way takes time. */
    private Optional<String> wayBack(Work work) {
        return work.hands().stream()
                .map(hands -> hands.span().end())
                .max(Moment::compareTo)
                .filter(back -> back.isAfter(work.span().end()))
                .map(back -> "back at " + clock.time(back, work.span().start()));
    }

    /** Who eats of what has its last work done on it, and until when it may be eaten if its clock runs. */
    private Optional<String> eaten(Work work, Moment reader) {
        List<String> eaten = work.copies().stream()
                .filter(id -> work.equals(last.get(id)) && copies.copy(id).made())
                .filter(id -> !eatersOf(copies.copy(id)).isEmpty())
                .toList();
        String who = eaten.stream()
                .flatMap(id -> eatersOf(copies.copy(id)).stream())
                .distinct()
                .map(this::withAllergies)
                .collect(Collectors.joining(", "));
        Optional<String> until =
                Optional.ofNullable(eatenUntil.get(work)).map(by -> "DO NOT EAT after " + clock.time(by, reader));
        return who.isEmpty()
                ? until
                : Optional.of((eaten.size() < work.copies().size() ? copies.names(eaten) + " " : "") + "eaten by " + who
                        + until.map(words -> ", " + words).orElse(""));
    }

    /**
     * For whom food is that isn't done yet: who must not have what is in other food of the day, from the first step on; what somebody eats
     * by choice, where it is plated.
     */
    private List<String> forWhom(Work work) {
        Map<String, List<String>> copiesFor = new TreeMap<>();
        for (String id : work.copies()) {
            PlannedCopy copy = copies.copy(id);
            for (String eater : work.equals(last.get(id)) || !copy.made() ? List.<String>of() : eatersOf(copy)) {
                boolean plated = work.step().equals(copy.stage());
                boolean careful =
                        mustBeCareful.contains(eater) || plated && !diet(eater).isEmpty();
                if (careful) {
                    copiesFor
                            .computeIfAbsent(withAllergies(eater), key -> new ArrayList<>())
                            .add(id);
                }
            }
        }
        return copiesFor.entrySet().stream()
                .map(it -> (it.getValue().size() < work.copies().size() ? copies.names(it.getValue()) + " " : "")
                        + "for " + it.getKey())
                .toList();
    }

    private List<String> eatersOf(PlannedCopy copy) {
        return eatersOf.getOrDefault(copy.need(), List.of());
    }

    private String diet(String eater) {
        return day.diner(eater).map(Diner::diet).orElse("");
    }

    /** That plates are topped up on set, of those that have their last work done on them, by the minutes that it takes. */
    private List<String> toppedUp(Work work) {
        Map<Integer, List<String>> minutes = new TreeMap<>();
        for (String id : work.copies()) {
            Optional<Use.ToppedUp> use = day.needs().stream()
                    .filter(need -> work.equals(last.get(id))
                            && need.key().equals(copies.copy(id).need()))
                    .filter(need -> day.setup(need.setup())
                            .filter(setup -> setup.takesWorst() > 1)
                            .isPresent())
                    .map(Need::use)
                    .filter(Use.ToppedUp.class::isInstance)
                    .map(Use.ToppedUp.class::cast)
                    .findFirst();
            use.ifPresent(it -> minutes.computeIfAbsent(it.minutes(), key -> new ArrayList<>())
                    .add(id));
        }
        return minutes.entrySet().stream()
                .map(each -> "top up"
                        + (each.getValue().size() < work.copies().size() ? " " + copies.names(each.getValue()) : "")
                        + " after each take: " + length(each.getKey()))
                .toList();
    }

    /** The warning off copies that must not be eaten any more when these works end; their last work tells it with who eats. */
    List<String> gone(List<Work> together, Moment reader) {
        Map<Moment, List<String>> since = new TreeMap<>();
        for (Work work : together) {
            work.copies().stream()
                    .filter(id -> !work.equals(last.get(id)) && eatenUntilOf.containsKey(id))
                    .filter(id -> eatenUntilOf.get(id).isBefore(work.span().end()))
                    .forEach(id -> since.computeIfAbsent(eatenUntilOf.get(id), key -> new ArrayList<>())
                            .add(id));
        }
        long all = together.stream().mapToLong(work -> work.copies().size()).sum();
        return since.entrySet().stream()
                .map(it -> (it.getValue().size() == all ? "" : copies.names(it.getValue()) + ": ") + DO_NOT_EAT
                        + " after " + clock.time(it.getKey(), reader))
                .toList();
    }

    /** {@code Rui (no shellfish; vegan)}. */
    private String withAllergies(String eater) {
        List<String> allergies = day.diner(eater).map(Diner::allergies).orElse(List.of());
        String careful = Stream.of(allergies.isEmpty() ? "" : "no " + String.join(", ", allergies), diet(eater))
                .filter(it -> !it.isEmpty())
                .collect(Collectors.joining("; "));
        return eater + (careful.isEmpty() ? "" : " (" + careful + ")");
    }

    /** Names of the day's food that somebody with this allergy must not eat; empty if there is none. */
    private String foodWith(String allergy) {
        return day.ingredients().stream()
                .filter(it -> !it.harmfulTo(allergy).isEmpty())
                .map(Ingredient::dish)
                .filter(dish ->
                        day.needs().stream().anyMatch(need -> need.dish().equals(dish)))
                .map(this::dish)
                .distinct()
                .collect(Collectors.joining(", "));
    }

    /** What whoever eats must not eat, and in which food it is, or eats by choice, and what each eats; one sentence. */
    Optional<String> crossContact() {
        List<String> told = new ArrayList<>();
        for (Diner diner : eating) {
            List<String> careful = new ArrayList<>();
            for (String allergy : diner.allergies()) {
                String in = foodWith(allergy);
                careful.add("no " + allergy + (in.isEmpty() ? "" : " (in " + in + ")"));
            }
            if (!diner.diet().isEmpty()) {
                careful.add(diner.diet());
            }
            if (!careful.isEmpty()) {
                String eats = day.needs().stream()
                        .filter(need -> need.eatenBy().contains(diner.id()))
                        .map(need -> dish(need.dish()))
                        .distinct()
                        .collect(Collectors.joining(", "));
                told.add(diner.id() + " " + String.join(", ", careful) + ", eats " + eats);
            }
        }
        return told.isEmpty()
                ? Optional.empty()
                : Optional.of(plain("Allergies and diets: " + String.join("; ", told)
                        + ". Clean hands, boards, tools and stations between other food and theirs."));
    }

    /** What is to be settled before anybody eats, in one sentence. */
    static Optional<String> toSettle(List<String> sentences) {
        int more = sentences.size() - MOST_TO_SETTLE;
        return sentences.isEmpty()
                ? Optional.empty()
                : Optional.of(plain("To settle before anybody eats: "
                        + sentences.stream().limit(MOST_TO_SETTLE).collect(Collectors.joining("; "))
                        + (more > 0 ? "; and " + more + " more, see check" : "") + "."));
    }

    /** Whether raw food is handled in a stretch: as it goes in, by who takes over then, as it comes out, or as it is carried. */
    boolean isRaw(Stretch stretch) {
        Work work = stretch.work();
        if (work.kind() == Work.Kind.CARRY) {
            return !raw(work).isEmpty();
        }
        boolean goesIn = stretch.span().start().equals(work.span().start()) || stretch.phase() == Stretch.Phase.BETWEEN;
        boolean comesOut = stretch.span().end().equals(work.span().end());
        return comesOut && step(work).filter(Step::raw).isPresent() || goesIn && goesInRaw(work);
    }

    /** Whether raw food goes into a step: what is raw after it was so before. */
    boolean goesInRaw(Work work) {
        return step(work).stream()
                .anyMatch(step -> step.raw()
                        || step.predecessors().stream()
                                .anyMatch(before -> !raw(work.dish(), before).isEmpty()));
    }

    /** The warning to keep apart what is raw when this work has ended; what is carried is as its copy's stage left it. */
    List<String> raw(Work work) {
        Stream<String> stages = work.kind() == Work.Kind.CARRY
                ? work.copies().stream().map(id -> copies.copy(id).stage())
                : Stream.of(work.step());
        return stages.flatMap(stage -> raw(work.dish(), stage).stream())
                .distinct()
                .toList();
    }

    /** The warning to keep apart what is raw after this step. */
    List<String> raw(String dish, String step) {
        return step(dish, step).filter(Step::raw).map(it -> "still raw: keep apart").stream()
                .toList();
    }

    /** Where food is taken from that goes back into a storage, and when to go there, if it is far. */
    List<String> fetch(KeptBack kept) {
        Moment taken = kept.span().start();
        return Stream.concat(
                        Stream.of("from " + kept.from()),
                        Stream.of(kept.walk())
                                .filter(walk -> kept.isFar())
                                .map(walk -> "leave " + clock.time(walk.start(), taken) + ", back "
                                        + clock.time(walk.end(), taken)))
                .toList();
    }

    /** What must be known to keep food that goes back into a storage together. */
    List<String> keepUntil(List<KeptBack> kept) {
        KeptBack one = kept.get(0);
        Moment back = one.span().start();
        List<String> notes = new ArrayList<>();
        notes.add("keep until released " + clock.time(one.span().end(), back));
        notes.add("throw nothing away before");
        kept.stream()
                .flatMap(it -> Optional.ofNullable(eatenUntilOf.get(it.copy().id())).stream())
                .min(Moment::compareTo)
                .ifPresent(by -> notes.add("DO NOT EAT after " + clock.time(by, back)));
        notes.addAll(raw(one.copy().dish(), one.copy().stage()));
        return notes;
    }

    private boolean isDrink(String dish) {
        return Optional.ofNullable(dishes.get(dish))
                .map(it -> DRINKS.contains(it.look().kind()))
                .orElse(false);
    }

    /** {@code then to fridge 1 until 06:10}; with several storages which copies go where. */
    private List<String> storage(Work work, Moment reader) {
        Map<String, List<Storing>> groups = new LinkedHashMap<>();
        work.storage()
                .forEach(storing -> groups.computeIfAbsent(storing.station(), key -> new ArrayList<>())
                        .add(storing));
        List<String> notes = new ArrayList<>();
        groups.forEach((station, storings) -> {
            Moment first = storings.stream()
                    .map(storing -> storing.span().end())
                    .min(Moment::compareTo)
                    .orElseThrow();
            boolean together =
                    storings.stream().allMatch(storing -> storing.span().end().equals(first));
            boolean all = storings.size() == work.copies().size();
            notes.add("then to " + station + (together ? " until " : ", first out ") + clock.time(first, reader)
                    + (all
                            ? ""
                            : " ("
                                    + copies.names(
                                            storings.stream().map(Storing::copy).toList())
                                    + ")"));
        });
        return notes;
    }

    /** What must follow soon, of the copies that go on to it: a stand-in may be wanted as it is now. */
    private List<String> mostWaits(Step step, Work work) {
        List<String> notes = new ArrayList<>();
        for (Step next : stepsOf.getOrDefault(step.dish(), List.of())) {
            List<String> going = work.copies().stream()
                    .filter(id ->
                            day.stepsTo(step.dish(), copies.copy(id).stage()).contains(next))
                    .toList();
            int most = next.mostWait().orElse(Integer.MAX_VALUE);
            for (String id : going) {
                most = Math.min(most, Math.max(inTime(copies.copy(id), step, next), waits(id, work, next)));
            }
            if (next.after().contains(step.id()) && most < Integer.MAX_VALUE && !going.isEmpty()) {
                notes.add(next.id()
                        + (going.size() < work.copies().size() ? " " + copies.names(going) : "")
                        + (most == 0 ? " at once" : " within " + length(most)));
            }
        }
        return notes;
    }

    /** Minutes between a work and the next step of a copy as planned: one that was held up may have more than its share of the clock. */
    private int waits(String id, Work work, Step next) {
        Moment start = startOf.get(CopyStep.of(id, next.id()));
        return start == null ? 0 : work.span().end().minutesUntil(start);
    }

    /** Most minutes between two steps that the safety clock and the look-life to come leave, where they limit it. */
    private int inTime(PlannedCopy copy, Step step, Step next) {
        Map<SafetyLimits.Wait, Integer> limits = inTimeOf.computeIfAbsent(
                copy.need(),
                key -> day.needs().stream()
                        .filter(need -> need.key().equals(key))
                        .findFirst()
                        .map(need -> SafetyLimits.mostWaits(
                                day,
                                need,
                                Looks.of(day, day.dish(need.dish()).orElseThrow())
                                        .usableToMinutes()))
                        .orElse(Map.of()));
        return limits.getOrDefault(new SafetyLimits.Wait(step.id(), next.id()), Integer.MAX_VALUE);
    }

    /** The warning off dressing, and allergens as {@link #allergens} tells them. */
    List<String> warnings(String dish, String allergens) {
        List<String> warnings = new ArrayList<>();
        if (inedible(dish)) {
            warnings.add(DO_NOT_EAT);
        }
        if (!allergens.isEmpty()) {
            warnings.add("contains " + allergens);
        }
        return warnings;
    }
}

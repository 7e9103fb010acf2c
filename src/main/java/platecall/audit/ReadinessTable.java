package platecall.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import java.util.stream.Stream;
import platecall.day.CameraTime;
import platecall.day.Need;
import platecall.day.Part;
import platecall.day.Setup;
import platecall.day.Use;
import platecall.plan.Plan.PlannedCopy;
import platecall.plan.Plan.Readiness;
import platecall.units.Moment;

/** Whether each setup is ready at its call, in numbers and in words. */
final class ReadinessTable {

    private final Ledger ledger;
    private final Map<String, AtCamera> seen;

    private ReadinessTable(Ledger ledger, Map<String, AtCamera> seen) {
        this.ledger = ledger;
        this.seen = seen;
    }

    static List<Readiness> of(Ledger ledger, Map<String, AtCamera> seen) {
        return new ReadinessTable(ledger, seen)
                .found()
                .map(found -> found.readiness().told(words(ledger, found)))
                .toList();
    }

    /** See {@link Audit#flaws}. */
    static Map<String, Flaw> flaws(Ledger ledger, Map<String, AtCamera> seen) {
        Map<String, Flaw> flaws = new LinkedHashMap<>();
        new ReadinessTable(ledger, seen)
                .found()
                .forEach(found ->
                        found.flaw().ifPresent(flaw -> flaws.put(found.setup().id(), flaw)));
        return flaws;
    }

    /**
     * What is found of a setup.
     *
     * @param readiness in numbers, without words
     * @param notMade names of what is not made
     * @param made what is
     * @param takes takes for which every plate is made; 0 if the first one lacks some
     * @param rest when all that the camera looks at is there, if only plates in the background or stand-ins are never made
     */
    private record Found(
            Setup setup,
            Readiness readiness,
            List<String> notMade,
            List<AtCamera> made,
            int takes,
            Optional<Moment> rest) {

        boolean readyAtCall() {
            return readiness.ready().isPresent() && readiness.marginMinutes() >= 0;
        }

        /** Whether plates run out before the likely takes, though none is missing. */
        boolean lacksTakes() {
            return readiness.ready().isPresent() && notMade.isEmpty() && takes < setup.takesLikely();
        }

        private boolean isAnyLate(boolean standIns) {
            return made.stream()
                    .filter(copy -> (copy.need().part() == Part.STAND_IN) == standIns)
                    .anyMatch(copy -> copy.behindMinutes() > 0);
        }

        Optional<Flaw> flaw() {
            if (!readyAtCall()) {
                return Optional.empty();
            }
            if (made.stream().anyMatch(copy -> copy.pastUseMinutes() > 0)) {
                return Optional.of(Flaw.PAST_USE);
            }
            if (!notMade.isEmpty() || lacksTakes() || isAnyLate(false)) {
                return Optional.of(Flaw.SHORT);
            }
            if (isAnyLate(true)) {
                return Optional.of(Flaw.STAND_IN_LATE);
            }
            return readiness.faded() ? Optional.of(Flaw.PAST_PEAK) : Optional.empty();
        }
    }

    /** What is found of each setup that isn't shot. */
    private Stream<Found> found() {
        return ledger.day().setups().stream()
                .filter(setup -> !ledger.plan().isShot(setup))
                .map(this::found);
    }

    private Found found(Setup setup) {
        List<String> notMade = new ArrayList<>();
        List<AtCamera> made = new ArrayList<>();
        List<AtCamera> firstTake = new ArrayList<>();
        boolean firstTakeMade = true;
        boolean allLookedAtMade = true;
        for (Need need : needs(setup)) {
            int first = 0;
            for (PlannedCopy copy : copies(need).toList()) {
                if (CameraTime.isShot(setup, need, copy.number())) {
                    continue;
                }
                AtCamera atCamera = seen.get(copy.id());
                if (atCamera == null) {
                    notMade.add(ledger.shortName(copy));
                    continue;
                }
                made.add(atCamera);
                if (CameraTime.isOfNextSet(setup, need, copy.number())) {
                    firstTake.add(atCamera);
                    first++;
                }
            }
            if (first < plates(need)) {
                firstTakeMade = false;
                allLookedAtMade &= !isLookedAt(need);
                if (notMade.isEmpty()) {
                    notMade.add(ledger.name(need.dish()));
                }
            }
        }
        Optional<Moment> there = firstTake.stream().map(AtCamera::ready).max(Comparator.naturalOrder());
        Optional<Moment> ready = firstTakeMade ? there : Optional.empty();
        int takes = ready.isPresent() ? takesServed(setup) : 0;
        int resets = Math.max(0, takes - setup.countShot() - 1);
        int margin = ready.map(moment -> moment.minutesUntil(setup.nextRoll())).orElse(0);
        Readiness readiness = new Readiness(
                setup.id(),
                setup.nextRoll(),
                ready,
                margin,
                firstTake.stream()
                        .filter(copy -> copy.need().part() == Part.HERO)
                        .map(AtCamera::peakTo)
                        .min(Comparator.naturalOrder()),
                resets,
                resets == 0 ? Optional.empty() : readyForTake(setup, setup.countShot() + 1),
                "");
        boolean without =
                !firstTakeMade && allLookedAtMade && firstTake.stream().anyMatch(copy -> isLookedAt(copy.need()));
        return new Found(setup, readiness, notMade, made, takes, without ? there : Optional.empty());
    }

    private static boolean isLookedAt(Need need) {
        return need.part() == Part.HERO || need.part() == Part.INSERT;
    }

    /** Takes, from the first on, which are shot or for which every plate is made beside extra looks; at most those at worst. */
    private int takesServed(Setup setup) {
        int takes = setup.takesWorst();
        for (Need need : needs(setup)) {
            int shot = CameraTime.setsShot(setup, need);
            long made = copies(need)
                    .filter(copy -> seen.containsKey(copy.id()) && copy.number() > shot * need.platesPerTake())
                    .count();
            int sets = shot + CameraTime.forTakes(need, (int) made) / plates(need);
            if (sets < CameraTime.setsFor(need, setup.takesWorst())) {
                takes = Math.min(takes, need.use() instanceof Use.LastsTakes lasts ? sets * lasts.takes() : sets);
            }
        }
        return takes;
    }

    /** When the last plate is at camera that a take, counted from 0, brings in anew; empty if it brings in none; spares don't count. */
    private Optional<Moment> readyForTake(Setup setup, int take) {
        return needs(setup).stream()
                .flatMap(need -> copies(need)
                        .filter(copy -> !CameraTime.isSpare(setup, need, copy.number()))
                        .filter(copy -> CameraTime.takeOf(setup, need, Math.max(1, copy.number())) == take))
                .flatMap(copy -> Optional.ofNullable(seen.get(copy.id())).stream())
                .map(AtCamera::ready)
                .max(Comparator.naturalOrder());
    }

    /** Plates that a take can't do without: those a take, or what is wanted at all. */
    private static int plates(Need need) {
        int plates = need.platesPerTake();
        return Math.min(plates, need.copies().orElse(plates));
    }

    private List<Need> needs(Setup setup) {
        return ledger.day().needs().stream()
                .filter(need -> need.setup().equals(setup.id()) && !CameraTime.isDone(setup, need))
                .toList();
    }

    private Stream<PlannedCopy> copies(Need need) {
        return ledger.knownCopies().stream().filter(copy -> copy.need().equals(need.key()));
    }

    private static String words(Ledger ledger, Found found) {
        List<String> words = new ArrayList<>();
        if (!found.notMade().isEmpty()) {
            words.add("Not makeable: " + Words.list(found.notMade()));
            found.rest()
                    .ifPresent(at -> words.add("all that the camera looks at is there by "
                            + ledger.words().clock(at)));
        }
        trouble(ledger, "LATE", found.made(), AtCamera::behindMinutes).ifPresent(words::add);
        trouble(ledger, "PAST USE on camera", found.made(), AtCamera::pastUseMinutes)
                .ifPresent(words::add);
        if (found.readyAtCall()) {
            int margin = found.readiness().marginMinutes();
            int shot = found.setup().countShot();
            String roll = shot == 0 ? "call" : "take " + (shot + 1);
            String when = margin == 0 ? "Ready at " + roll : "Ready " + margin + " min before " + roll;
            words.add(words.isEmpty() ? when : (shot == 0 ? "first take " : "") + when.toLowerCase(Locale.ROOT));
        }
        if (found.readiness().faded()) {
            words.add("hero past peak when its take rolls");
        }
        if (found.lacksTakes()) {
            words.add("plates for " + found.takes() + " of " + found.setup().takesLikely() + " likely takes");
        }
        return words.isEmpty() ? "No food wanted" : String.join("; ", words);
    }

    private static Optional<String> trouble(
            Ledger ledger, String what, List<AtCamera> made, ToIntFunction<AtCamera> minutes) {
        List<AtCamera> troubled = made.stream()
                .filter(copy -> minutes.applyAsInt(copy) > 0)
                .sorted(Comparator.comparingInt(minutes).reversed())
                .toList();
        if (troubled.isEmpty()) {
            return Optional.empty();
        }
        int most = troubled.stream().mapToInt(minutes).max().orElseThrow();
        List<String> names =
                troubled.stream().map(copy -> ledger.shortName(copy.copy())).toList();
        return Optional.of(what + " by " + (names.size() > 1 ? "up to " : "") + most + " min: " + Words.list(names));
    }
}

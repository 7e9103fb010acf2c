package platecall.day;

import java.util.List;
import platecall.units.Money;
import platecall.units.Span;

/**
 * A pair of hands.
 *
 * @param id name, unique
 * @param skills what this person can do beyond what anyone can
 * @param shifts when this person works; empty: in kitchen hours
 * @param away when this person is not in the kitchen though on shift
 * @param costPerHour 0 or more
 */
public record Person(String id, List<String> skills, List<Span> shifts, List<Absence> away, Money costPerHour) {

    public Person {
        Demand.text(id, "person");
        skills = List.copyOf(skills);
        shifts = Span.union(shifts);
        away = List.copyOf(away);
        Demand.that(costPerHour.cents() >= 0, "cost an hour must be 0 or more", costPerHour);
    }

    /** The same with other shifts. */
    public Person withShifts(List<Span> others) {
        return new Person(id, skills, others, away, costPerHour);
    }
}

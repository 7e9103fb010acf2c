package platecall.day;

/**
 * Points by which plans are compared; the plan with the fewest points is the best. All 0 or more.
 *
 * @param lateMinute a minute that one copy comes late to camera, times the weight of its setup
 * @param offPeakMinute a minute that one copy is before or past its peak on camera, times the weight of its need
 * @param kitchenMinute a minute that the kitchen must open earlier, for each span of kitchen hours
 * @param handChange each further pair of hands on one copy
 * @param movedMinute a minute that a step moves from the published plan, if one is held
 */
public record Prices(int lateMinute, int offPeakMinute, int kitchenMinute, int handChange, int movedMinute) {

    public static final Prices USUAL = new Prices(1000, 10, 1, 1, 1);

    public Prices {
        Demand.that(lateMinute >= 0 && lateMinute <= 100_000, "late minute price must be 0 to 100000", lateMinute);
        Demand.that(
                offPeakMinute >= 0 && offPeakMinute <= 10_000,
                "off-peak minute price must be 0 to 10000",
                offPeakMinute);
        Demand.that(
                kitchenMinute >= 0 && kitchenMinute <= 10_000,
                "kitchen minute price must be 0 to 10000",
                kitchenMinute);
        Demand.that(handChange >= 0 && handChange <= 10_000, "hand change price must be 0 to 10000", handChange);
        Demand.that(movedMinute >= 0 && movedMinute <= 10_000, "moved minute price must be 0 to 10000", movedMinute);
    }
}

package platecall.safety;

/**
 * A core temperature read from a thermometer.
 *
 * @param minute minutes from any start; later readings have more
 * @param celsius core temperature
 */
public record Reading(double minute, double celsius) {}

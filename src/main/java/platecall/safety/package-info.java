/** The food-safety clock and who may eat what; local codes, a thermometer and licensed practice decide. */
package platecall.safety;

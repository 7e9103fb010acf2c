/** The shoot day in the stylist's words: setups and call times, dishes, steps and look-life, kitchen, crew, cast. */
package platecall.day;

/** A number never travels without its unit: moments, half-open spans, money. */
package platecall.units;

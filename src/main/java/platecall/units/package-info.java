/** A number never travels without its unit: moments, half-open spans, money; facts in files, each with its source; and files are written whole. */
package platecall.units;

/** Gives each task a time, a place and hands; the only package that knows Timefold. */
package platecall.solve;

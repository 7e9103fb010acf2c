/** Checks a plan against the day again, minute by minute, knowing nothing of how it was made. */
package platecall.audit;

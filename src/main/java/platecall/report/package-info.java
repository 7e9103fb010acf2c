/** Prints a plan: run sheets, lists, charts, the readiness page; one class a format, each a function from plan to bytes. */
package platecall.report;

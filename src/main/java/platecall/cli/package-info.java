/** The commands that a user types. */
package platecall.cli;

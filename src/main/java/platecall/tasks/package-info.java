/** Breaks what the camera wants into tasks with needs and order, in whole minutes from the start of the day. */
package platecall.tasks;

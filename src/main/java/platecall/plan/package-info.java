/** The answer as plain data: each step of each copy, where, whose hands, from when to when; and the names of the rules. */
package platecall.plan;

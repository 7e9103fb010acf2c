/** How many of each dish: takes, use per take, breakage, money. */
package platecall.copies;

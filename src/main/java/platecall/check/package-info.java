/** Says what cannot work about a day before anything is planned. */
package platecall.check;

/** How likely each setup is to be ready, and what makes it late. */
package platecall.odds;

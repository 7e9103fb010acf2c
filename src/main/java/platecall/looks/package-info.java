/** How long a plated dish stays at its peak on set: the physics and the house table. */
package platecall.looks;

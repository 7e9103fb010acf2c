/** Reads a day from sheets, a workbook or JSON, or says what is wrong at which cell; and writes it back. */
package platecall.intake;

package platecall.day;

/**
 * One thing that is wrong with a day, so that it can be found and put right.
 *
 * @param sheet name of the sheet; empty if it concerns the file as a whole
 * @param row place of the row among the sheet's rows, counted from 0; -1 if it concerns the sheet as a whole, or a key of
 *     the sheet {@code day}
 * @param column name of the column, or key of the sheet {@code day}; empty if it concerns the whole row
 * @param value what stands there, printed in brackets before {@code what}; empty if nothing does
 * @param what what is wrong: a sentence, or if there is a value, the rest of a sentence that begins with it
 * @param wayOut what may help, beginning with "Maybe", or an example that works; may be empty
 */
public record Trouble(String sheet, int row, String column, String value, String what, String wayOut) {}

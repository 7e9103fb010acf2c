package platecall.intake;

import java.time.LocalDate;
import java.time.ZoneId;

/**
 * What a cell must know of its day to be read or written.
 *
 * @param date a time without a date falls on it
 * @param zone in which times are told
 * @param known whether date and zone could be read; if not, they are stand-ins, and no time is held against them
 * @param decimalComma whether {@code 1,5} is a number, as in files whose separator is not the comma
 */
record Frame(LocalDate date, ZoneId zone, boolean known, boolean decimalComma) {}

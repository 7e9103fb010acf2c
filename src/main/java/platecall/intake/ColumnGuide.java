package platecall.intake;

import java.util.List;

/** A page for the stylist that explains every sheet and column, made from the descriptions of the sheets. */
public final class ColumnGuide {

    private static final String HEAD = """
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <title>The sheets of a day</title>
            <style>
            body { font: 15px/1.4 sans-serif; color: #111; background: #fff; max-width: 62em; margin: 2em auto; padding: 0 1em; }
            h2 { margin: 1.6em 0 .3em; }
            table { border-collapse: collapse; width: 100%; }
            th, td { border: 1px solid #767676; padding: .25em .5em; text-align: left; vertical-align: top; }
            th { background: #eee; }
            td:first-child { font-weight: bold; white-space: nowrap; }
            code { font-size: 1.05em; }
            tr { break-inside: avoid; }
            </style>
            </head>
            <body>
            <h1>The sheets of a day</h1>
            <p>A day is a folder with one CSV file for each sheet, or a workbook (.xlsx) with the same sheets, or one JSON file.
            Columns may stand in any order. What is written in brackets in a header is a reminder of the unit and may be left out;
            another unit than the one given here is refused: numbers are never converted.
            Columns marked * must be filled in; in the others a blank cell means what the last column says.</p>
            <p>When the sheets are filled in, the command <code>check DAY</code> says what is wrong with them, and
            <code>plan DAY</code> plans the day and writes its papers.</p>
            <h2>How to write a cell</h2>
            <table>
            <tr><th>What</th><th>How</th></tr>
            <tr><td>several things</td><td><code>Mina; Theo</code> with semicolons between them</td></tr>
            <tr><td>time</td><td><code>18:30</code> on the date of the day; another date before it: <code>2026-03-13 14:00</code>.
            In the night in which clocks are put back, <code>02:30+01:00</code> says which of the two is meant; without it the earlier one is.</td></tr>
            <tr><td>span of time</td><td><code>06:00-18:00</code>; <code>22:00-02:00</code> ends on the next day;
            <code>2026-03-13 14:00 - 2026-03-14 02:00</code></td></tr>
            <tr><td>share</td><td><code>95 %</code> or <code>0.95</code></td></tr>
            <tr><td>number</td><td><code>1.5</code>; in files with semicolons or tabs between the cells also <code>1,5</code></td></tr>
            <tr><td>use</td><td><code>fresh</code> (a new copy for each take), <code>lasts 3 takes</code>, <code>topped up in 4 min</code></td></tr>
            <tr><td>release</td><td><code>at end</code>, a time, or <code>after setup 5</code></td></tr>
            <tr><td>stations of a step</td><td><code>hob:1; counter:2</code>; either of two: <code>oven a|oven b:1</code></td></tr>
            <tr><td>walk</td><td><code>set:4; barn:12</code></td></tr>
            """;

    private static final String FOOT = """
            <p>Food safety, allergens, heat and electricity: this page and the program do not know your kitchen.
            Local codes, a thermometer and licensed practice decide.</p>
            </body>
            </html>
            """;

    /**
     * A property of sheet {@code looks}.
     *
     * @param look the kind of look that knows it
     * @param without what stands in its place if no row gives it; empty if it must be given
     */
    public record LookTerm(String look, String property, String meaning, String without) {}

    private ColumnGuide() {}

    /**
     * The page as HTML, complete in itself.
     *
     * @param looks every property of sheet {@code looks}
     * @param profiles every safety profile
     */
    public static String html(List<LookTerm> looks, List<String> profiles) {
        StringBuilder page = new StringBuilder(HEAD);
        page.append(tr("td", List.of("safety profile", "one of " + String.join(", ", profiles))))
                .append("</table>\n");
        for (Sheet<?> sheet : DaySheets.ALL) {
            page.append("<h2>").append(sheet.name()).append("</h2>\n<p>Each row is ");
            page.append(escaped(sheet.oneRowIs()));
            page.append(sheet.required() ? ".</p>\n" : ". The sheet may be missing.</p>\n");
            page.append(columns(sheet));
            if (sheet.name().equals(DaySheets.Looks.SHEET.name())) {
                page.append(properties(looks));
            }
        }
        noted(page, "A file of what happened", "replan --happened", HappeningsFile.SHEET);
        noted(page, "A file of thermometer readings", "safety --readings", ReadingsFile.SHEET);
        return page.append(FOOT).toString();
    }

    /** A file that is noted down while the day is under way. */
    private static void noted(StringBuilder page, String title, String option, Sheet<?> sheet) {
        page.append("<h2>")
                .append(title)
                .append("</h2>\n<p>No sheet of the day, but a CSV file for <code>")
                .append(option)
                .append("</code>. Each row is ")
                .append(escaped(sheet.oneRowIs()))
                .append(".</p>\n")
                .append(columns(sheet));
    }

    private static String columns(Sheet<?> sheet) {
        boolean isDay = sheet.name().equals(DaySheets.Facts.SHEET.name());
        StringBuilder table = new StringBuilder("<table>\n")
                .append(tr("th", List.of(isDay ? "Key" : "Column", "Meaning", "Example", "Blank means")));
        for (Column<?, ?> column : sheet.columns()) {
            String unit = column.unit().isEmpty() ? "" : " (" + column.unit() + ")";
            table.append(tr(
                    "td",
                    List.of(
                            column.name() + (column.required() ? " *" : ""),
                            column.meaning() + unit + words(column.grammar().words()),
                            column.example(),
                            column.required() ? "" : column.blankMeans().isEmpty() ? "none" : column.blankMeans())));
        }
        return table.append("</table>\n").toString();
    }

    private static String properties(List<LookTerm> looks) {
        StringBuilder table = new StringBuilder("<table>\n")
                .append(tr("th", List.of("Property", "Look", "Meaning", "Without a row")));
        for (LookTerm term : looks) {
            table.append(tr(
                    "td",
                    List.of(
                            term.property() + (term.without().isEmpty() ? " *" : ""),
                            term.look(),
                            term.meaning(),
                            term.without())));
        }
        return table.append("</table>\n").toString();
    }

    private static String words(List<String> words) {
        return words.isEmpty() || words.equals(Grammars.YES_NO.words()) ? "" : ": " + String.join(", ", words);
    }

    private static String tr(String cell, List<String> texts) {
        StringBuilder row = new StringBuilder("<tr>");
        texts.forEach(text -> row.append('<')
                .append(cell)
                .append('>')
                .append(escaped(text))
                .append("</")
                .append(cell)
                .append('>'));
        return row.append("</tr>\n").toString();
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}

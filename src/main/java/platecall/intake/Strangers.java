package platecall.intake;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import platecall.day.Spelling;

/** Guesses which sheet something by another name is meant to be. */
final class Strangers {

    private Strangers() {}

    /** The one of {@code sheets} that a stranger is meant to be, by its name or, if that says nothing, its columns. */
    static Optional<String> meant(RawDay.Stranger stranger, Collection<String> sheets) {
        String title = Names.normal(stranger.title());
        return Spelling.nearest(title, sheets)
                .or(() -> List.of(title.split("[^\\p{L}]+")).stream()
                        .flatMap(
                                word -> sheets.stream().filter(sheet -> sheet.equals(word) || sheet.equals(word + "s")))
                        .findFirst())
                .or(() -> byColumns(stranger.header(), sheets));
    }

    /** The sheet to which most of at least two columns belong, the first of them too: a sentence with commas is none. */
    private static Optional<String> byColumns(List<String> header, Collection<String> sheets) {
        String best = null;
        int most = Math.max(1, header.size() / 2);
        for (Sheet<?> sheet : DaySheets.ALL) {
            Set<String> columns = sheet == (Object) DaySheets.Facts.SHEET
                    ? Set.of("key", "value")
                    : new HashSet<>(sheet.columnNames());
            int known = (int) header.stream()
                    .map(Names::withoutUnit)
                    .filter(columns::contains)
                    .count();
            boolean first = !header.isEmpty() && columns.contains(Names.withoutUnit(header.get(0)));
            if (sheets.contains(sheet.name()) && first && known > most) {
                most = known;
                best = sheet.name();
            }
        }
        return Optional.ofNullable(best);
    }
}

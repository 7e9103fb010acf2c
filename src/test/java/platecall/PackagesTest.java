package platecall;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The packages use each other only as the table in DEVELOPERS.md says. */
class PackagesTest {

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("platecall");

    private static Map<String, Set<String>> table() throws IOException {
        Map<String, Set<String>> table = new LinkedHashMap<>();
        for (String line : Files.readAllLines(Path.of("DEVELOPERS.md"))) {
            Matcher row = Pattern.compile("\\| `(\\w+)` \\|[^|]+\\|([^|]*)\\|").matcher(line);
            if (row.matches()) {
                Set<String> uses =
                        new HashSet<>(Arrays.asList(row.group(2).trim().split("\\s+")));
                uses.remove("");
                table.put(row.group(1), uses);
            }
        }
        return table;
    }

    private static String room(JavaClass type) {
        String[] parts = type.getPackageName().split("\\.");
        return parts.length > 1 && parts[0].equals("platecall") ? parts[1] : "";
    }

    @Test
    void everyPackageStandsInTheTableAndUsesOnlyWhatItsRowAllows() throws IOException {
        Map<String, Set<String>> table = table();
        Set<String> broken = new TreeSet<>();
        for (JavaClass type : CLASSES) {
            String from = room(type);
            if (!table.containsKey(from)) {
                broken.add(from + " has no row");
                continue;
            }
            for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
                String to = room(dependency.getTargetClass());
                if (!to.isEmpty() && !to.equals(from) && !table.get(from).contains(to)) {
                    broken.add(from + " -> " + to + " (" + type.getSimpleName() + " -> "
                            + dependency.getTargetClass().getSimpleName() + ")");
                }
            }
        }
        assertThat(table).hasSizeGreaterThan(10);
        assertThat(broken).isEmpty();
    }

    @Test
    void arrowsRunOneWay() throws IOException {
        Map<String, Set<String>> table = table();
        Set<String> above = new HashSet<>();
        table.forEach((name, uses) -> {
            assertThat(above).as(name + " uses only rows above it").containsAll(uses);
            above.add(name);
        });
    }

    /** Constants are inlined by the compiler and leave no trace in class files, so imports are read as well. */
    @Test
    void importsKeepToTheTable() throws IOException {
        Map<String, Set<String>> table = table();
        Set<String> broken = new TreeSet<>();
        try (Stream<Path> files = Files.walk(Path.of("src/main/java/platecall"))) {
            for (Path file :
                    files.filter(path -> path.toString().endsWith(".java")).toList()) {
                String from = file.getParent().getFileName().toString();
                Matcher uses = Pattern.compile("\\bplatecall\\.(\\w+)\\.[A-Z]")
                        .matcher(Files.readString(file, StandardCharsets.UTF_8));
                while (uses.find()) {
                    if (!uses.group(1).equals(from) && !table.get(from).contains(uses.group(1))) {
                        broken.add(file + " -> " + uses.group(1));
                    }
                }
            }
        }
        assertThat(broken).isEmpty();
    }

    @Test
    void onlySolveKnowsTimefold() {
        Set<String> knowing = new TreeSet<>();
        for (JavaClass type : CLASSES) {
            for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
                if (dependency.getTargetClass().getPackageName().startsWith("ai.timefold")) {
                    knowing.add(room(type));
                }
            }
        }
        assertThat(knowing).containsExactly("solve");
    }
}

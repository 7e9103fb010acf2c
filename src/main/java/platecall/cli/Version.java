package platecall.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** The version of the program, as the build wrote it down. */
final class Version implements IVersionProvider {

    static String number() {
        try (InputStream stream = Version.class.getResourceAsStream("version.properties")) {
            Properties properties = new Properties();
            properties.load(stream);
            return properties.getProperty("version");
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    @Override
    public String[] getVersion() {
        return new String[] {"platecall " + number()};
    }
}

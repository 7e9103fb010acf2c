package platecall.cli;

import picocli.CommandLine.IVersionProvider;

/** The version of the program, as its jar says. */
final class Version implements IVersionProvider {

    @Override
    public String[] getVersion() {
        String version = Version.class.getPackage().getImplementationVersion();
        return new String[] {"platecall " + (version == null ? "(not packaged)" : version)};
    }
}

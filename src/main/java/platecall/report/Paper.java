package platecall.report;

/** What is printed on, and with it the degrees that thermometers show where it is used. */
public enum Paper {
    /** ISO 216; degrees Celsius alone. */
    A4("A4", false),
    /** ANSI/ASME Y14.1 size A; degrees Fahrenheit after those in Celsius. */
    LETTER("letter", true);

    private final String css;
    private final boolean fahrenheit;

    Paper(String css, boolean fahrenheit) {
        this.css = css;
        this.fahrenheit = fahrenheit;
    }

    /** Its name in a style sheet, CSS Paged Media Module Level 3, 7.1. */
    public String css() {
        return css;
    }

    /** {@code 180 °C}, or {@code 180 °C (356 °F)} by {@code F = 1.8 C + 32} (NIST SP 811, B.8), to the nearest degree. */
    String degrees(int celsius) {
        return celsius + " °C" + fahrenheit(Math.round(1.8 * celsius + 32));
    }

    /** The same for what must be reached at least: degrees Fahrenheit are rounded up. */
    String atLeast(double celsius) {
        // a millionth less, since 1.8 is no binary fraction
        return (celsius == Math.rint(celsius) ? "" + Math.round(celsius) : "" + celsius) + " °C"
                + fahrenheit((long) Math.ceil(1.8 * celsius + 32 - 1e-6));
    }

    private String fahrenheit(long degrees) {
        return fahrenheit ? " (" + degrees + " °F)" : "";
    }
}

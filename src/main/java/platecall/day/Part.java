package platecall.day;

import java.util.Locale;

/** What a plate is for. */
public enum Part {
    /** The plate the camera looks at. */
    HERO,
    /** Takes the hero's place while lights are set. */
    STAND_IN,
    /** A close shot of the food alone. */
    INSERT,
    /** In the picture, but not looked at closely. */
    BACKGROUND;

    /** The word in sheets and on paper: {@code hero}, {@code stand-in}, ... */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}

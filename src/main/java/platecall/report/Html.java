package platecall.report;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;

/** Fills the precompiled page templates; what they print is escaped, and well-formed XML for the paper. */
final class Html {

    private static final TemplateEngine PAGES = TemplateEngine.createPrecompiled(
            null, ContentType.Html, Html.class.getClassLoader(), "platecall.report.pages");

    private Html() {}

    static String of(String template, Object model) {
        StringOutput output = new StringOutput();
        PAGES.render(template, model, output);
        return output.toString();
    }
}

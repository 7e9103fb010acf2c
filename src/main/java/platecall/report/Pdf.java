package platecall.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.GregorianCalendar;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;

/**
 * A page set on paper. The same page and imprint give the same bytes.
 *
 * @param bytes the file
 * @param pages how many sheets it fills
 */
record Pdf(byte[] bytes, int pages) {

    static {
        XRLog.setLoggingEnabled(false);
    }

    static Pdf of(String html, Imprint print) {
        try (PDDocument document = new PDDocument();
                ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            try (PdfBoxRenderer renderer = renderer(Glyphs.explained(html), document)) {
                renderer.createPDFWithoutClosing();
                document.getDocumentCatalog().setLanguage("en");
                PDDocumentInformation information = document.getDocumentInformation();
                information.setCreationDate(GregorianCalendar.from(print.at()));
                information.setModificationDate(GregorianCalendar.from(print.at()));
                information.setProducer("Platecall " + print.madeBy());
                document.setDocumentId(print.at().toEpochSecond());
                document.save(bytes);
            }
            return new Pdf(bytes.toByteArray(), document.getNumberOfPages());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** How many sheets a page would fill; nothing is drawn, which takes a part of the time. */
    static int pagesOf(String html) {
        try (PDDocument document = new PDDocument();
                PdfBoxRenderer renderer = renderer(Glyphs.printable(html), document)) {
            renderer.layout();
            return renderer.getRootBox().getLayer().getPages().size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static PdfBoxRenderer renderer(String html, PDDocument document) {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.withHtmlContent(html, null);
        builder.useFont(() -> Fonts.open(Fonts.REGULAR), Fonts.FAMILY, 400, FontStyle.NORMAL, true);
        builder.useFont(() -> Fonts.open(Fonts.BOLD), Fonts.FAMILY, 700, FontStyle.NORMAL, true);
        builder.usePDDocument(document);
        return builder.buildPdfRenderer();
    }
}

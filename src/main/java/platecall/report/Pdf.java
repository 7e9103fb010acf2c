package platecall.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.PageBox;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.w3c.dom.Element;

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

    // read once, since every page needs both
    private static final TrueTypeFont REGULAR = read(Fonts.REGULAR);
    private static final TrueTypeFont BOLD = read(Fonts.BOLD);

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

    /**
     * How many sheets each part of a page would fill that begins on a sheet of its own ({@code new-page}), what stands
     * before them first; nothing is drawn, which takes a part of the time.
     */
    static List<Integer> pagesOf(String html) {
        try (PDDocument document = new PDDocument();
                PdfBoxRenderer renderer = renderer(Glyphs.printable(html), document)) {
            renderer.layout();
            List<PageBox> sheets = renderer.getRootBox().getLayer().getPages();
            List<Integer> starts = new ArrayList<>();
            starts.add(0);
            newPages(
                    renderer.getRootBox(),
                    top -> starts.add((int) sheets.stream()
                            .filter(sheet -> sheet.getBottom() <= top)
                            .count()));
            starts.add(sheets.size());
            return IntStream.range(1, starts.size())
                    .mapToObj(i -> starts.get(i) - starts.get(i - 1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Tells where boxes begin that ask for a new page, from the top down. */
    private static void newPages(Box box, IntConsumer top) {
        Element element = box.getElement();
        if (element != null && element.getAttribute("class").contains("new-page")) {
            top.accept(box.getAbsY());
        } else {
            box.getChildren().forEach(child -> newPages(child, top));
        }
    }

    private static PdfBoxRenderer renderer(String html, PDDocument document) throws IOException {
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.withHtmlContent(html, null);
        builder.useFont(font(REGULAR, document), Fonts.FAMILY, 400, FontStyle.NORMAL, true);
        builder.useFont(font(BOLD, document), Fonts.FAMILY, 700, FontStyle.NORMAL, true);
        builder.usePDDocument(document);
        return builder.buildPdfRenderer();
    }

    private static PDFontSupplier font(TrueTypeFont face, PDDocument document) throws IOException {
        return new PDFontSupplier(PDType0Font.load(document, face, true));
    }

    private static TrueTypeFont read(String file) {
        try (InputStream stream = Fonts.open(file)) {
            return new TTFParser().parse(new RandomAccessReadBuffer(stream));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

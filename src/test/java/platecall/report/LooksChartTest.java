package platecall.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import platecall.looks.LookLife;
import platecall.report.LooksChart.Strip;

class LooksChartTest {

    private static final Strip SCOOP = strip("Scoop", "melting", 0, 2, 7, 1);
    private static final Strip LAGER = strip("Lager", "condensation", 6, 30, 58, 10);
    private static final Strip WAX = strip("Wax fruit", "steady", 0, 86400, 86400, 0);

    private static Strip strip(String dish, String kind, int from, int to, int usable, int band) {
        return new Strip(dish, kind, new LookLife(from, to, usable, band, "why", Optional.empty()));
    }

    @Test
    void pictureHasAStripADishAndGrowsWithThem() throws IOException {
        BufferedImage one = image(SCOOP);
        BufferedImage three = image(SCOOP, LAGER, WAX);

        assertThat(one.getWidth()).isEqualTo(1200);
        assertThat(three.getWidth()).isEqualTo(1200);
        assertThat(three.getHeight() - one.getHeight()).isEqualTo(2 * 104);
    }

    @Test
    void sameDishesGiveTheSamePicture() {
        assertThat(LooksChart.png("Looks", List.of(SCOOP, LAGER)))
                .isEqualTo(LooksChart.png("Looks", List.of(SCOOP, LAGER)))
                .isNotEqualTo(LooksChart.png("Looks", List.of(LAGER, SCOOP)));
    }

    @Test
    void peakIsDarkerThanUsableAndBothEndWhereTheyShould() throws IOException {
        BufferedImage picture = image(strip("Tart", "table", 0, 10, 20, 0));
        int row = picture.getHeight() / 2 - 24;
        List<Color> bands =
                List.of(at(picture, 0.10, row), at(picture, 0.35, row), at(picture, 0.62, row), at(picture, 0.97, row));

        assertThat(bands.get(0)).as("peak is one colour").isEqualTo(bands.get(1));
        assertThat(brightness(bands.get(2))).as("usable").isGreaterThan(brightness(bands.get(0)));
        assertThat(brightness(bands.get(3))).as("over").isGreaterThan(brightness(bands.get(2)));
    }

    @Test
    void neighboursDifferInColourAndDash() throws IOException {
        Set<Integer> colours = new HashSet<>();
        BufferedImage picture = image(SCOOP, LAGER);
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                colours.add(picture.getRGB(x, y));
            }
        }

        assertThat(colours)
                .contains(
                        new Color(0x0072B2).darker().getRGB(),
                        new Color(0xD55E00).darker().getRGB(),
                        Color.BLACK.getRGB());
    }

    @Test
    void axisHoldsTheLongestThatFitsAndLeavesTheRestToWords() {
        assertThat(LooksChart.axisEnd(List.of(SCOOP))).isEqualTo(9);
        assertThat(LooksChart.axisEnd(List.of(SCOOP, LAGER, WAX))).isEqualTo(70);
        assertThat(LooksChart.axisEnd(List.of(WAX))).isEqualTo(130);
        assertThat(LooksChart.axisEnd(List.of(strip("Foam", "froth", 0, 0, 0, 0))))
                .isEqualTo(5);
    }

    @Test
    void wordsSayTheSameAsTheColours() {
        assertThat(LooksChart.words(LAGER))
                .isEqualTo("Lager (condensation): peak 6 to 30 min, usable to 58 min, ± 10 min");
        assertThat(LooksChart.words(WAX)).isEqualTo("Wax fruit (steady): does not change");
        assertThat(LooksChart.words(strip("Pie", "cooling", 0, 0, 14, 0)))
                .isEqualTo("Pie (cooling): no whole minute of peak, usable to 14 min");
    }

    @Test
    void noDishNoPicture() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LooksChart.png("Looks", List.of()))
                .withMessage("a chart of looks needs at least one dish, but it is []");
    }

    private static BufferedImage image(Strip... strips) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(LooksChart.png("Looks", List.of(strips))));
    }

    /** Colour at a share of the plot's width; the frame left of it is about 70 pixels. */
    private static Color at(BufferedImage picture, double share, int row) {
        return new Color(picture.getRGB((int) (70 + share * (picture.getWidth() - 95)), row));
    }

    private static int brightness(Color colour) {
        return colour.getRed() + colour.getGreen() + colour.getBlue();
    }
}

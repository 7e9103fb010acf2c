package platecall.looks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static platecall.looks.CoolingTest.refused;

import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import platecall.looks.Melting.Shape;
import platecall.units.FactFile;

class MeltingTest {

    @Test
    void shapeFactorsAreThoseOfPlank() {
        assertThat(Shape.SLAB.surfaceFactor()).isEqualTo(0.5);
        assertThat(Shape.SLAB.insideFactor()).isEqualTo(0.125);
        assertThat(Shape.CYLINDER.surfaceFactor()).isEqualTo(0.25);
        assertThat(Shape.CYLINDER.insideFactor()).isEqualTo(0.0625);
        assertThat(Shape.SPHERE.surfaceFactor()).isCloseTo(1 / 6.0, within(1e-15));
        assertThat(Shape.SPHERE.insideFactor()).isCloseTo(1 / 24.0, within(1e-15));
    }

    @Test
    void sevenCentimetreSphereFreezesInAnHour() {
        // statement from a course text, which prints 10.82 s by a slip of units
        double seconds = Melting.plankSeconds(Shape.SPHERE, 1000, 250_000, 40 - 1.25, 0.07, 30, 1.2);

        assertThat(seconds).isCloseTo(3606.6, within(1.0));
        assertThat(seconds / 3600).isCloseTo(1.002, within(1e-3));
    }

    @Test
    void slabBetweenPlatesFreezesLikeEarlesExample() {
        // statement: value from memory; 1 mm card (0.06 W/(m K)) is a resistance beside the film
        double withCard = 1 / (1 / 600.0 + 0.001 / 0.06);

        assertThat(Melting.plankSeconds(Shape.SLAB, 1090, 2.56e5, 32, 0.1, withCard, 1.6) / 3600)
                .isCloseTo(4.11, within(0.02));
        assertThat(Melting.plankSeconds(Shape.SLAB, 1090, 2.56e5, 32, 0.1, 600, 1.6) / 3600)
                .isCloseTo(2.09, within(0.02));
        // Earle's amended calculation counts sensible heat too: 3.23e5 J/kg
        assertThat(Melting.plankSeconds(Shape.SLAB, 1090, 3.23e5, 32, 0.1, withCard, 1.6) / 3600)
                .isCloseTo(5.14, within(0.05));
        assertThat(Melting.plankSeconds(Shape.SLAB, 1090, 3.23e5, 32, 0.1, 600, 1.6) / 3600)
                .isCloseTo(2.64, within(0.05));
    }

    @ParameterizedTest
    @EnumSource(Shape.class)
    void aFrontThatHasReachedTheMiddleTookPlanksTime(Shape shape) {
        double whole = Melting.plankSeconds(shape, 550, 120_000, 28, 0.05, 12, 0.44);

        assertThat(Melting.layerSeconds(shape, 550, 120_000, 28, 0.05, 0.025, 12, 0.44))
                .isCloseTo(whole, within(1e-6 * whole));
    }

    @ParameterizedTest
    @CsvSource({"SLAB, 1", "CYLINDER, 0.98", "SPHERE, 0.9605"})
    void aThinLayerGoesAsOnAFlatFaceLessTheCurve(Shape shape, double share) {
        // own calculation: volume of a layer of 2 % of the diameter over that of a flat one; film alone counts
        double flat = 1000 * 300_000 / 20.0 * 0.001 / 10;

        assertThat(Melting.layerSeconds(shape, 1000, 300_000, 20, 0.05, 0.001, 10, 1e9))
                .isCloseTo(share * flat, withinPercentage(0.01));
    }

    @ParameterizedTest
    @EnumSource(Shape.class)
    void halfwayInTheThawedPartHoldsTheHeatBack(Shape shape) {
        // own calculation: a = 0.1, d = 0.025, rho L / dT / k = 6e7, film without resistance
        double expected = switch (shape) {
            case SLAB -> 6e7 * 0.025 * 0.025 / 2;
            case CYLINDER -> 6e7 * ((0.0025 - 0.000625) / 4 - 0.000625 / 2 * Math.log(2));
            case SPHERE -> 6e7 * ((0.0025 - 0.000625) / 2 - (0.000125 - 0.000015625) / 0.15);
        };

        double seconds = Melting.layerSeconds(shape, 1000, 300_000, 10, 0.1, 0.025, 1e12, 0.5);

        assertThat(seconds).isCloseTo(expected, within(1.0));
    }

    @Test
    void noLayerTakesNoTime() {
        assertThat(Melting.layerSeconds(Shape.SPHERE, 1000, 300_000, 20, 0.05, 0, 10, 0.5))
                .isZero();
    }

    @Test
    void propertiesFollowEarlesFormulas() {
        assertThat(Composition.specificHeatThawed(0.84)).isCloseTo(3654, within(1.0));
        assertThat(Composition.specificHeatFrozen(0.84)).isCloseTo(1898, within(1.0));
        assertThat(Composition.latentHeat(0.84)).isCloseTo(281_400, within(100.0));
        assertThat(Composition.conductivityThawed(0.84)).isCloseTo(0.5036, within(1e-4));
        assertThat(Composition.conductivityFrozen(0.84)).isCloseTo(2.058, within(1e-3));
        assertThat(Composition.specificHeatThawed(0.62)).isCloseTo(2917, within(1.0));
        assertThat(Composition.specificHeatFrozen(0.62)).isCloseTo(1621, within(1.0));
        assertThat(Composition.latentHeat(0.62)).isCloseTo(207_700, within(100.0));
        // melting: the heat passes through what has thawed, which conducts less than ice
        assertThat(Composition.conductivityThawed(0.62)).isLessThan(Composition.conductivityFrozen(0.62));
    }

    @ParameterizedTest
    @CsvSource({
        "apples, 0.84, 3.60, 280",
        "beef, 0.75, 3.22, 255",
        "beer, 0.92, 4.19, 301",
        "milk, 0.875, 3.9, 289",
        "water, 1, 4.19, 335",
        "carrots, 0.8779, 3.92, 293"
    })
    void earlesFormulasAreNearTheTables(String food, double water, double specificHeat, double latent) {
        // Earle, appendix 7, after the ASHRAE Guide; carrots from ASHRAE Refrigeration, Table 3
        assertThat(Composition.latentHeat(water) / 1000).as(food).isCloseTo(latent, withinPercentage(3));
        assertThat(Composition.specificHeatThawed(water) / 1000).as(food).isCloseTo(specificHeat, withinPercentage(7));
    }

    /** Earle, appendix 7, after the ASHRAE Guide: specific heat below freezing in kJ/(kg K); carrots ASHRAE. */
    @ParameterizedTest
    @CsvSource({
        "apples, 0.84, 1.88",
        "beef, 0.75, 1.67",
        "beer, 0.92, 2.01",
        "milk, 0.875, 2.05",
        "water, 1, 2.05",
        "carrots, 0.8779, 2.00"
    })
    void earlesFormulaIsNearTheTablesBelowFreezingToo(String food, double water, double specificHeat) {
        assertThat(Composition.specificHeatFrozen(water) / 1000).as(food).isCloseTo(specificHeat, withinPercentage(7));
    }

    /**
     * Earle, appendix 7: specific heats above and below freezing in kJ/(kg K). Eggs have no share of water there, so it is
     * taken from their latent heat, 276 kJ/kg; bread has 32 to 37 %.
     */
    @ParameterizedTest
    @CsvSource({"eggs, 0.824, 3.2, 1.67, 13, 13", "bread, 0.32, 2.93, 1.42, 35, 13", "bread, 0.37, 2.93, 1.42, 30, 9"})
    void earlesFormulasAreOffByAnEighthForEggsAndAThirdForBread(
            String food, double water, double thawed, double frozen, double percentThawed, double percentFrozen) {
        assertThat(Composition.specificHeatThawed(water) / 1000)
                .as(food)
                .isCloseTo(thawed, withinPercentage(percentThawed));
        assertThat(Composition.specificHeatFrozen(water) / 1000)
                .as(food)
                .isCloseTo(frozen, withinPercentage(percentFrozen));
    }

    /** Earle, appendix 7: ranges of water of ice cream and bread give their printed latent heats, in kJ/kg. */
    @ParameterizedTest
    @CsvSource({"ice cream, 0.58, 0.66, 222", "bread, 0.32, 0.37, 109", "bread, 0.32, 0.37, 121"})
    void rangesOfWaterSpanThePrintedLatentHeat(String food, double driest, double wettest, double latent) {
        assertThat(latent)
                .as(food)
                .isBetween(Composition.latentHeat(driest) / 1000, 1.01 * Composition.latentHeat(wettest) / 1000);
    }

    /** ASHRAE Refrigeration, Table 3: latent heat in kJ/kg; ice cream: value from memory. */
    @ParameterizedTest
    @CsvSource({
        "chocolate ice cream, 55.7, -5.6, 186",
        "strawberry ice cream, 60, -5.6, 200",
        "vanilla ice cream, 61, -5.6, 204",
        "carrot, 87.79, -1.4, 293"
    })
    void frozenFoodsHaveTheWaterAndFreezingPointOfAshrae(String food, double water, double melts, double latent) {
        theTableHas(food, water, melts);
        // ASHRAE takes 333.6 kJ/kg for water, Earle 335
        assertThat(3.336 * water).isCloseTo(latent, within(0.6));
        assertThat(Composition.latentHeat(water / 100) / 1000).isCloseTo(latent, within(1.2));
    }

    /** Earle, appendix 7, after the ASHRAE Guide. */
    @ParameterizedTest
    @CsvSource({"apple, 84, -2", "beef, 75, -2", "beer, 92, -2", "milk, 87.5, -1", "ice, 100, 0"})
    void otherFrozenFoodsHaveTheWaterAndFreezingPointOfEarle(String food, double water, double melts) {
        theTableHas(food, water, melts);
    }

    private static void theTableHas(String food, double water, double melts) {
        CSVRecord row = FactFile.rows(MeltingLook.class, "frozen.csv").stream()
                .filter(one -> one.get("food").equals(food))
                .findFirst()
                .orElseThrow();

        assertThat(Double.parseDouble(row.get("water"))).isEqualTo(water);
        assertThat(Double.parseDouble(row.get("melts"))).isEqualTo(melts);
    }

    @ParameterizedTest
    @CsvSource({"-8, 0.179", "-12, 0.318", "-18, 0.411"})
    void iceInVanillaIceCreamByChensFormula(double celsius, double share) {
        // formula and composition: value from memory
        assertThat(Composition.iceShare(0.61, 0.035, -5.6, celsius)).isCloseTo(share, within(1e-3));
    }

    @Test
    void nothingIsFrozenAtTheFreezingPointAndAllOfPureWaterBelowIt() {
        assertThat(Composition.iceShare(0.61, 0.035, -5.6, -5.6)).isZero();
        assertThat(Composition.iceShare(0.61, 0.035, -5.6, 4)).isZero();
        assertThat(Composition.iceShare(1, 0, 0, -1)).isEqualTo(1);
        assertThat(Composition.iceShare(0.1, 0.9, -2, -10)).isZero();
    }

    @Test
    void waterFreezesWithThePhysicistsLatentHeat() {
        // 333 in physics tables, 335 in Earle
        assertThat(Composition.latentHeat(1)).isCloseTo(333_000, withinPercentage(1));
    }

    @Test
    void valuesOutsideTheirRangeAreNamedWithTheirValue() {
        refused(
                () -> Melting.plankSeconds(Shape.SLAB, -1, 1, 1, 1, 1, 1),
                "density must be more than 0 kg/m3, but it is [-1]");
        refused(() -> Melting.plankSeconds(Shape.SLAB, 1, 0, 1, 1, 1, 1), "latent heat");
        refused(() -> Melting.plankSeconds(Shape.SLAB, 1, 1, 0, 1, 1, 1), "temperature difference");
        refused(() -> Melting.plankSeconds(Shape.SLAB, 1, 1, 1, 0, 1, 1), "size");
        refused(() -> Melting.plankSeconds(Shape.SLAB, 1, 1, 1, 1, 0, 1), "coefficient");
        refused(() -> Melting.plankSeconds(Shape.SLAB, 1, 1, 1, 1, 1, 0), "conductivity");
        refused(
                () -> Melting.layerSeconds(Shape.SLAB, 1, 1, 1, 1, 0.6, 1, 1),
                "layer must be from 0 to 0.5 m, but it is [0.6]");
        refused(() -> Melting.layerSeconds(Shape.SLAB, 1, 1, 1, 0, 0, 1, 1), "size");
        refused(() -> Melting.layerSeconds(Shape.SLAB, 1, 1, 1, 1, 0, 0, 1), "coefficient");
        refused(() -> Melting.layerSeconds(Shape.SLAB, 1, 1, 1, 1, 0, 1, 0), "conductivity");
        refused(() -> Composition.specificHeatThawed(1.1), "share of water must be from 0 to 1, but it is [1.1]");
        refused(() -> Composition.specificHeatFrozen(-0.1), "share of water");
        refused(() -> Composition.latentHeat(2), "share of water");
        refused(() -> Composition.conductivityThawed(2), "share of water");
        refused(() -> Composition.conductivityFrozen(2), "share of water");
        refused(() -> Composition.iceShare(2, 0, 0, 0), "share of water");
        refused(() -> Composition.iceShare(1, 2, 0, 0), "share of protein");
        refused(() -> Composition.iceShare(1, 0, 1, 0), "freezing point");
        refused(() -> Composition.iceShare(1, 0, 0, 101), "temperature");
    }
}

package platecall.looks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static platecall.looks.CoolingTest.refused;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConvectionTest {

    @Test
    void fireplaceDoorLosesHeatLikeIncroperaExample92() {
        double rayleigh = Convection.rayleigh(1 / 400.0, 232 - 23, 0.71, 26.4e-6, 38.3e-6);
        double nusselt = Convection.verticalPlate(rayleigh, 0.690);
        double coefficient = Convection.coefficient(nusselt, 33.8e-3, 0.71);

        assertThat(rayleigh).isCloseTo(1.81e9, withinPercentage(1));
        assertThat(nusselt).isCloseTo(147, withinPercentage(1));
        assertThat(coefficient).isCloseTo(7.0, withinPercentage(1));
        assertThat(coefficient * 0.71 * 1.02 * (232 - 23)).isCloseTo(1060, withinPercentage(1));
    }

    @Test
    void ductLosesHeatLikeIncroperaExample93() {
        double expansion = 0.0033;
        double sideRayleigh = Convection.rayleigh(expansion, 30, 0.3, 16.2e-6, 22.9e-6);
        double flatRayleigh = Convection.rayleigh(expansion, 30, 0.375, 16.2e-6, 22.9e-6);

        double side = Convection.coefficient(Convection.verticalPlateLaminar(sideRayleigh, 0.71), 0.0265, 0.3);
        double top = Convection.coefficient(Convection.plateHotSideUp(flatRayleigh), 0.0265, 0.375);
        double bottom = Convection.coefficient(Convection.plateHotSideDown(flatRayleigh), 0.0265, 0.375);

        assertThat(side).isCloseTo(4.23, withinPercentage(1));
        assertThat(top).isCloseTo(5.48, withinPercentage(1));
        assertThat(bottom).isCloseTo(2.07, withinPercentage(1));
        assertThat((2 * side * 0.3 + top * 0.75 + bottom * 0.75) * 30).isCloseTo(246, withinPercentage(1));
    }

    @Test
    void steamPipeLosesHeatLikeIncroperaExample94() {
        double rayleigh = Convection.rayleigh(2.725e-3, 165 - 23, 0.1, 22.8e-6, 32.8e-6);
        double nusselt = Convection.horizontalCylinder(rayleigh, 0.697);
        double coefficient = Convection.coefficient(nusselt, 0.0313, 0.1);
        double convected = coefficient * Math.PI * 0.1 * (165 - 23);
        // the book takes 0 °C as 273 K
        double radiated = Cooling.radiativeFlux(0.85, 165 - 0.15, 23 - 0.15) * Math.PI * 0.1;

        assertThat(nusselt).isCloseTo(23.09, within(0.05));
        assertThat(coefficient).isCloseTo(7.23, within(0.02));
        assertThat(convected).isCloseTo(322.5, within(0.5));
        assertThat(radiated).isCloseTo(441.0, within(0.5));
        assertThat(convected + radiated).isCloseTo(763, within(1.0));
    }

    @Test
    void hotPlateJumpsWhereTheFlowTurnsTurbulentAsInMcAdams() {
        assertThat(Convection.plateHotSideUp(1e7)).isCloseTo(30.37, within(0.01));
        assertThat(Convection.plateHotSideUp(Math.nextUp(1e7))).isCloseTo(32.32, within(0.01));
        assertThat(Convection.plateHotSideUp(1e4)).isCloseTo(5.4, within(1e-9));
        assertThat(Convection.plateHotSideDown(1e8)).isCloseTo(27, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({
        "20, 1.204, 1007, 0.02514, 1.516e-5, 0.7309",
        "25, 1.184, 1007, 0.02551, 1.562e-5, 0.7296",
        "40, 1.127, 1007, 0.02662, 1.702e-5, 0.7255",
        "60, 1.059, 1007, 0.02808, 1.896e-5, 0.7202"
    })
    void airHasThePropertiesOfCengelTableA15(
            double celsius, double density, double heat, double conductivity, double viscosity, double prandtl) {
        assertThat(Air.at(celsius)).isEqualTo(new Air(density, heat, conductivity, viscosity, prandtl));
    }

    @Test
    void airIsTakenLinearlyBetweenTwoRows() {
        Air air = Air.at(22);

        assertThat(air.densityKgPerM3()).isCloseTo(1.204 * 0.6 + 1.184 * 0.4, within(1e-12));
        assertThat(air.viscosityM2PerS()).isCloseTo(1.516e-5 * 0.6 + 1.562e-5 * 0.4, within(1e-18));
        assertThat(air.diffusivityM2PerS()).isCloseTo(air.viscosityM2PerS() / air.prandtl(), within(1e-18));
        assertThat(Air.at(-40).densityKgPerM3()).isEqualTo(1.514);
        assertThat(Air.at(100).densityKgPerM3()).isEqualTo(0.9458);
    }

    @Test
    void everyRowOfTheAirTableKeepsItsOwnRelation() {
        // Pr = nu rho c / k ties the columns of Çengel's table together
        for (double celsius = -40; celsius <= 100; celsius += 10) {
            Air air = Air.at(celsius);
            double prandtl =
                    air.viscosityM2PerS() * air.densityKgPerM3() * air.specificHeatJPerKgK() / air.conductivityWPerMK();
            assertThat(prandtl).as("at %s °C", celsius).isCloseTo(air.prandtl(), withinPercentage(0.3));
        }
    }

    @Test
    void aHotPlateOfFoodIsCooledByItsOwnDraught() {
        // own calculation: Ra at film 47 °C, length 0.15 / 4
        Air film = Air.at(47);
        double rayleigh = Convection.rayleigh(1 / 320.15, 50, 0.0375, film.viscosityM2PerS(), film.diffusivityM2PerS());
        double expected = 0.54 * Math.pow(rayleigh, 0.25) * film.conductivityWPerMK() / 0.0375;

        assertThat(Convection.overPlate(72, 22, 0.15)).isCloseTo(expected, within(1e-9));
        assertThat(expected).isBetween(7.0, 9.0);
        assertThat(Convection.overPlate(22, 72, 0.15)).isEqualTo(Convection.LEAST_COEFFICIENT);
        assertThat(Convection.overPlate(22, 22, 0.15)).isEqualTo(Convection.LEAST_COEFFICIENT);
        assertThat(Convection.overPlate(23, 22, 0.5)).isEqualTo(Convection.LEAST_COEFFICIENT);
    }

    @Test
    void aCupIsCooledBySmallerDraughtWithoutAJump() {
        // own calculation: Rayleigh number about 1e4, at which the published range begins
        double warmer = Convection.overPlate(70, 22, 0.06);
        double cooler = Convection.overPlate(60, 22, 0.06);

        assertThat(warmer).isBetween(8.0, 11.0);
        assertThat(cooler).isBetween(0.9 * warmer, warmer);
    }

    @Test
    void aColdGlassAndAFrozenScoopAreWarmedByTheirOwnDraught() {
        Air film = Air.at(13);
        double wall = Convection.rayleigh(1 / 286.15, 18, 0.12, film.viscosityM2PerS(), film.diffusivityM2PerS());
        double scoop = Convection.rayleigh(1 / 286.15, 18, 0.05, film.viscosityM2PerS(), film.diffusivityM2PerS());

        assertThat(Convection.alongWall(4, 22, 0.12))
                .isCloseTo(
                        Convection.verticalPlate(wall, film.prandtl()) * film.conductivityWPerMK() / 0.12,
                        within(1e-9));
        assertThat(Convection.aroundRound(4, 22, 0.05))
                .isCloseTo(
                        Convection.horizontalCylinder(scoop, film.prandtl()) * film.conductivityWPerMK() / 0.05,
                        within(1e-9));
        assertThat(Convection.alongWall(22, 22, 0.5)).isEqualTo(Convection.LEAST_COEFFICIENT);
        assertThat(Convection.aroundRound(22, 22, 0.5)).isEqualTo(Convection.LEAST_COEFFICIENT);
    }

    @Test
    void valuesOutsideTheirRangeAreNamedWithTheirValue() {
        refused(() -> Convection.rayleigh(0, 1, 1, 1, 1), "expansion");
        refused(
                () -> Convection.rayleigh(1, -1, 1, 1, 1),
                "temperature difference must be from 0 to 10000 K, but it is [-1]");
        refused(() -> Convection.rayleigh(1, 1, 0, 1, 1), "length");
        refused(() -> Convection.rayleigh(1, 1, 1, 0, 1), "viscosity");
        refused(() -> Convection.rayleigh(1, 1, 1, 1, 0), "diffusivity");
        refused(() -> Convection.verticalPlate(2e13, 0.7), "vertical plate");
        refused(() -> Convection.verticalPlate(1e6, 0), "Prandtl number must be more than 0, but it is [0]");
        refused(() -> Convection.verticalPlateLaminar(2e9, 0.7), "laminar vertical plate");
        refused(() -> Convection.plateHotSideUp(9999), "hot side up");
        refused(() -> Convection.plateHotSideUp(2e11), "hot side up");
        refused(() -> Convection.plateHotSideDown(9e4), "hot side down");
        refused(() -> Convection.horizontalCylinder(2e12, 0.7), "cylinder");
        refused(() -> Convection.coefficient(0, 1, 1), "Nusselt number");
        refused(() -> Convection.coefficient(1, 0, 1), "conductivity");
        refused(() -> Convection.coefficient(1, 1, 0), "length");
        refused(() -> Convection.overPlate(60, 20, 0), "diameter");
        refused(() -> Air.at(-40.1), "air temperature must be from -40 to 100 °C, but it is [-40.1]");
        refused(() -> Air.at(100.1), "air temperature");
        refused(() -> new Air(0, 1, 1, 1, 1), "density");
        refused(() -> new Air(1, 0, 1, 1, 1), "specific heat");
        refused(() -> new Air(1, 1, 0, 1, 1), "conductivity");
        refused(() -> new Air(1, 1, 1, 0, 1), "viscosity");
        refused(() -> new Air(1, 1, 1, 1, Double.POSITIVE_INFINITY), "Prandtl number");
    }
}

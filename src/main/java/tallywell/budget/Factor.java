package tallywell.budget;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tallywell.method.InputQuantity;
import tallywell.method.LightPath;
import tallywell.method.Sample;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;
import tallywell.workup.Result;
import tallywell.workup.WellResult;

/**
 * Something besides net ΔA that a value is proportional to, or inversely so. What cancels between sample and standard is
 * not among the factors of a result: the volume of sample at one pipette setting, the total volume, the light path, the
 * photometric scale and the absorptivity where standards make the calibration.
 *
 * @param quantity what it is
 * @param name what tells it from others of the same quantity, such as the pipette setting
 * @param exponent 1 or -1
 * @param size of the quantity where its spread is absolute, else 1
 */
record Factor(InputQuantity quantity, String name, int exponent, double size) {
    static List<Factor> of(StepModel model, Result result, List<WellResult> wells) {
        List<Factor> factors = new ArrayList<>();
        Optional<Sample> sample = wells.get(0).trace().sample();
        OptionalDouble own = sample.map(Sample::volumeUl).orElse(OptionalDouble.empty());
        boolean byStandards = model.step().calibration().isPresent();
        boolean otherSetting = own.isPresent() && own.getAsDouble() != methodVolume(model);
        if (!byStandards || otherSetting) {
            factors.add(relative(InputQuantity.SAMPLE_VOLUME, setting(own.orElse(methodVolume(model))), -1));
        }
        if (byStandards && otherSetting) {
            factors.add(relative(InputQuantity.SAMPLE_VOLUME, setting(methodVolume(model)), 1));
        }
        if (byStandards) {
            factors.add(relative(InputQuantity.STANDARD, "step " + result.step(), 1));
        } else {
            byAbsorptivity(model, factors);
        }
        if (result.dilution().factor() != 1) {
            factors.add(relative(InputQuantity.DILUTION, "dilution " + result.dilution(), 1));
        }
        factors.add(relative(InputQuantity.PLATE, "", 1));
        sample.flatMap(Sample::solid).ifPresent(solid -> {
            factors.add(new Factor(InputQuantity.MASS, "", -1, solid.massG()));
            factors.add(relative(InputQuantity.EXTRACT_VOLUME, Numbers.plain(solid.extractMl()) + " mL", 1));
        });
        boolean byDensity = sample.isPresent()
                && sample.get().solid().isEmpty()
                && result.unit().kind() == Kind.CONTENT;
        if (byDensity) {
            factors.add(relative(InputQuantity.DENSITY, "slot " + sample.get().slot(), -1));
        }
        return factors;
    }

    private static void byAbsorptivity(StepModel model, List<Factor> factors) {
        LightPath path = model.method().lightPath().orElseThrow();
        boolean vertical = path instanceof LightPath.Vertical;
        // A measured path is inverse to the absorption of 1 cm that it was measured by.
        int ofPath = path instanceof LightPath.Fixed ? -1 : 1;
        factors.add(relative(InputQuantity.ABSORPTIVITY, "step " + model.step().number(), -1));
        factors.add(relative(InputQuantity.READER, "", 1));
        // In a vertical beam the volume cancels: half the liquid is half the path, with the same amount in it.
        factors.add(relative(InputQuantity.LIGHT_PATH, "", ofPath));
        if (!vertical) {
            factors.add(relative(InputQuantity.TOTAL_VOLUME, "", 1));
        }
    }

    private static double methodVolume(StepModel model) {
        return model.step().step().volumes().map(volumes -> volumes.sampleUl()).orElse(0.0);
    }

    private static String setting(double volumeUl) {
        return Numbers.plain(volumeUl) + " µL";
    }

    private static Factor relative(InputQuantity quantity, String name, int exponent) {
        return new Factor(quantity, name, exponent, 1);
    }
}

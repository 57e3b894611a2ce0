package tallywell.workup;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import tallywell.assess.Assessment;
import tallywell.assess.Assessor;
import tallywell.assess.Judgement;
import tallywell.assess.Verdict;
import tallywell.notice.InputException;

/** Plates in which a part of the analyte reacts slowly, and plates in which samples creep for other reasons. */
class CreepSlopeTest {
    private static final int PLATES = Integer.getInteger("plates", 6);
    private static final String BY_ABSORPTIVITY = "{by: absorptivity}";
    private static final String BY_STANDARDS = "{by: standards, model: line}";
    /** Absorbance of 1 g/L pipetted: 6300 · 20 / 290 / 134.087. */
    private static final double PER_GRAM = 6300.0 * 20 / 290 / 134.087;

    /** What a study found. */
    private record Found(double flagged, double silent, double missed, double checked, double samples) {
        @Override
        public String toString() {
            return String.format(
                    java.util.Locale.ROOT,
                    "plates flagged %.3f; of samples %.3f report, %.3f report and off by more than 2 U",
                    flagged,
                    silent / samples,
                    missed / samples);
        }
    }

    /** How the plates of a study are made. */
    private record Plan(
            String layout,
            String calibration,
            double slow,
            double halfLifeMin,
            boolean standardsToo,
            double productPerMin,
            double creepSpread,
            double minutes,
            double intervalS) {}

    private static Found study(Plan plan, String creep) throws InputException {
        DrawnPlate plate = DrawnPlate.of(
                        plan.layout(),
                        plan.calibration(),
                        "creep: {correct: " + creep + "}",
                        "uncertainty: {sample-volume: {standard: 0.5 %}}")
                .read(plan.minutes(), plan.intervalS());
        boolean standards = plan.layout().equals(DrawnPlate.STANDARDS);
        int flagged = 0;
        double report = 0;
        double missed = 0;
        double samples = 0;
        for (int i = 0; i < PLATES; i++) {
            Random random = new Random(7000 + i);
            int blanks = standards ? 1 : 3;
            double[] level = new double[12];
            double[] creepOf = new double[12];
            double[] k = new double[12];
            for (int pair = 0; pair < 12; pair++) {
                boolean standard = standards && pair >= 1 && pair <= 4;
                level[pair] = pair < blanks
                        ? 0
                        : standard ? new double[] {0.10, 0.25, 0.50, 0.75}[pair - 1] : 0.1 + 0.65 * random.nextDouble();
                double own = standard || pair < blanks ? 0 : Math.abs(plan.creepSpread() * random.nextGaussian());
                creepOf[pair] = 0.0002 + own;
                k[pair] = 0.01 + 0.02 * random.nextDouble();
            }
            double slowRate = Math.log(2) / plan.halfLifeMin() / 60;
            Assay assay = plate.drawn(
                    (pair, well) -> {
                        double volume = 1 + 0.005 * random.nextGaussian();
                        boolean pure = standards && pair <= 4;
                        double part = pure && !plan.standardsToo() ? 0 : plan.slow();
                        double change = PER_GRAM * level[pair] * volume;
                        return t -> change * (1 - (1 - part) * Math.exp(-k[pair] * t) - part * Math.exp(-slowRate * t))
                                + (creepOf[pair] + plan.productPerMin() * change) * t / 60;
                    },
                    10,
                    random);
            Analysis analysis = new Workup().analyse(assay);
            Assessment assessment = new Assessor().assess(analysis);
            boolean any = false;
            for (int j = 0; j < assessment.judgements().size(); j++) {
                Judgement judgement = assessment.judgements().get(j);
                any |= judgement.result().flags().contains(Flag.CREEP_FOLLOWS_ANALYTE);
                double truth =
                        level[(standards ? 4 : 2) + judgement.result().slot().orElseThrow()];
                samples++;
                if (judgement.verdict() == Verdict.REPORT
                        && judgement.result().value().isPresent()) {
                    report++;
                    var budget = assessment.budget().results().get(j);
                    double big = budget.orElseThrow().expandedUncertainty();
                    missed += Math.abs(judgement.result().value().orElseThrow() - truth) > 2 * big ? 1 : 0;
                }
            }
            flagged += any ? 1 : 0;
        }
        return new Found((double) flagged / PLATES, report, missed, 0, samples);
    }

    private static Found shown(String what, Plan plan, String creep) throws InputException {
        Found found = study(plan, creep);
        if (PLATES > 100) {
            System.out.println(what + ", " + creep + ": " + found);
        }
        return found;
    }

    @Test
    void analyteThatReactsSlowlyIsSeenByThePlate() throws InputException {
        for (double slow : new double[] {0.05, 0.10}) {
            for (double half : new double[] {12, 23}) {
                for (double minutes : PLATES > 100 ? new double[] {15, 25} : new double[] {20}) {
                    Plan plan = new Plan(DrawnPlate.SAMPLES, BY_ABSORPTIVITY, slow, half, true, 0, 0.0003, minutes, 15);
                    Found found = shown("slow " + slow + " half " + half + " read " + minutes, plan, "extrapolate");
                    assertThat(found.missed()).as(plan.toString()).isLessThanOrEqualTo(0.05 * found.samples());
                }
            }
        }
    }

    @Test
    void creepOfReagentsAndMatrixIsLeftInPeace() throws InputException {
        for (double spread : new double[] {0, 0.0003, 0.002}) {
            for (String layout : new String[] {DrawnPlate.SAMPLES, DrawnPlate.STANDARDS}) {
                for (double every : new double[] {15, 240}) {
                    boolean standards = layout.equals(DrawnPlate.STANDARDS);
                    Plan plan = new Plan(
                            layout, standards ? BY_STANDARDS : BY_ABSORPTIVITY, 0, 15, true, 0, spread, 25, every);
                    for (String creep : new String[] {"extrapolate"}) {
                        Found found = shown(
                                "good, spread " + spread + " standards " + standards + " every " + every, plan, creep);
                        assertThat(found.flagged()).as(plan.toString()).isLessThanOrEqualTo(PLATES > 100 ? 0.02 : 0.17);
                    }
                }
            }
        }
    }

    @Test
    void whatStandardsShowTooCancelsAndWhatTheyDoNotIsFlagged() throws InputException {
        for (boolean too : new boolean[] {true, false}) {
            Plan plan = new Plan(DrawnPlate.STANDARDS, BY_STANDARDS, 0.10, 45, too, 0, 0.0003, 25, 15);
            Found found = shown("standards too " + too, plan, "extrapolate");
            assertThat(found.flagged()).as("standards too " + too).isBetween(too ? 0 : 0.8, too ? 0.17 : 1.0);
            assertThat(found.missed()).isLessThanOrEqualTo(0.05 * found.samples());
        }
    }
}

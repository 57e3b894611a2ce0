package tallywell.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tallywell.curve.FittedVariance;
import tallywell.curve.Model;
import tallywell.method.LightPath;
import tallywell.method.TriggerDilution;
import tallywell.plate.Content;
import tallywell.plate.Well;
import tallywell.workup.Analysis;
import tallywell.workup.StepAnalysis;
import tallywell.workup.WellResult;

/** Where everything stands on the sheet Calibration: for each step the means of its blanks, its constants, its points. */
final class CalibrationPlaces {
    static final String SHEET = "Calibration";

    /** Rows kept for the chart beside the facts. */
    static final int CHART_ROWS = 20;

    private static final int FIRST_SECTION = 3;

    /** One number that a step is worked up with. */
    enum Fact {
        VOLUME_BEFORE("Volume before the trigger", "µL"),
        VOLUME_AFTER("Volume after the trigger, V", "µL"),
        TRIGGER_FACTOR("Dilution by the trigger, V before / V after", ""),
        VOLUME_SAMPLE("Sample in the well, v", "µL"),
        MOLAR_MASS("Molar mass, M", "g/mol"),
        ABSORPTIVITY("Molar absorptivity, ε", "L/mol/cm"),
        WELL_AREA("Area of the well", "mm2"),
        PATH("Light path, d", "cm"),
        ONE_CM_PEAK("Absorbance of 1 cm of water at the peak", ""),
        ONE_CM_BESIDE("Absorbance of 1 cm of water beside the peak", ""),
        SIGNALS("Signal molecules per analyte molecule, s", ""),
        FACTOR("Factor V·M/(ε·d·v·s)", "g/L per ΔA"),
        POINTS("Points", ""),
        MEAN_LEVEL("Weighted mean level", "g/L"),
        MEAN_NET("Weighted mean net ΔA", ""),
        ALPHA("Centre of (x - mean)², α", "g/L"),
        BETA("Weighted mean of (x - mean)², β", "g²/L²"),
        STRAIGHT("Slope of the straight part, c1", "per g/L"),
        BENT("Slope of the bent part, c2", "per g²/L²"),
        SLOPE("Slope b", "per g/L"),
        INTERCEPT("Intercept a", ""),
        SQUARE("Coefficient of x², c", "per g²/L²"),
        LOWER("Lower end a", ""),
        STEEPNESS("Steepness b", ""),
        MIDDLE("Middle c", "g/L"),
        UPPER("Upper end d", ""),
        ASYMMETRY("Asymmetry g", ""),
        VARIANCE_OF_BLANK("Variance of a blank over that of weight 1, as fitted", ""),
        VARIANCE_GROWTH("Growth of the variance with net ΔA², as fitted", ""),
        RESIDUAL_SD("Residual SD, weight 1", ""),
        LOWEST("Lowest standard", "g/L"),
        HIGHEST("Highest standard", "g/L"),
        NET_LOWEST("Smallest net ΔA with a value", ""),
        NET_HIGHEST("Largest net ΔA with a value", "");

        private final String label;
        private final String unit;

        Fact(String label, String unit) {
            this.label = label;
            this.unit = unit;
        }

        String label() {
            return label;
        }

        String unit() {
            return unit;
        }
    }

    /** Which wells count. */
    enum Scope {
        /** Those that are used. */
        USED(1, 3, 4, 2, 9, 10),
        /** All, excluded ones put back. */
        ALL(3, 6, 12, 11, 13, 14);

        final int fact;
        final int mean;
        final int weight;
        final int net;
        final int response;
        final int level;

        Scope(int fact, int mean, int weight, int net, int response, int level) {
            this.fact = fact;
            this.mean = mean;
            this.weight = weight;
            this.net = net;
            this.response = response;
            this.level = level;
        }
    }

    /**
     * Wells that one mean ΔA is taken over.
     *
     * @param number that the sheet Wells names them by, from 1
     * @param what in words
     * @param row of the mean, from 0
     * @param wells all of them, excluded ones too
     */
    record Means(int number, String what, int row, List<WellResult> wells) {
        String cell(Scope scope) {
            return SHEET + "!" + At.fixed(row, scope.mean);
        }
    }

    private final Map<Integer, Section> sections = new LinkedHashMap<>();

    CalibrationPlaces(Analysis analysis) {
        int row = FIRST_SECTION;
        int number = 1;
        for (StepAnalysis step : analysis.steps()) {
            Section section = new Section(analysis, step, row, number);
            sections.put(step.number(), section);
            row = section.end() + 2;
            number += section.means().size();
        }
    }

    Section of(int step) {
        Section section = sections.get(step);
        if (section == null) {
            throw new IllegalArgumentException("step must be 1 to " + sections.size() + " but was " + step);
        }
        return section;
    }

    /** The part of one step. */
    static final class Section {
        private final int top;
        private final Map<String, Means> means = new LinkedHashMap<>();
        private final Map<Well, Means> meansOf = new HashMap<>();
        private final Map<Fact, Integer> facts = new EnumMap<>(Fact.class);
        private final List<WellResult> points;
        private final int meansHead;
        private final int factsHead;
        private final int pointsHead;
        private final int end;

        Section(Analysis analysis, StepAnalysis step, int top, int firstNumber) {
            this.top = top;
            meansHead = top + 1;
            int row = collectMeans(step, meansHead + 1, firstNumber);
            factsHead = row + 1;
            row = factsHead + 1;
            for (Fact fact : wanted(analysis, step)) {
                facts.put(fact, row++);
            }
            boolean fitted = step.calibration().isPresent();
            points = fitted ? standards(step) : List.of();
            pointsHead = fitted ? Math.max(row, factsHead + CHART_ROWS) + 1 : row;
            end = fitted ? pointsHead + 1 + points.size() : row;
        }

        private int collectMeans(StepAnalysis step, int firstRow, int firstNumber) {
            Map<String, List<WellResult>> wells = new LinkedHashMap<>();
            for (String group : step.blanks().keySet()) {
                wells.put(key(true, group), new ArrayList<>());
            }
            for (WellResult well : inOrder(step)) {
                key(well)
                        .ifPresent(key -> wells.computeIfAbsent(key, each -> new ArrayList<>())
                                .add(well));
            }
            int row = firstRow;
            int number = firstNumber;
            for (Map.Entry<String, List<WellResult>> each : wells.entrySet()) {
                Means made = new Means(number++, each.getKey(), row++, each.getValue());
                means.put(each.getKey(), made);
                each.getValue().forEach(well -> meansOf.put(well.well(), made));
            }
            return row;
        }

        /** Blanks first, then sample blanks by slot. */
        private static List<WellResult> inOrder(StepAnalysis step) {
            return step.wells().stream()
                    .sorted(Comparator.comparingInt(
                            well -> well.content() instanceof Content.SampleBlank blank ? blank.of() : 0))
                    .toList();
        }

        private static Optional<String> key(WellResult well) {
            if (well.content() instanceof Content.Blank blank) {
                return Optional.of(key(blank.triggered(), well.trace().group()));
            }
            return well.content() instanceof Content.SampleBlank blank
                    ? Optional.of(key(blank.of()))
                    : Optional.empty();
        }

        private static String key(boolean triggered, String group) {
            String of = group.isEmpty() ? "" : ", group " + group;
            return (triggered ? "Blanks" : "Blanks without trigger enzyme") + of;
        }

        private static String key(int slot) {
            return "Sample blanks of slot " + slot;
        }

        private static Set<Fact> wanted(Analysis analysis, StepAnalysis step) {
            Set<Fact> wanted = EnumSet.noneOf(Fact.class);
            boolean corrected = analysis.assay().method().triggerDilution() == TriggerDilution.CORRECT;
            if (step.step().volumes().isPresent()) {
                wanted.addAll(EnumSet.of(Fact.VOLUME_AFTER, Fact.VOLUME_SAMPLE));
                if (corrected) {
                    wanted.addAll(EnumSet.of(Fact.VOLUME_BEFORE, Fact.TRIGGER_FACTOR));
                }
            }
            if (step.step().analyte().molarMass().isPresent()) {
                wanted.add(Fact.MOLAR_MASS);
            }
            if (analysis.assay().path().isPresent()) {
                wanted.addAll(EnumSet.of(Fact.WELL_AREA, Fact.PATH, Fact.ONE_CM_PEAK, Fact.ONE_CM_BESIDE));
            }
            if (step.calibration().isEmpty()) {
                wanted.addAll(EnumSet.of(Fact.ABSORPTIVITY, Fact.PATH, Fact.SIGNALS, Fact.FACTOR));
                analysis.assay()
                        .method()
                        .lightPath()
                        .filter(path -> path instanceof LightPath.Vertical)
                        .ifPresent(path -> wanted.add(Fact.WELL_AREA));
                return wanted;
            }
            Model model = step.calibration().get().curve().model();
            wanted.addAll(EnumSet.of(Fact.POINTS, Fact.LOWEST, Fact.HIGHEST));
            wanted.addAll(EnumSet.of(Fact.RESIDUAL_SD, Fact.NET_LOWEST, Fact.NET_HIGHEST));
            if (step.calibration().get().weighting() instanceof FittedVariance) {
                wanted.addAll(EnumSet.of(Fact.VARIANCE_OF_BLANK, Fact.VARIANCE_GROWTH));
            }
            switch (model) {
                case LINE -> wanted.addAll(EnumSet.of(Fact.MEAN_LEVEL, Fact.MEAN_NET, Fact.SLOPE, Fact.INTERCEPT));
                case LINE_THROUGH_ZERO -> wanted.addAll(EnumSet.of(Fact.SLOPE, Fact.INTERCEPT));
                case QUADRATIC -> wanted.addAll(EnumSet.range(Fact.MEAN_LEVEL, Fact.SQUARE));
                case LOGISTIC_4 -> wanted.addAll(EnumSet.range(Fact.LOWER, Fact.UPPER));
                case LOGISTIC_5 -> wanted.addAll(EnumSet.range(Fact.LOWER, Fact.ASYMMETRY));
            }
            return wanted;
        }

        private static List<WellResult> standards(StepAnalysis step) {
            return step.where(well -> well.content() instanceof Content.Standard standard
                    && standard.level().of(step.step().analyte().name()).isPresent());
        }

        int top() {
            return top;
        }

        int meansHead() {
            return meansHead;
        }

        int factsHead() {
            return factsHead;
        }

        int pointsHead() {
            return pointsHead;
        }

        /** One past the last row. */
        int end() {
            return end;
        }

        /** All means, in order. */
        List<Means> means() {
            return List.copyOf(means.values());
        }

        /** The mean that a well is part of. */
        Optional<Means> meansOf(Well well) {
            return Optional.ofNullable(meansOf.get(well));
        }

        Optional<Means> blanks(String group) {
            return Optional.ofNullable(means.get(key(true, group)));
        }

        Optional<Means> withoutTrigger(String group) {
            return Optional.ofNullable(means.get(key(false, group)));
        }

        Optional<Means> sampleBlanks(int slot) {
            return Optional.ofNullable(means.get(key(slot)));
        }

        /** The facts that the step has, in order. */
        Set<Fact> facts() {
            return new TreeSet<>(facts.keySet());
        }

        int row(Fact fact) {
            Integer row = facts.get(fact);
            if (row == null) {
                throw new IllegalArgumentException("fact must be one of " + facts.keySet() + " but was " + fact);
            }
            return row;
        }

        boolean has(Fact fact) {
            return facts.containsKey(fact);
        }

        /** A fact as other sheets write it. */
        String cell(Fact fact, Scope scope) {
            return SHEET + "!" + own(fact, scope);
        }

        /** A fact on the sheet itself. */
        String own(Fact fact, Scope scope) {
            return At.fixed(row(fact), scope.fact);
        }

        /** The standard wells, excluded ones too. */
        List<WellResult> points() {
            return points;
        }

        int firstPoint() {
            return pointsHead + 1;
        }

        int lastPoint() {
            return pointsHead + points.size();
        }

        /** A column of the points. */
        String points(int column) {
            return At.fixed(firstPoint(), lastPoint(), column);
        }
    }
}

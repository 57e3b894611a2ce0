package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tallywell.method.SampleList;
import tallywell.notice.Notice;
import tallywell.plan.DilutionScheme;
import tallywell.plan.Plan;
import tallywell.plate.Layout;

/**
 * A plan as tables to look at.
 *
 * @param layout what stands where
 * @param wells how many wells are filled
 * @param planned the samples with the dilutions of the plan, for the run
 * @param notices what the user should be told
 * @param samples what is diluted how: samples, then controls
 * @param mixes what is made beforehand: mixes, then standards
 * @param steps what is done, in order
 */
public record PlanLook(
        Layout layout,
        int wells,
        SampleList planned,
        List<String> notices,
        List<Section> samples,
        List<Section> mixes,
        List<Section> steps) {
    private static final int DIGITS = 4;
    private static final double UL_PER_ML = 1000;

    /** Keeps copies that cannot change. */
    public PlanLook {
        notices = List.copyOf(notices);
        samples = List.copyOf(samples);
        mixes = List.copyOf(mixes);
        steps = List.copyOf(steps);
    }

    /**
     * Lines under a heading.
     *
     * @param title of the section
     * @param lines in order
     */
    public record Section(String title, List<Line> lines) {
        /** Keeps a copy that cannot change. */
        public Section {
            lines = List.copyOf(lines);
        }
    }

    /**
     * One line.
     *
     * @param name what it is about
     * @param text what is to be done
     * @param note what else is good to know, or empty
     */
    public record Line(String name, String text, String note) {}

    /** A plan with the user's decimal mark. */
    static PlanLook of(Plan plan, Shown shown) {
        Words words = new Words(shown);
        return new PlanLook(
                plan.layout(),
                plan.wells(),
                SampleList.of(
                        plan.samples().stream().map(Plan.PlannedSample::sample).toList()),
                plan.notices().stream().map(Notice::text).toList(),
                words.samples(plan),
                words.mixes(plan),
                List.of(words.steps(plan)));
    }

    /** Puts a plan into words. */
    private record Words(Shown shown) {
        List<Section> samples(Plan plan) {
            List<Section> sections = new ArrayList<>();
            sections.add(new Section(
                    "Samples: take + diluent",
                    plan.samples().stream().map(this::sample).toList()));
            if (!plan.controls().isEmpty()) {
                sections.add(new Section(
                        "Controls",
                        plan.controls().stream()
                                .map(each -> new Line(
                                        each.word() + "  " + each.name(), scheme(each.scheme()), wells(each.wells())))
                                .toList()));
            }
            return sections;
        }

        private Line sample(Plan.PlannedSample each) {
            OptionalDouble deltaA = each.expectedDeltaA();
            String expected = deltaA.isPresent() ? ", ΔA about " + shown.fixed(deltaA.getAsDouble(), 2) : "";
            String water = each.waterUl() > 0 ? ", and " + microlitres(each.waterUl()) + " of water into each" : "";
            String slot = Integer.toString(each.sample().slot());
            String label = each.sample().label();
            return new Line(
                    label.equals(slot) ? slot : slot + "  " + label,
                    scheme(each.scheme()) + water,
                    wells(each.wells()) + expected);
        }

        private static String wells(int wells) {
            return wells == 1 ? "1 well" : wells + " wells";
        }

        private String scheme(DilutionScheme scheme) {
            if (scheme.steps().isEmpty()) {
                return "as it is";
            }
            String transfers = scheme.steps().stream()
                    .map(each -> number(each.takeUl()) + " + " + number(each.addUl()) + " µL")
                    .collect(Collectors.joining(", then "));
            return "dilution " + number(scheme.factor()) + ": " + transfers;
        }

        List<Section> mixes(Plan plan) {
            List<Section> sections = new ArrayList<>();
            for (Plan.Part part : plan.parts()) {
                List<Line> lines = new ArrayList<>();
                part.components()
                        .forEach(each -> lines.add(new Line(each.name(), volume(each.totalUl()), each.holds())));
                lines.add(new Line(
                        "altogether",
                        volume(part.totalUl()),
                        wells(part.wells()) + ", " + microlitres(part.perWellUl()) + " each, with spare"));
                sections.add(new Section(part.name(), lines));
            }
            if (!plan.standards().isEmpty()) {
                sections.add(new Section("Standards", standards(plan)));
            }
            return sections;
        }

        private List<Line> standards(Plan plan) {
            List<Line> lines = new ArrayList<>();
            for (Plan.Stock stock : plan.stocks()) {
                lines.add(new Line(
                        "stock" + (stock.analyte().isEmpty() ? "" : " of " + stock.analyte()),
                        number(stock.gPerL()) + " g/L" + (stock.proposed() ? ", proposed" : ""),
                        stock.weigh().orElse("")));
            }
            for (Plan.PlannedStandard each : plan.standards()) {
                String takes = each.takes().stream().map(this::take).collect(Collectors.joining(" + "));
                lines.add(new Line(
                        each.word() + "  " + each.level(),
                        (takes.isEmpty() ? "" : takes + " + ") + microlitres(each.waterUl()) + " of water",
                        wells(each.wells())));
            }
            return lines;
        }

        private String take(Plan.Take take) {
            String of = take.predilution() > 1 ? " of the stock diluted " + number(take.predilution()) : "";
            return microlitres(take.takeUl()) + of;
        }

        Section steps(Plan plan) {
            List<Line> lines = new ArrayList<>();
            for (Plan.Action each : plan.steps()) {
                String when =
                        each.atMin().isPresent() ? "+ " + number(each.atMin().getAsDouble()) + " min" : "";
                lines.add(new Line(when, each.text(), ""));
            }
            return new Section("In this order", lines);
        }

        private String number(double value) {
            return shown.plain(Double.parseDouble(tallywell.quantity.Numbers.rounded(value, DIGITS)));
        }

        private String microlitres(double value) {
            return number(value) + " µL";
        }

        private String volume(double microlitres) {
            return microlitres >= UL_PER_ML ? number(microlitres / UL_PER_ML) + " mL" : microlitres(microlitres);
        }
    }
}

package tallywell.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tallywell.method.Bench;
import tallywell.method.Reagent;
import tallywell.method.Step;
import tallywell.method.Treatment;
import tallywell.method.Volumes;
import tallywell.notice.InputException;
import tallywell.quantity.Dilution;
import tallywell.quantity.Kind;
import tallywell.quantity.Numbers;
import tallywell.quantity.QuantityRange;

/** Reads what a method says for the bench: reagents in order, usual dilutions, volumes of well and pipette. */
final class BenchReader {
    private static final Pattern TRIGGER = Pattern.compile("trigger(?: (\\d{1,2}))?");

    /** Volumes typed in a file add up to far less than this, in µL. */
    private static final double ROUNDING = 1e-6;

    private BenchReader() {}

    static Bench bench(YamlMapping top, List<Step> steps) throws InputException {
        OptionalDouble well = OptionalDouble.empty();
        OptionalDouble smallest = OptionalDouble.empty();
        Optional<YamlNode> node = top.find("well");
        if (node.isPresent()) {
            YamlMapping keys = node.get()
                    .mapping("volumes, such as {most: 300 µL, pipette-least: 10 µL}")
                    .only("most", "pipette-least");
            well = volume(keys, "most");
            smallest = volume(keys, "pipette-least");
        }
        List<Reagent> reagents = reagents(top, steps);
        Bench bench = new Bench(
                reagents, usual(top), well, smallest, Substances.known().of(reagents, steps));
        if (!bench.reagents().isEmpty()) {
            addsUp(bench, top.need("reagents", ""), steps);
        }
        return bench;
    }

    private static OptionalDouble volume(YamlMapping keys, String key) throws InputException {
        return keys.has(key) ? OptionalDouble.of(keys.need(key, "").positive(Kind.VOLUME)) : OptionalDouble.empty();
    }

    private static List<Reagent> reagents(YamlMapping top, List<Step> steps) throws InputException {
        List<Reagent> reagents = new ArrayList<>();
        Optional<YamlNode> node = top.find("reagents");
        if (node.isPresent()) {
            for (YamlNode item : node.get().list("one reagent an item, in the order of addition")) {
                reagents.add(reagent(item, steps));
            }
        }
        return reagents;
    }

    private static Reagent reagent(YamlNode item, List<Step> steps) throws InputException {
        YamlMapping keys = item.mapping("a reagent, such as {name: buffer, volume: 130 µL, into: mix}")
                .only("name", "volume", "into", "holds");
        String name = keys.need("name", "'name: buffer'").freeText();
        if (!keys.has("volume")) {
            throw item.wrong("found the reagent '" + name
                    + "' without a volume; expected what goes into one well, such as 'volume: 20 µL'");
        }
        double volume = keys.need("volume", "").positive(Kind.VOLUME);
        String holds = keys.has("holds") ? keys.need("holds", "").freeText() : "";
        YamlNode into = keys.need("into", "'into: mix'");
        String word = into.text().strip();
        if (word.equals("treatment")) {
            return new Reagent(name, volume, Reagent.Into.TREATMENT, 0, holds);
        }
        if (word.equals("mix")) {
            return new Reagent(name, volume, Reagent.Into.MIX, 0, holds);
        }
        int triggers =
                steps.stream().mapToInt(step -> step.signalFormula().triggers()).sum();
        Matcher trigger = TRIGGER.matcher(word);
        if (trigger.matches()) {
            int number = trigger.group(1) == null ? 1 : Integer.parseInt(trigger.group(1));
            if (number >= 1 && number <= triggers) {
                return new Reagent(name, volume, Reagent.Into.TRIGGER, number, holds);
            }
        }
        throw into.wrong("found 'into: " + word + "'; expected treatment, mix, or trigger"
                + (triggers == 1 ? "" : " 1 to trigger " + triggers));
    }

    /** The reagents must come to the volumes of the steps, or one of the two is a typing error. */
    private static void addsUp(Bench bench, YamlNode node, List<Step> steps) throws InputException {
        int trigger = 0;
        double total = bench.volumeUl(Reagent.Into.TREATMENT, 0) + bench.volumeUl(Reagent.Into.MIX, 0);
        for (Step step : steps) {
            Volumes volumes = step.volumes()
                    .orElseThrow(
                            () -> node.wrong(
                                    "found reagents in a method whose step '"
                                            + step.analyte().name()
                                            + "' has no volumes; expected 'volumes: {sample: ..., before-trigger: ..., after-trigger: ...}'"));
            total += trigger == 0 ? volumes.sampleUl() : 0;
            for (int i = 1; i < step.signalFormula().triggers(); i++) {
                total += bench.volumeUl(Reagent.Into.TRIGGER, ++trigger);
            }
            same(node, step, "before-trigger", total, volumes.beforeTriggerUl());
            total += bench.volumeUl(Reagent.Into.TRIGGER, ++trigger);
            same(node, step, "after-trigger", total, volumes.afterTriggerUl());
        }
    }

    private static void same(YamlNode node, Step step, String key, double sum, double said) throws InputException {
        if (Math.abs(sum - said) > ROUNDING) {
            throw node.wrong("found reagents and sample that come to " + Numbers.rounded(sum, 6) + " µL where '" + key
                    + "' of the step '" + step.analyte().name() + "' says " + Numbers.plain(said)
                    + " µL; expected the same, so that no volume is missing");
        }
    }

    private static List<Bench.Usual> usual(YamlMapping top) throws InputException {
        List<Bench.Usual> usual = new ArrayList<>();
        Optional<YamlNode> node = top.find("dilutions");
        if (node.isPresent()) {
            for (YamlNode item : node.get().list("one kind of sample an item")) {
                YamlMapping keys = item.mapping(
                                "a usual dilution, such as {matrix: cider, content: 1-8 g/L, dilution: 20}")
                        .only("matrix", "content", "dilution", "treatment");
                usual.add(new Bench.Usual(
                        keys.need("matrix", "'matrix: cider'").freeText(),
                        content(keys.need("content", "'content: 1-8 g/L'")),
                        dilution(keys.need("dilution", "'dilution: 20'")),
                        keys.has("treatment") ? treatment(keys.need("treatment", ""), top) : Treatment.NONE));
            }
        }
        return usual;
    }

    private static QuantityRange content(YamlNode node) throws InputException {
        try {
            return QuantityRange.parse(node.text(), Kind.CONCENTRATION, Kind.AMOUNT_CONCENTRATION, Kind.CONTENT);
        } catch (IllegalArgumentException e) {
            throw node.wrong(e);
        }
    }

    private static Treatment treatment(YamlNode node, YamlMapping top) throws InputException {
        String word = node.text().strip();
        if (!top.has("difference")) {
            throw node.wrong("found 'treatment: " + word
                    + "' in a method that gives nothing by difference; expected 'difference:', or no treatment");
        }
        for (Treatment each : List.of(Treatment.FREE, Treatment.TOTAL)) {
            if (each.word().equals(word)) {
                return each;
            }
        }
        throw node.wrong("found 'treatment: " + word + "'; expected free or total");
    }

    private static Dilution dilution(YamlNode node) throws InputException {
        try {
            return Dilution.parse(node.text());
        } catch (IllegalArgumentException e) {
            throw node.wrong(e);
        }
    }
}

package tallywell.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tallywell.method.AssayMethod;
import tallywell.method.LightPath;
import tallywell.method.Step;
import tallywell.method.Volumes;
import tallywell.quantity.Numbers;

/** What goes into a well, how long the light's way is and when it is read, in one line. */
public final class MethodWords {
    private static final int DIGITS = 2;
    private static final double MINUTE_S = 60;

    private MethodWords() {}

    /**
     * Such as {@code 10 + 190 + 20 µL, d 0.66 cm, 15 min}: sample, what is there before the trigger besides, each trigger; the
     * light's way through all of it; the time after the last trigger. What the method does not say is left out.
     */
    public static String of(AssayMethod method, Shown shown) {
        List<String> parts = new ArrayList<>();
        List<Volumes> volumes = method.steps().stream()
                .map(Step::volumes)
                .flatMap(Optional::stream)
                .toList();
        if (!volumes.isEmpty()) {
            parts.add(liquids(volumes, shown));
        }
        Optional<LightPath> path = method.lightPath();
        if (path.isPresent() && (path.get() instanceof LightPath.Fixed || !volumes.isEmpty())) {
            double filled =
                    volumes.isEmpty() ? 0 : volumes.get(volumes.size() - 1).afterTriggerUl();
            parts.add("d " + shown.rounded(path.get().cm(filled), DIGITS) + " cm");
        }
        Step last = method.steps().get(method.steps().size() - 1);
        last.timing().afterS().ifPresent(after -> parts.add(time(after, shown)));
        return String.join(", ", parts);
    }

    private static String liquids(List<Volumes> volumes, Shown shown) {
        Volumes first = volumes.get(0);
        List<String> liquids = new ArrayList<>();
        liquids.add(volume(first.sampleUl(), shown));
        double filled = first.sampleUl();
        for (Volumes each : volumes) {
            for (double total : new double[] {each.beforeTriggerUl(), each.afterTriggerUl()}) {
                if (total > filled) {
                    liquids.add(volume(total - filled, shown));
                }
                filled = total;
            }
        }
        return String.join(" + ", liquids) + " µL";
    }

    /** A difference of totals, without the digits that subtraction leaves behind. */
    private static String volume(double volumeUl, Shown shown) {
        return shown.plain(Double.parseDouble(Numbers.rounded(volumeUl, 6)));
    }

    private static String time(double seconds, Shown shown) {
        return seconds >= MINUTE_S
                ? shown.plain(Double.parseDouble(Numbers.rounded(seconds / MINUTE_S, 3))) + " min"
                : shown.plain(seconds) + " s";
    }
}

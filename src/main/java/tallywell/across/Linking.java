package tallywell.across;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import tallywell.notice.InputException;
import tallywell.notice.Notice;
import tallywell.notice.Place;
import tallywell.quantity.Unit;

/**
 * Finds what is one sample in several runs: by id where it has one, else by name. A sample without an id in one run is the
 * one with its name that has an id in another. Controls go by name.
 */
final class Linking {
    private final Map<String, Link> links = new LinkedHashMap<>();
    private final Map<String, Set<String>> keysByName = new HashMap<>();

    private Linking() {}

    /**
     * One sample or control and one analyte, over the runs.
     *
     * @param found in the order of the runs, at most one a run, all in one unit
     */
    record Link(List<Found> found) {
        /** The first, which gives the names and the unit. */
        Found first() {
            return found.get(0);
        }

        /** The id, where a run gives one. */
        String id() {
            return found.stream()
                    .map(Found::id)
                    .filter(each -> !each.isEmpty())
                    .findFirst()
                    .orElse("");
        }
    }

    /**
     * Links runs.
     *
     * @return in the order of the first run, then what only later ones have
     * @throws InputException if runs have no sample or no analyte in common, a sample stands twice in a run, or a sample
     *     has units of different kinds
     */
    static List<Link> of(List<RunResults> runs) throws InputException {
        Linking linking = new Linking();
        for (RunResults run : runs) {
            run.found().forEach(linking::note);
        }
        for (RunResults run : runs) {
            for (Found each : run.found()) {
                linking.add(each);
            }
        }
        List<Link> all = new ArrayList<>();
        for (Link link : linking.links.values()) {
            all.add(inOneUnit(link));
        }
        linking.checkTwice();
        linking.checkCommon(runs, all);
        return all;
    }

    /** A sample after and before a treatment are two. */
    private static String kind(Found found) {
        String name = found.result().name();
        String treatment = name.endsWith(" (free)") ? "free" : name.endsWith(" (total)") ? "total" : "";
        return found.result().role() + "\n" + found.result().analyte() + "\n" + treatment + "\n";
    }

    private static String named(Found found) {
        return kind(found) + "name " + found.result().name();
    }

    private void note(Found found) {
        if (!found.id().isEmpty()) {
            keysByName.computeIfAbsent(named(found), key -> new TreeSet<>()).add(kind(found) + "id " + found.id());
        }
    }

    private void add(Found found) throws InputException {
        String key = kind(found) + "id " + found.id();
        if (found.id().isEmpty()) {
            Set<String> known = keysByName.getOrDefault(named(found), Set.of());
            if (known.size() > 1) {
                throw new InputException(
                        new Place.InFile(found.run(), found.place()),
                        "found the sample '" + found.result().name()
                                + "' without an id, and the same name with several ids in the runs; give it its id in the"
                                + " sample list");
            }
            key = known.isEmpty() ? named(found) : known.iterator().next();
        }
        links.computeIfAbsent(key, each -> new Link(new ArrayList<>())).found().add(found);
    }

    private static Link inOneUnit(Link link) throws InputException {
        Unit unit = link.first().unit();
        List<Found> same = new ArrayList<>();
        for (Found each : link.found()) {
            if (each.unit().kind() != unit.kind()) {
                throw new InputException(
                        new Place.InFile(each.run(), each.place()),
                        "found '" + each.result().name() + "' in " + each.unit().symbol() + ", and in "
                                + unit.symbol() + " in " + link.first().run()
                                + "; expected units of one kind, so that the values can be compared");
            }
            same.add(each.in(unit));
        }
        return new Link(same);
    }

    private void checkTwice() throws InputException {
        List<Notice> twice = new ArrayList<>();
        for (Link link : links.values()) {
            Map<String, Found> byRun = new LinkedHashMap<>();
            for (Found each : link.found()) {
                Found other = byRun.putIfAbsent(each.run(), each);
                boolean elsewhere =
                        link.found().stream().anyMatch(one -> !one.run().equals(each.run()));
                if (other != null && elsewhere) {
                    twice.add(Notice.error(
                            new Place.InFile(each.run(), ""),
                            "found the sample '" + each.result().name() + "'"
                                    + (each.id().isEmpty() ? "" : " (id " + each.id() + ")") + " twice, in "
                                    + other.place() + " and " + each.place()
                                    + "; expected it once, or ids that tell the two apart"));
                }
            }
        }
        if (!twice.isEmpty()) {
            throw new InputException(twice);
        }
    }

    private void checkCommon(List<RunResults> runs, List<Link> all) throws InputException {
        boolean common = all.stream()
                .filter(link -> !link.first().result().role().equals("control"))
                .anyMatch(link -> link.found().size() > 1);
        if (common) {
            return;
        }
        Set<String> analytes = new LinkedHashSet<>();
        for (RunResults run : runs) {
            analytes.add(String.join(", ", analytes(run)));
        }
        RunResults last = runs.get(runs.size() - 1);
        Map<String, Integer> counts = new HashMap<>();
        runs.forEach(run -> analytes(run).forEach(each -> counts.merge(each, 1, Integer::sum)));
        boolean noAnalyte = counts.values().stream().allMatch(count -> count == 1);
        throw new InputException(
                new Place.InFile(last.run(), ""),
                noAnalyte
                        ? "found no analyte in common: " + String.join(" in one run, ", analytes)
                                + " in another; expected runs of the same analyte"
                        : "found no sample in common with " + runs.get(0).run()
                                + "; expected the same ids, or the same names, in the sample lists");
    }

    private static Set<String> analytes(RunResults run) {
        Set<String> analytes = new TreeSet<>();
        run.found().forEach(each -> analytes.add(each.result().analyte()));
        return analytes;
    }
}

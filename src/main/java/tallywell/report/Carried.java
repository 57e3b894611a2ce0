package tallywell.report;

import java.util.List;
import java.util.Optional;

/**
 * What a report carries of one run, so that it can be worked up again: how it was asked for, and every file that was read.
 *
 * @param settings in words of a closed list, in order; a key may come several times
 * @param files run first, then in the order they were read
 */
public record Carried(List<Setting> settings, List<CarriedFile> files) {
    /** Keeps copies that cannot change. */
    public Carried {
        settings = List.copyOf(settings);
        files = List.copyOf(files);
    }

    /**
     * One part of how a run was asked for.
     *
     * @param key a word of the list in {@code docs/formats.md}
     * @param value as text
     */
    public record Setting(String key, String value) {}

    /** The first setting with a key. */
    public Optional<String> setting(String key) {
        return all(key).stream().findFirst();
    }

    /** All settings with a key, in order. */
    public List<String> all(String key) {
        return settings.stream()
                .filter(each -> each.key().equals(key))
                .map(Setting::value)
                .toList();
    }

    /** The names of the files that are too large to be carried. */
    public List<String> leftOut() {
        return files.stream()
                .filter(each -> Packing.isTooLarge(each.shared()))
                .map(CarriedFile::name)
                .toList();
    }
}

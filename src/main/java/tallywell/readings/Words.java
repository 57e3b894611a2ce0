package tallywell.readings;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import tallywell.plate.Mark;

/**
 * Words of the trade in several languages, and what they mean. To teach the importer a word, add it to the table: plain
 * words must match a whole word, those with a tilde any part of one, and those with blanks a run of words.
 */
final class Words {
    private static final String TABLE = """
            TIME             | time times elapsed t kinetic | zeit zeiten zeitpunkt messzeit laufzeit | temps | tiempo | tempo
            TIME             | tijd | czas | tid | aika | seconds minutes hours | sekunden minuten stunden
            OTHER_TIME       | date clock start started begin end interval delay shaking shake duration lag settle settling
            OTHER_TIME       | integration flash pause export exported printed created incubation saved modified "time of day"
            OTHER_TIME       | datum uhrzeit beginn ende intervall dauer schütteln schüttelzeit verzögerung ~schüttel ~inkub
            OTHER_TIME       | heure début fin intervalle durée hora fecha inicio data ora ~datetime ~timestamp ~interval
            TEMPERATURE      | temperature temp t° celsius ~temperat ~températ °c tº
            CYCLE            | cycle cycles cyc read reads reading measurement scan repeat index pass no nr
            CYCLE            | ~zykl messung lesung durchgang | ~cycle lecture mesure | ciclo lectura lettura misura | meting cyklus cykl
            WELL             | well wells position pos cuvette location loc | kavität kavitäten vertiefung küvette napf
            WELL             | puits cuve | pocillo pozo cubeta | pozzetto | putje | studzienka
            ROW              | row rows | zeile reihe | ligne rangée | fila | riga | rij | wiersz | linha
            COLUMN           | column col columns | spalte | colonne | columna | colonna | kolom | kolumna | coluna
            PLATE            | plate plates microplate barcode | platte mikroplatte mikrotiterplatte strichcode barcode | plaque microplaque
            PLATE            | placa microplaca | piastra | plaat | płytka
            PLATE_KIND       | type format layout size definition kind temperature height reader lid template map
            PLATE_KIND       | typ größe vorlage belegung deckel leser | modèle taille | tipo formato
            WAVELENGTH       | wavelength wavelengths lambda λ wl nm filter | wellenlänge wellenlängen | ~longueur ~longitud ~lunghezza golflengte
            OTHER_WAVELENGTH | bandwidth slit step reference ref excitation emission width fwhm | bandbreite spaltbreite referenz
            OTHER_WAVELENGTH | schrittweite referenzwellenlänge anregung bande référence referencia riferimento
            VALUE            | absorbance absorbances abs od value values signal | absorbanz extinktion extinktionen ext messwert messwerte wert werte
            VALUE            | ~absorban absorption extinction valeur valor valore mesure densité "optical density" "optische dichte"
            VALUE            | au mau mod reading readings measurement
            MILLI            | mau mod mabs mextinktion millioptical milliabsorbance "milli absorbance"
            RAW              | raw uncorrected unprocessed measured | roh rohdaten rohwert rohwerte unkorrigiert
            RAW              | brut brute bruts brutes | crudo bruto cruda | grezzo grezzi | ruw ruwe | surowe
            PROCESSED        | ~correct ~subtract ~normali ~blanked ~processed ~differen ratio ratios ~transform ~smooth net delta ~δ ~∆ minus
            PROCESSED        | corr corr. korr ~adjust bkgd ~compensat
            PROCESSED        | ~korrig ~korrekt ~abzug ~abgezogen ~subtrah ~verrechnet ~geglättet ~quotient netto nettowert
            PROCESSED        | ~corrig ~soustr ~correg ~restad ~sottra ~rapport ~calcul ~berechnet "per cm" "pro cm" "par cm" "por cm"
            PATH             | ~pathlength ~schichtdick "path length" "light path" "optical path" "1 cm" path pathlengths ~weglänge
            PATH             | "trajet optique" "paso óptico" "cammino ottico" ~path
            STATISTIC        | mean average avg sd std stdev stddev cv var variance min max minimum maximum median sum range count n
            STATISTIC        | slope intercept rate vmax r² r2 lag ~mittel stabw stdabw summe steigung achsenabschnitt varianz anzahl
            STATISTIC        | moyenne moy écart médiane pente somme media mediana promedio desviación suma pendiente
            STATISTIC        | deviazione somma pendenza gemiddelde ~standardabw ~deviation rsd sem error fehler "s.d."
            OTHER            | conc ~concentr ~konzentr ~fluores ~lumines ~polari volume vol volumen dilution ~verdünn ~diluci factor faktor
            OTHER            | mass masse weight gewicht ph humidity gain activity aktivität transmission transmittance transmittanz
            OTHER            | log ln log10 percent prozent
            OTHER            | rfu rlu units recovery wiederfindung level expected assigned limit density dichte pressure
            SAMPLE           | sample samples name names id content contents group type description assay | probe proben inhalt bezeichnung
            SAMPLE           | gruppe typ | échantillon nom groupe contenu | muestra nombre grupo | campione nome gruppo | monster naam | próbka
            SAMPLE           | layout belegung replicate replicates replikat slot operator user comment note bemerkung kommentar
            SOURCE           | source origin stock mother donor from quelle quellplatte herkunft spender origine origen fonte
            MARK             | mark marks flag flags status warning warnings remark qc | flagge warnung hinweis
            NOT              | no none off not without false never | nein keine kein aus ohne nicht | non aucune sans | sin | senza | nie
            """;

    private static final String OVER = """
            over overflow ovrflw ovflw ovrflow ovr ofl oflow oor over-range overrange out sat sat. satd saturated saturation high too-high
            out-of-range out-of-limits above-range >max >range max+ inf +inf infinity ∞ überlauf ueberlauf übersteuert gesättigt
            messbereich-überschritten bereich-überschritten zu-hoch überschritten über über-messbereich außerhalb dépassement saturé hors-gamme
            hors-limites trop-élevé fuera-de-rango saturado demasiado-alto fuori-scala fuori-intervallo saturo te-hoog buiten-bereik
            verzadigd poza-zakresem 1.#inf over! #over limit over-limit overload overflow! sättigung beyond-range
            """;

    private static final String MISSING = """
            - -- --- – — . .. ... / n/a na n.a. n.a nan null none nil empty missing blank-well not-read no-read noread unread skipped
            not-measured no-value no-data leer fehlt fehlend nicht-gemessen k.a. kein-wert ohne n.g. vide manquant non-mesuré vacío
            vacio sin-lectura no-medido falta vuoto non-letto mancante leeg niet-gemeten ontbreekt brak puste #n/a #nv #na n.v. nd n.d.
            n.b. -nan 1.#qnan 1.#ind -1.#ind masked excluded ausgeblendet
            """;

    private static final Map<String, Set<Meaning>> WHOLE = new HashMap<>();
    private static final Map<Meaning, List<String>> PARTS = new EnumMap<>(Meaning.class);
    private static final Map<Meaning, List<String>> PHRASES = new EnumMap<>(Meaning.class);
    private static final Map<String, Mark> MARKS = new HashMap<>();

    static {
        TABLE.lines().forEach(Words::learn);
        learn(OVER, Mark.OVER);
        learn(MISSING, Mark.MISSING);
    }

    private Words() {}

    private static void learn(String line) {
        String[] parts = line.split("\\|", 2);
        Meaning meaning = Meaning.valueOf(parts[0].strip());
        var words = java.util.regex.Pattern.compile("\"([^\"]+)\"|[^\\s|]+").matcher(parts[1]);
        while (words.find()) {
            String word = words.group();
            if (words.group(1) != null) {
                PHRASES.computeIfAbsent(meaning, key -> new ArrayList<>()).add(words.group(1));
            } else if (word.startsWith("~")) {
                PARTS.computeIfAbsent(meaning, key -> new ArrayList<>()).add(word.substring(1));
            } else {
                WHOLE.computeIfAbsent(word, key -> EnumSet.noneOf(Meaning.class))
                        .add(meaning);
            }
        }
    }

    private static void learn(String words, Mark mark) {
        for (String word : words.strip().split("\\s+")) {
            MARKS.put(word, mark);
            MARKS.put(word.replace('-', ' '), mark);
        }
    }

    /** What a cell says instead of a number; {@link Mark#NONE} if it is no such word. */
    static Mark mark(String cell) {
        String text = cell.strip();
        if (text.length() > 32) {
            return Mark.NONE;
        }
        if (text.matches("[<≤] ?\\d*[.,]?\\d+")) {
            // Below what the reader can tell; a word of its own would be better than a number that it did not give.
            return Mark.MISSING;
        }
        if (text.matches("[*#+]+|(>=?|≥|≧) ?[+]?\\d*[.,]?\\d+( ?[A-Za-z]{1,3})?")) {
            return Mark.OVER;
        }
        return MARKS.getOrDefault(text.toLowerCase(Locale.ROOT), Mark.NONE);
    }

    /** The meanings of all words of a text. */
    static Set<Meaning> in(String text) {
        Set<Meaning> found = EnumSet.noneOf(Meaning.class);
        String lower = text.toLowerCase(Locale.ROOT).replace('_', ' ');
        for (String word : split(lower)) {
            found.addAll(of(word));
        }
        String spaced = " " + String.join(" ", split(lower)) + " ";
        PHRASES.forEach((meaning, phrases) -> {
            for (String phrase : phrases) {
                if (spaced.contains(" " + phrase + " ")) {
                    found.add(meaning);
                }
            }
        });
        return found;
    }

    /** The meanings of one word in lower case. */
    static Set<Meaning> of(String word) {
        Set<Meaning> found = EnumSet.noneOf(Meaning.class);
        found.addAll(WHOLE.getOrDefault(word, Set.of()));
        PARTS.forEach((meaning, parts) -> {
            for (String part : parts) {
                if (word.contains(part)) {
                    found.add(meaning);
                }
            }
        });
        // Uncorrected is raw, although it holds corrected.
        if (found.contains(Meaning.RAW)) {
            found.remove(Meaning.PROCESSED);
        }
        return found;
    }

    /** Words of letters, and numbers; signs between them are dropped. */
    static List<String> split(String lower) {
        List<String> words = new ArrayList<>();
        int at = 0;
        while (at < lower.length()) {
            char c = lower.charAt(at);
            int from = at;
            if (isLetter(c)) {
                while (at < lower.length() && (isLetter(lower.charAt(at)) || lower.charAt(at) == '²')) {
                    at++;
                }
                words.add(lower.substring(from, at));
            } else if (Character.isDigit(c)) {
                while (at < lower.length() && (Character.isDigit(lower.charAt(at)) || isJoint(lower, at))) {
                    at++;
                }
                words.add(lower.substring(from, at));
            } else {
                at++;
            }
        }
        return words;
    }

    private static boolean isLetter(char c) {
        return Character.isLetter(c) || c == '°' || c == '∆';
    }

    private static boolean isJoint(String text, int at) {
        char c = text.charAt(at);
        return (c == '.' || c == ',' || c == ':') && at + 1 < text.length() && Character.isDigit(text.charAt(at + 1));
    }
}

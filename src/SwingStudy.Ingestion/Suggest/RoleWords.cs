namespace SwingStudy.Ingestion.Suggest;

/// <summary>Plain words of several languages for what stands around measured values.</summary>
internal static class RoleWords
{
    private static readonly Dictionary<ColumnRole, string[][]> Headings = new()
    {
        [ColumnRole.Participant] = Words(
            "player, player name, golfer, hitter, athlete, subject, subject id, participant, wearer, name, client, student, pupil, person, user, Spieler, Spielerin, Sportler, "
            + "Athlet, Proband, Schüler, Kunde, Teilnehmer, Name, joueur, joueuse, sujet, élève, nom, participant, jugador, alumno, nombre, participante, jogador, aluno, nome, giocatore"),
        [ColumnRole.Date] = Words("date, day, session date, Datum, Tag, date de séance, jour, fecha, día, data, dia, giorno"),
        [ColumnRole.TimeOfDay] = Words("time, clock, time of day, local time, start time, started, Uhrzeit, Zeit, Startzeit, Beginn, heure, début, hora, hora local, inicio, ora"),
        [ColumnRole.Moment] = Words(
            "when, timestamp, date time, datetime, recorded at, recorded, struck at, created at, moment, date and time, epoch, unix time, ms, Zeitstempel, Zeitpunkt, Datum Uhrzeit, "
            + "horodatage, date heure, fecha hora, marca de tiempo, data hora, carimbo"),
        [ColumnRole.Sequence] = Words(
            "no, no., nr, num, number, #, n, shot, shot no, shot number, swing, swing no, swing number, trial, stroke, rep, repetition, index, seq, sequence, count, attempt, "
            + "Schlag, Schlag Nr, Versuch, lfd Nr, Nummer, coup, essai, numéro, n°, golpe, tiro, intento, número, tacada, tentativa"),
        [ColumnRole.Phase] = Words("phase, study phase, block, stage, period, part, Abschnitt, Studienphase, étape, fase, período, etapa"),
        [ColumnRole.ReadingName] = Words("metric, measure, measurement, variable, parameter, reading, quantity, name, item, Messgröße, Größe, Kennwert, Parameter, mesure, grandeur, paramètre, medida, magnitud, variável, parâmetro"),
        [ColumnRole.ReadingValue] = Words("value, reading, result, val, amount, Wert, Messwert, Ergebnis, valeur, résultat, valor, resultado"),
        [ColumnRole.ReadingUnit] = Words("unit, units, uom, Einheit, unité, unidad, unidade"),
    };

    /// <summary>First cells of rows that sum up others.</summary>
    private static readonly HashSet<string> Footers = Set(
        "average, averages, avg, mean, means, median, std, std dev, stdev, sd, standard deviation, total, totals, sum, min, max, minimum, maximum, count, summary, "
        + "Durchschnitt, Mittelwert, Mittel, Schnitt, Standardabweichung, Summe, Anzahl, moyenne, écart type, somme, médiane, media, promedio, desviación, suma, média, desvio, desvio padrão, soma");

    /// <summary>Cells that mark a practice swing.</summary>
    private static readonly HashSet<string> Practices = Set(
        "practice, practice swing, practise, no ball, air swing, rehearsal, warm-up, warmup, Probe, Probeschwung, ohne Ball, Luftschwung, essai à vide, sans balle, coup d'essai, "
        + "swing de práctica, sin bola, ensayo, treino, sem bola");

    /// <summary>Cells that hold nothing.</summary>
    private static readonly HashSet<string> Tokens = new(
        ["-", "--", "---", "----", "–", "—", "na", "n/a", "#n/a", "nan", "null", "none", "nil", "missing", "n.a.", "k.a.", "k. a.", "nd", "n.d.", "s/d", "?", "*", "x", "."],
        StringComparer.OrdinalIgnoreCase);

    /// <summary>How much a heading sounds like a role, 0 to 1.</summary>
    public static double Likeness(string[] heading, ColumnRole role) => Headings[role].Max(words => HeadingWords.Likeness(heading, words));

    /// <summary>Whether a cell begins a row that sums up others.</summary>
    public static bool IsFooter(string cell) => Footers.Contains(Key(cell));

    /// <summary>Whether a cell marks a practice swing.</summary>
    public static bool IsPractice(string cell) => Practices.Contains(Key(cell));

    /// <summary>Whether a cell is a usual token for nothing.</summary>
    public static bool IsMissing(string cell) => Tokens.Contains(cell.Trim());

    private static string Key(string text) => string.Join(' ', HeadingWords.Of(text));

    private static string[][] Words(string list) => [.. list.Split(", ").Select(HeadingWords.Of).Where(words => words.Length > 0)];

    private static HashSet<string> Set(string list) => [.. list.Split(", ").Select(Key)];
}

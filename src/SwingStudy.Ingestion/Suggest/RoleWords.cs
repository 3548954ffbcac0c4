namespace SwingStudy.Ingestion.Suggest;

/// <summary>Plain words of several languages for what stands around measured values.</summary>
internal static class RoleWords
{
    /// <summary>Words that name a person only where nothing stands above them: a club has a name as well.</summary>
    private static readonly HashSet<string> Vague = ["name", "nom", "nombre", "nome", "namn", "id", "no", "n"];

    /// <summary>Takes away from a likeness that leaves the group above a heading out.</summary>
    private const double UnderGroup = 0.97;

    private static readonly Dictionary<ColumnRole, string[][]> Headings = new()
    {
        [ColumnRole.Participant] = Words(
            "player, player name, golfer, hitter, athlete, subject, subject id, participant, wearer, name, client, student, pupil, person, user, Spieler, Spielerin, Sportler, "
            + "Athlet, Proband, Schüler, Kunde, Teilnehmer, Name, joueur, joueuse, nom du joueur, golfeur, sujet, élève, nom, participant, jugador, jugadora, nombre del jugador, alumno, nombre, participante, jogador, aluno, nome, giocatore, spelare, deltagare, elev, namn, full name, player id, player code, subject code, pupil name, student name, client name, hitter name"),
        [ColumnRole.Date] = Words("date, day, session date, shot date, date of session, Datum, Tag, date de séance, jour, fecha, día, data, dia, giorno, dag"),
        [ColumnRole.TimeOfDay] = Words("time, shot time, clock, clock time, time of day, local time, start time, started, Uhrzeit, Zeit, Startzeit, Beginn, heure, début, hora, hora local, inicio, ora, tid, klockslag, klockan, Zeit des Schlags, heure locale"),
        [ColumnRole.Moment] = Words(
            "when, timestamp, date time, datetime, recorded at, recorded, struck at, created at, moment, date and time, epoch, unix time, ms, Zeitstempel, Zeitpunkt, Datum Uhrzeit, "
            + "horodatage, date heure, fecha hora, marca de tiempo, data hora, carimbo, fecha y hora, date et heure, datum och tid, datum tid, tidsstämpel, shot time, date & time, utc, utc time, time stamp"),
        [ColumnRole.Sequence] = Words(
            "no, no., nr, num, number, #, n, shot, shot no, shot number, swing, swing no, swing number, trial, stroke, rep, repetition, index, seq, sequence, count, attempt, "
            + "Schlag, Schlag Nr, Versuch, lfd Nr, Nummer, coup, essai, numéro, n°, golpe, tiro, intento, número, tacada, tentativa, slag, slag nr, slagnummer, shot id, swing id, n° de golpe, número de golpe, coup n°, numéro de coup, golpe n°, Schlagnummer"),
        [ColumnRole.Phase] = Words("phase, study phase, block, stage, period, part, Abschnitt, Studienphase, étape, fase, período, etapa, fas, skede"),
        [ColumnRole.ReadingName] = Words("metric, measure, measurement, variable, parameter, reading, quantity, name, item, Messgröße, Größe, Kennwert, Parameter, mesure, grandeur, paramètre, medida, magnitud, variável, parâmetro"),
        [ColumnRole.ReadingValue] = Words("value, reading, result, val, amount, Wert, Messwert, Ergebnis, valeur, résultat, valor, resultado"),
        [ColumnRole.ReadingUnit] = Words("unit, units, uom, Einheit, unité, unidad, unidade"),
    };

    /// <summary>First cells of rows that sum up others.</summary>
    private static readonly HashSet<string> Footers = Set(
        "average, averages, avg, mean, means, median, std, std dev, stdev, sd, standard deviation, total, totals, sum, min, max, minimum, maximum, count, summary, "
        + "Durchschnitt, Mittelwert, Mittel, Schnitt, Standardabweichung, Summe, Anzahl, moyenne, écart type, somme, médiane, media, promedio, desviación, suma, média, desvio, desvio padrão, soma, medel, medelvärde, standardavvikelse, summa, snitt, mittelwerte, ø, Ø, écart-type, moyennes, mín, máx");

    /// <summary>Cells that mark a practice swing.</summary>
    private static readonly HashSet<string> Practices = Set(
        "practice, practice swing, practise, no ball, air swing, rehearsal, warm-up, warmup, Probe, Probeschwung, ohne Ball, Luftschwung, essai à vide, sans balle, coup d'essai, "
        + "swing de práctica, sin bola, ensayo, treino, sem bola, provsving, övning, utan boll, coup à vide, swing à vide, Übungsschwung, swing de prueba");

    /// <summary>Cells that hold nothing.</summary>
    private static readonly HashSet<string> Tokens = new(
        ["-", "--", "---", "----", "–", "—", "na", "n/a", "#n/a", "nan", "null", "none", "nil", "missing", "n.a.", "k.a.", "k. a.", "nd", "n.d.", "s/d", "?", "*", "x", ".", "s. o.", "ingen", "n/d", "n. d.", "#div/0!", "#value!", "err", "error", "no read", "--.-", "-.-", "-.--"],
        StringComparer.OrdinalIgnoreCase);

    /// <summary>How much a heading sounds like a role, 0 to 1.</summary>
    public static double Likeness(ColumnProfile column, ColumnRole role) =>
        column.Words.AsSpan().SequenceEqual(column.OwnWords) || column.OwnWords is [var one] && Vague.Contains(one)
            ? Likeness(column.Words, role)
            : Math.Max(Likeness(column.Words, role), UnderGroup * Likeness(column.OwnWords, role));

    /// <summary>How much the words of a heading sound like a role, 0 to 1.</summary>
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

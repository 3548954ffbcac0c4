using NodaTime;

namespace SwingStudy.App.Demo;

/// <summary>The coach's workbook: title and group rows, dates as serials (and, twice, as typed text), names as the coach types them, a blank row after each day.</summary>
internal static class CoachLog
{
    /// <summary>The source, and its folder in the inbox.</summary>
    public const string Source = "coach-log";

    private const string Columns = "ABCDEFGHIJKLMNO";

    private static readonly string[] Headings =
        ["Date", "Time", "Player", "Phase", "Bay", "Club", "Ball", "Lie", "Cue said", "Shown", "Planned", "Warm-up", "Room (°C)", "Pain 0-10", "Remarks"];

    private static readonly LocalDate SerialZero = new(1899, 12, 30);

    /// <summary>The one file.</summary>
    public static DemoFile File(IReadOnlyList<DemoStay> stays)
    {
        var book = new SpreadsheetFile();
        book.AddSheet("Log");
        book.Merge("A1:O1");
        book.Merge("A2:D2");
        book.Merge("E2:H2");
        book.Merge("I2:L2");
        book.Merge("M2:O2");
        book.AddRow(1, Text('A', $"{DemoStudy.Academy}: sessions, spring (invented)"));
        book.AddRow(2, Text('A', "Who and when"), Text('E', "With what"), Text('I', "What was said and planned"), Text('M', "Notes"));
        book.AddRow(3, [.. Headings.Select((heading, i) => Text(Columns[i], heading))]);
        var row = 4;
        var index = 0;
        foreach (var day in stays.GroupBy(stay => stay.Start.Date))
        {
            foreach (var session in day.SelectMany(stay => stay.Sessions))
                book.AddRow(row++, [.. Cells(session, index++)]);
            row++;
        }

        book.AddRow(row, Text('A', "Reminder: ask about pain before AND after; no numbers shown in baseline"));
        book.AddSheet("Lists");
        book.AddRow(1, Text('A', "Balls"), Text('B', DemoStudy.UsualBall), Text('C', DemoStudy.OtherBall));
        return new($"{Source}/coach log spring.xlsx", book.ToBytes());
    }

    private static IEnumerable<SpreadsheetCell> Cells(DemoSession session, int index)
    {
        // Twice a tired coach types the moment as text; the workbook then holds no serial.
        var typed = index is 21 or 50;
        var (date, time) = (session.Start.Date, session.Start.TimeOfDay);
        yield return typed ? Text('A', $"{date.Day}.{date.Month}.{date.Year}") : new('A', null, Period.DaysBetween(SerialZero, date), CellLook.Date);
        yield return typed ? Text('B', $"{time.Hour}:{time.Minute:00}") : new('B', null, time.TickOfDay / (double)NodaConstants.TicksPerDay, CellLook.Time);
        yield return Text('C', Typed(session.Player.Aliases[0], index));
        yield return Text('D', session.Phase switch
        {
            DemoStudy.Baseline => index % 5 == 0 ? "base" : "Baseline",
            DemoStudy.Cue => index % 7 == 0 ? "with cue" : "Cue",
            _ => index % 2 == 0 ? "4 weeks later" : "Follow-up",
        });
        yield return Text('E', "north bay");
        yield return Text('F', "Driver A");
        yield return Text('G', session.Ball);
        yield return Text('H', "tee");
        if (session.Phase == DemoStudy.Cue)
            yield return Text('I', "push first");
        yield return Text('J', session.Phase == DemoStudy.Cue ? "coach's words" : "nothing");
        yield return Number('K', 10);
        yield return Number('L', 8 + (index % 3));
        yield return Number('M', session.Temperature);
        yield return Number('N', index % 19 == 7 ? 1 : 0);
        if (session.Adherence is { } rating && index % 4 == 0)
            yield return Text('O', $"followed the cue, own rating {rating}");
    }

    /// <summary>Names typed by hand: trailing blanks, capitals, two blanks; still the same name.</summary>
    private static string Typed(string name, int index) => (index % 11) switch
    {
        3 => name + " ",
        6 => name.ToUpperInvariant(),
        9 => " " + name.ToLowerInvariant(),
        _ => name,
    };

    private static SpreadsheetCell Text(char column, string text) => new(column, text, 0, CellLook.Plain);

    private static SpreadsheetCell Number(char column, double number) => new(column, null, number, CellLook.Plain);
}

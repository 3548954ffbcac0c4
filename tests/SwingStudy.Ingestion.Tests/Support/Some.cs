using System.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Ingestion.Tests.Support;

/// <summary>Small things to test with; a case changes only what matters to it.</summary>
internal static class Some
{
    public static VariableDictionary Dictionary { get; } = new("test", new Version(1, 0, 0),
    [
        Number("club_speed", "m/s", 0, 90, zeroIsMissing: true),
        Number("ball_speed", "m/s", 0, 120, zeroIsMissing: true),
        Number("carry", "m", 0, 400),
        Number("launch_angle", "deg", -90, 90),
        Number("attack_angle", "deg", -30, 30),
        Number("spin", "/min", 0, 20000),
        Number("air_temperature", "Cel", -40, 60),
        Number("smash", "1", 0.5, 2),
        Number("attention", "1", 0, 100),
        Number("body_mass", "kg", 20, 250) with { Level = VariableLevel.Session },
        Word("club", VariableType.Text),
        Word("lie", VariableType.Category) with { Words = ["mat", "turf"] },
        Word("remark", VariableType.Text),
        Word("bag_code", VariableType.Text),
        new Variable { Name = "balls", Title = "Balls", Description = "Balls hit.", Type = VariableType.Integer, Group = "test", Unit = "1", Minimum = 0, Maximum = 500 },
        new Variable { Name = "warm", Title = "Warm", Description = "Warmed up.", Type = VariableType.Boolean, Group = "test" },
        Word("site", VariableType.Text) with { Level = VariableLevel.Session },
        Word("cue", VariableType.Text),
        Word("note", VariableType.Text) with { Level = VariableLevel.Session },
        new Variable { Name = "planned_swings", Title = "Planned swings", Description = "Swings planned.", Type = VariableType.Integer, Group = "test", Unit = "1", Minimum = 0, Maximum = 500, Level = VariableLevel.Session },
    ], Sha256.Of("test dictionary"));

    /// <summary>Semicolons, decimal comma, German dates, mph.</summary>
    public static SourceMapping Mapping { get; } = new()
    {
        Source = "bay",
        Title = "Bay",
        Device = "bay-1",
        Rows = RowMeaning.Swings,
        Reader = ReaderKind.Delimited,
        Files = @".*\.csv",
        Text = new TextFormat { Encoding = "utf-8", Delimiter = ';', Decimal = ',' },
        Missing = ["---", "NA"],
        Participant = Column("Player"),
        Time = new TimeRule { Parts = [Column("When")], Format = "dd.MM.yyyy HH:mm:ss", Zone = "Europe/Vienna" },
        Sequence = Column("No"),
        Values = new Dictionary<string, FieldSource> { ["club_speed"] = Column("Club speed") with { Unit = "mph" } },
        File = "sources/bay.yaml",
        Hash = Sha256.Of("bay mapping"),
    };

    public static FieldSource Column(string heading) => new() { Column = heading };

    public static FieldSource Preamble(string pattern) => new() { Preamble = pattern };

    public static MemoryStream Stream(string text) => new(Encoding.UTF8.GetBytes(text));

    private static Variable Number(string name, string unit, double low, double high, bool zeroIsMissing = false) => new()
    {
        Name = name,
        Title = name,
        Description = $"{name} of a test.",
        Type = VariableType.Number,
        Group = "test",
        Unit = unit,
        Minimum = low,
        Maximum = high,
        ZeroIsMissing = zeroIsMissing,
    };

    private static Variable Word(string name, VariableType type) => new() { Name = name, Title = name, Description = $"{name} of a test.", Type = type, Group = "test" };
}

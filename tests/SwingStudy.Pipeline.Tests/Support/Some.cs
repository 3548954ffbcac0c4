using NodaTime;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Pipeline.Tests.Support;

/// <summary>Small invented declarations and rows.</summary>
internal static class Some
{
    public static readonly Instant Morning = Instant.FromUtc(2026, 9, 7, 9, 0);

    public static VariableDictionary Dictionary { get; } = new("test", new Version(1, 0, 0),
    [
        Speed("club_head_speed", 3, 75, 28, 54),
        Speed("ball_speed", 0, 105, 35, 80),
        new() { Name = "speed_ratio", Title = "Speed ratio", Description = "", Type = VariableType.Number, Group = "test", Unit = "1", Minimum = 0.4, Maximum = 1.6 },
        new() { Name = "carry_distance", Title = "Carry distance", Description = "", Type = VariableType.Number, Group = "test", Unit = "m" },
        new() { Name = "face_angle", Title = "Face angle", Description = "", Type = VariableType.Number, Group = "test", Unit = "deg", Scale = MeasurementScale.Interval },
        new() { Name = "attention_level", Title = "Attention", Description = "", Type = VariableType.Number, Group = "test", Unit = "1" },
        new() { Name = "club", Title = "Club", Description = "", Type = VariableType.Text, Group = "test" },
        new() { Name = "ball", Title = "Ball", Description = "", Type = VariableType.Text, Group = "test" },
        new() { Name = "surface", Title = "Surface", Description = "", Type = VariableType.Text, Group = "test" },
        new() { Name = "air_temperature", Title = "Air", Description = "", Type = VariableType.Number, Group = "test", Unit = "Cel", Level = VariableLevel.Session },
    ], Sha256.Of("dictionary"));

    public static Protocol Protocol { get; } = new()
    {
        Name = "test",
        Version = new Version(1, 0, 0),
        Title = "Test",
        Question = "Does it work?",
        Design = DesignKind.PrePost,
        Phases =
        [
            new("baseline", PhaseRole.Baseline, 2, 3, null, null, ""),
            new("cue", PhaseRole.Intervention, 2, 3, null, "press-earlier", ""),
            new("other-club", PhaseRole.Transfer, 1, 3, null, null, ""),
        ],
        Eligibility = null!,
        FixedConditions = ["club", "ball", "surface"],
        Outcomes =
        [
            new("club_head_speed", OutcomeRole.Primary, new WorthwhileChange(0.5, "stated", ""), ["with-cue"]),
            new("face_angle", OutcomeRole.Secondary, null, []),
        ],
        Contrasts = [new("with-cue", "baseline", "cue"), new("carried-over", "baseline", "other-club")],
        Screening = [Rule("ratio-limit", ScreeningAction.ExcludeValue)],
        File = "protocol.yaml",
        Hash = Sha256.Of("protocol"),
    };

    public static ScreeningRule Rule(string name, ScreeningAction action, params string[] variables) =>
        new(name, variables, action, new Dictionary<string, double>(), "because");

    public static StudySetup Setup(StudyFolder folder, Protocol? protocol = null) => new(
        folder,
        new StudyDeclaration { Name = "Test", Zone = "Europe/Lisbon", PreferredSources = ["strike"] },
        Dictionary,
        protocol ?? Protocol,
        [Mapping("strike"), Mapping("plates"), Mapping("band") with { Rows = RowMeaning.Moments, Window = new MomentWindow(-3, 0) }]);

    /// <summary>Rows of captures; every value not given is missing.</summary>
    public static RowSet Captures(IEnumerable<CaptureRow> captures)
    {
        var rows = new RowSetBuilder(StudyTables.Captures(Dictionary));
        foreach (var capture in captures)
        {
            rows.Add([
                ("capture_id", capture.Id), ("source", capture.Source), ("device", capture.Source), ("participant", capture.Participant),
                ("recorded_at", capture.Recorded ?? capture.Struck), ("struck_at", capture.HasNoImpact ? null : capture.Struck), ("purpose", capture.Purpose), ("is_practice", capture.IsPractice), ("original_sha256", capture.Original),
                ("original_row", capture.Row), ("revision_of", capture.RevisionOf), .. capture.Values.Select(value => (value.Key, value.Value))]);
        }

        return rows.Build();
    }

    public static SourceMapping Mapping(string source) => new()
    {
        Source = source,
        Title = source,
        Device = source,
        Rows = RowMeaning.Swings,
        Reader = ReaderKind.Delimited,
        Files = ".*",
        Time = null!,
        Values = new Dictionary<string, FieldSource> { ["club_head_speed"] = new() { Column = "Club" } },
        File = $"sources/{source}.yaml",
        Hash = Sha256.Of(source),
    };

    private static Variable Speed(string name, double minimum, double maximum, double low, double high) => new()
    {
        Name = name,
        Title = name == "club_head_speed" ? "Club head speed" : "Ball speed",
        Description = "",
        Type = VariableType.Number,
        Group = "test",
        Unit = "m/s",
        DisplayUnit = "[mi_i]/h",
        Minimum = minimum,
        Maximum = maximum,
        Typical = new TypicalRange(low, high, "test"),
        Better = Better.Higher,
    };
}

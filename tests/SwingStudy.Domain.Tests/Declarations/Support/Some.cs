using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Variables;

namespace SwingStudy.Domain.Tests.Declarations.Support;

/// <summary>Small dictionaries for tests.</summary>
public static class Some
{
    public static VariableDictionary Dictionary { get; } = new(
        "small",
        new Version(1, 0, 0),
        [
            Number("club_head_speed", "m/s"),
            Number("ball_speed", "m/s"),
            Number("launch_angle", "deg"),
            Number("vertical_peak_lead", "{BW}"),
            Number("pain_nrs", "1"),
            Number("attention_level", "1"),
            new() { Name = "club", Title = "Club", Description = "The club.", Type = VariableType.Text, Group = "g" },
            new() { Name = "surface", Title = "Surface", Description = "Under the feet.", Type = VariableType.Category, Words = ["mat", "turf"], Group = "g" },
            new()
            {
                Name = "handedness", Title = "Handedness", Description = "Side.", Type = VariableType.Category, Words = ["right", "left"], Group = "g",
                Level = VariableLevel.Participant,
            },
        ],
        Sha256.Of("small"));

    public static Variable Number(string name, string unit) => new()
    {
        Name = name,
        Title = name,
        Description = name,
        Type = VariableType.Number,
        Unit = unit,
        Group = "g",
    };
}

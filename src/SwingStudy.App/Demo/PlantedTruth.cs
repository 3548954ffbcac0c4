namespace SwingStudy.App.Demo;

/// <summary>What was put into the demo's exports, to be set beside what the study finds.</summary>
/// <param name="Note">That all of it is invented.</param>
/// <param name="Seed">Seed of the draw.</param>
/// <param name="Outcome">The primary outcome.</param>
/// <param name="Mechanisms">Variables of the movement by which it changes.</param>
/// <param name="Players">Players in the order of their codes.</param>
/// <param name="Counts">What the files hold.</param>
internal sealed record PlantedTruth(
    string Note,
    ulong Seed,
    string Outcome,
    IReadOnlyList<string> Mechanisms,
    IReadOnlyList<PlantedPlayer> Players,
    PlantedCounts Counts);

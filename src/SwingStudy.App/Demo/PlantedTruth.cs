namespace SwingStudy.App.Demo;

/// <summary>What was put into the demo's exports, to be set beside what the study finds.</summary>
/// <param name="Note">That all of it is invented.</param>
/// <param name="Seed">Seed of the draw.</param>
/// <param name="Outcome">The variable that the cue changes.</param>
/// <param name="Unit">Unit of all speeds.</param>
/// <param name="Players">Players in the order of their codes.</param>
/// <param name="Counts">What the files hold.</param>
internal sealed record PlantedTruth(
    string Note,
    ulong Seed,
    string Outcome,
    string Unit,
    IReadOnlyList<PlantedPlayer> Players,
    PlantedCounts Counts);

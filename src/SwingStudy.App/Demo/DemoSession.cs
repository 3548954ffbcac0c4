using NodaTime;

namespace SwingStudy.App.Demo;

/// <summary>One simulated session of one player.</summary>
/// <param name="Player">The player.</param>
/// <param name="Number">1 for the player's first session.</param>
/// <param name="Phase">The phase.</param>
/// <param name="Start">Start as the coach writes it, on the academy's clock.</param>
/// <param name="Ball">Ball as the academy names it.</param>
/// <param name="Temperature">Of the bay, °C.</param>
/// <param name="Attention">Level around which the headband's readings lie.</param>
/// <param name="Adherence">The player's rating that the cue was followed; null without cue.</param>
/// <param name="Swings">Swings in order.</param>
internal sealed record DemoSession(
    PlantedPlayer Player,
    int Number,
    string Phase,
    LocalDateTime Start,
    string Ball,
    double Temperature,
    double Attention,
    int? Adherence,
    IReadOnlyList<DemoSwing> Swings);

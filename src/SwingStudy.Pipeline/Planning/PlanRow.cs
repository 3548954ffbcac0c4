namespace SwingStudy.Pipeline.Planning;

/// <summary>What a study of one size can show.</summary>
/// <param name="Sessions">Sessions of each phase.</param>
/// <param name="Swings">Swings of each session.</param>
/// <param name="Detectable">Smallest detectable change of one player, canonical unit.</param>
/// <param name="Floor">The same with endless swings a session.</param>
/// <param name="PlayerPower">Share of simulated studies in which one player's session means tell the change (t test); null with one session a phase.</param>
/// <param name="DrawPower">Share in which the randomization test of the design tells it; null where nothing is drawn or so many sessions do not fit the draw.</param>
/// <param name="SmallestPossibleP">Smallest p of that test; null where there is none.</param>
public sealed record PlanRow(int Sessions, int Swings, double Detectable, double Floor, double? PlayerPower, double? DrawPower, double? SmallestPossibleP);

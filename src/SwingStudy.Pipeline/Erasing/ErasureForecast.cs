namespace SwingStudy.Pipeline.Erasing;

/// <summary>What an erasure would remove, as the study lies there now; recordings that are not yet joined to a player's swings are not counted.</summary>
/// <param name="Rows">Rows of the person by table, tables without any left out.</param>
/// <param name="OriginalsAlone">Originals that are the person's alone and go.</param>
/// <param name="OriginalsShared">Originals that hold rows of others as well and are cut.</param>
/// <param name="OriginalsNaming">Originals that were never taken in and name the person; they go.</param>
/// <param name="Releases">Releases that can no longer be reproduced: all there are, since the history of the tables begins anew.</param>
/// <param name="Files">Other files that go or are shortened, relative to the study, without the person's names.</param>
public sealed record ErasureForecast(
    IReadOnlyDictionary<string, long> Rows, int OriginalsAlone, int OriginalsShared, int OriginalsNaming, IReadOnlyList<string> Releases, IReadOnlyList<string> Files);

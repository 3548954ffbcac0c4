namespace SwingStudy.Reporting.Rows;

/// <summary>A row of <c>curve_means</c>. Lists are empty where the table has none.</summary>
/// <param name="Participant">Pseudonym.</param>
/// <param name="Channel">Channel.</param>
/// <param name="Phase">Phase.</param>
/// <param name="Axis">Word of the axis.</param>
/// <param name="First">Place of the first point on the axis.</param>
/// <param name="Step">Distance from point to point.</param>
/// <param name="Unit">UCUM code; null without unit.</param>
/// <param name="Over">What the bands are over.</param>
/// <param name="Swings">Swings.</param>
/// <param name="Sessions">Sessions.</param>
/// <param name="Lost">Counted swings whose curve could not be used.</param>
/// <param name="Level">Level of the bands, a share.</param>
/// <param name="Mean">Mean at each point.</param>
/// <param name="Low">Lower limit of the band: over all points together, where there is none point by point.</param>
/// <param name="High">Upper limit of the band.</param>
/// <param name="IsSimultaneous">Whether the band holds over all points together.</param>
/// <param name="Method">Method word; empty without curves.</param>
/// <param name="Undefined">What there is not, and why.</param>
public sealed record CurveMeanRow(
    string Participant,
    string Channel,
    string Phase,
    string? Axis,
    double First,
    double Step,
    string? Unit,
    string? Over,
    long Swings,
    long Sessions,
    long Lost,
    double Level,
    IReadOnlyList<double> Mean,
    IReadOnlyList<double> Low,
    IReadOnlyList<double> High,
    bool IsSimultaneous,
    string Method,
    string? Undefined)
{
    /// <summary>The axis that has 0 at the start of the swing, 100 at the top and 200 at impact.</summary>
    public const string SwingPhases = "swing-phases";

    /// <summary>Bands, or labels that change places, of sessions.</summary>
    public const string OverSessions = "sessions";

    /// <summary>Places of the points on the axis.</summary>
    public double[] Places => [.. Enumerable.Range(0, Mean.Count).Select(point => First + (point * Step))];
}

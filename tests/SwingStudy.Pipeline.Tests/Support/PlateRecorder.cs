namespace SwingStudy.Pipeline.Tests.Support;

/// <summary>How the plates of a test are recorded.</summary>
internal enum PlateLayout
{
    /// <summary>Both in one recording.</summary>
    Together,

    /// <summary>Each by a device with a clock, a start and a rate of its own.</summary>
    Apart,

    /// <summary>One plate under both feet.</summary>
    One,

    /// <summary>A plate under the lead foot and none under the other.</summary>
    LeadOnly,
}

/// <summary>A device that records plates.</summary>
/// <param name="Source">Its source.</param>
/// <param name="Plates">Plates it records.</param>
/// <param name="RateHz">Samples a second.</param>
/// <param name="ClockAheadS">How far its clock runs ahead.</param>
/// <param name="LaterS">How much later than others it begins to record.</param>
/// <param name="IsTriggerExact">Whether its trigger is always contact.</param>
internal sealed record PlateRecorder(string Source, IReadOnlyList<string> Plates, double RateHz, double ClockAheadS, double LaterS, bool IsTriggerExact)
{
    public static IReadOnlyList<PlateRecorder> Of(PlateLayout layout) => layout switch
    {
        PlateLayout.Apart => [new("plate-lead", ["lead"], 1000, 2, 0, true), new("plate-trail", ["trail"], 400, -7, 0.15, false)],
        PlateLayout.One => [new("plate-both", ["both"], 500, 0, 0, false)],
        PlateLayout.LeadOnly => [new("plate-lead", ["lead"], 1000, 2, 0, true)],
        _ => [new("plates", ["lead", "trail"], 500, 0, 0, false)],
    };
}

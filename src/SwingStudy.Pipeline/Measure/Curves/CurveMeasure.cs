using SwingStudy.Domain.Curves;
using SwingStudy.Motion.Events;
using SwingStudy.Pipeline.Measure.Swings;

namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>A variable computed from the curves of a swing.</summary>
/// <param name="Name">Name in the dictionary.</param>
/// <param name="Definition">What is computed, in words; it is stored with every value.</param>
/// <param name="Compute">The value in the dictionary's unit, once everything needed is there.</param>
internal sealed record CurveMeasure(string Name, string Definition, Func<SwingSignals, Measured> Compute)
{
    /// <summary>What it cannot do without.</summary>
    public MeasureNeeds Needs { get; init; }

    /// <summary>Landmarks it cannot do without.</summary>
    public IReadOnlyList<string> Landmarks { get; init; } = [];

    /// <summary>Whether it rests on forces; else on marks.</summary>
    public bool IsOfForces { get; init; }

    /// <summary>All measures.</summary>
    public static IReadOnlyList<CurveMeasure> All { get; } =
    [
        .. ClubMeasures.All, .. GripMeasures.All, .. ForearmShaftMeasures.All, .. PelvisMeasures.All, .. KneeMeasures.All, .. TurnMeasures.All, .. TurnSpeedMeasures.All,
        .. Forces(VerticalForceMeasures.All), .. Forces(HorizontalForceMeasures.All), .. Forces(ImpulseMeasures.All), .. Forces(PressureMeasures.All), .. Forces(MomentMeasures.All),
    ];

    /// <summary>The value, or the first thing that is missing.</summary>
    public Measured Of(SwingSignals swing)
    {
        if (IsOfForces && swing.Forces is null)
            return Measured.None(swing.ForcesFault ?? "no recording of plates with a known impact belongs to the swing");
        if (!IsOfForces && swing.Motion is null)
            return Measured.None("no recording of marks with a known impact belongs to the swing");
        return Missing(swing) is { } reason ? Measured.None(reason) : Compute(swing);
    }

    /// <summary>The plates it rests on.</summary>
    private IEnumerable<string> Plates => new[] { (MeasureNeeds.Lead, "lead"), (MeasureNeeds.Trail, "trail"), (MeasureNeeds.Total, Channels.BothFeet) }
        .Where(pair => Needs.HasFlag(pair.Item1)).Select(pair => pair.Item2);

    private string? Missing(SwingSignals swing)
    {
        if (Plates.Select(plate => swing.Forces!.LossOf(plate)).FirstOrDefault(loss => loss is not null) is { } loss)
            return loss;
        if (Needs.HasFlag(MeasureNeeds.Weight) && double.IsNaN(swing.Forces!.BodyWeightN))
            return swing.Session.WeightProblem ?? swing.Session.BodyWeightMethod;
        if (Needs.HasFlag(MeasureNeeds.Places) && Plates.Any(plate => plate == Channels.BothFeet ? swing.Forces!.Centres is null : swing.Forces!.CentreOf(plate) is null))
            return "the places of the plates are neither in the file nor declared in the mapping";
        if (Needs.HasFlag(MeasureNeeds.Side) && swing.Side is null)
            return "it is not known whether the player swings right- or left-handed";
        if (Landmarks.FirstOrDefault(landmark => swing.Motion?.Raw(landmark) is null) is { } unseen)
            return $"the mark '{unseen}' was not followed";
        if (Needs.HasFlag(MeasureNeeds.Pelvis) && swing.Motion?.PelvisAxes is null)
            return "the three marks of the pelvis were not followed";
        if (Needs.HasFlag(MeasureNeeds.Trunk) && swing.Motion?.TrunkAxes is null)
            return "the marks of shoulders and pelvis were not followed";
        return MissingEvent(swing);
    }

    private string? MissingEvent(SwingSignals swing)
    {
        (MeasureNeeds Need, string Event)[] events =
            [(MeasureNeeds.Address, EventNames.Address), (MeasureNeeds.Start, EventNames.Start), (MeasureNeeds.Top, EventNames.Top), (MeasureNeeds.GripPeak, EventNames.GripPeak)];
        foreach (var (_, name) in events.Where(pair => Needs.HasFlag(pair.Need) && double.IsNaN(swing[pair.Event])))
            return $"{name} was not found: {swing.Events.ReasonOf(name) ?? "only forces were recorded"}";
        return Needs.HasFlag(MeasureNeeds.Downswing) && double.IsNaN(swing.DownswingFromS)
            ? $"neither top nor unweighting was found: {swing.Events.ReasonOf(EventNames.Top) ?? "only forces were recorded"}"
            : null;
    }

    private static IEnumerable<CurveMeasure> Forces(IEnumerable<CurveMeasure> measures) => measures.Select(measure => measure with { IsOfForces = true });
}

namespace SwingStudy.Domain.Sources;

/// <summary>How the samples of a file become recordings of curves.</summary>
public sealed record RecordingRule
{
    /// <summary>How a file is divided into recordings.</summary>
    public RecordingForm Form { get; init; }

    /// <summary>Column that numbers the recordings of a file; only with <see cref="RecordingForm.Trials"/>.</summary>
    public FieldSource? Trial { get; init; }

    /// <summary>Column with the time of each sample, in a unit of time; null when the rate alone tells it.</summary>
    public FieldSource? Clock { get; init; }

    /// <summary>What <see cref="Clock"/> counts; without a unit of its own where that is no time.</summary>
    public ClockKind ClockKind { get; init; }

    /// <summary>Samples a second, in hertz unless a unit is given; null: from the clock, or from the file format.</summary>
    public FieldSource? Rate { get; init; }

    /// <summary>Moment of contact from the first sample, as the device itself says, in a unit of time; null when it does not.</summary>
    public FieldSource? Trigger { get; init; }

    /// <summary>Where a stream is cut; only with <see cref="RecordingForm.Stream"/>.</summary>
    public StreamCut? Cut { get; init; }

    /// <summary>Recordings that are no swings: the first rule that fits tells the purpose.</summary>
    public IReadOnlyList<PurposeRule> Purposes { get; init; } = [];

    /// <summary>
    /// Channels by the name of <see cref="Curves.Channels"/> with the axis letter of the device (<see cref="Axes"/> turns them), and where each stands:
    /// a column of text, or an analog channel of C3D. With <c>left</c> and <c>right</c> in place of lead and trail, handedness decides.
    /// </summary>
    public IReadOnlyDictionary<string, FieldSource> Channels { get; init; } = new Dictionary<string, FieldSource>();

    /// <summary>Landmarks by the name of <see cref="Curves.Channels"/>, or with left and right, and the label of each in the file.</summary>
    public IReadOnlyDictionary<string, string> Landmarks { get; init; } = new Dictionary<string, string>();

    /// <summary>Heading of a landmark's coordinate in text, with <c>{label}</c> and <c>{axis}</c>.</summary>
    public string LandmarkColumns { get; init; } = DefaultLandmarkColumns;

    /// <summary>Unit of landmarks where the file does not say it.</summary>
    public string? LandmarkUnit { get; init; }

    /// <summary>Events by the name they get, and the label of each in the file. <c>impact</c> is contact.</summary>
    public IReadOnlyDictionary<string, string> Events { get; init; } = new Dictionary<string, string>();

    /// <summary>From the device's axes to the laboratory's.</summary>
    public AxisMap Axes { get; init; } = AxisMap.Same;

    /// <summary>Whose load plates measure.</summary>
    public LoadDirection Loads { get; init; }

    /// <summary>Which hand the player's swing is named after, <c>right</c> or <c>left</c>; null: from what the study knows of the player.</summary>
    public FieldSource? Handedness { get; init; }

    /// <summary>Heading row with the landmark above its axes, joined by a blank.</summary>
    public const string DefaultLandmarkColumns = "{label} {axis}";

    /// <summary>Event at which club and ball meet.</summary>
    public const string Impact = "impact";

    /// <summary>Event that stands for <see cref="Trigger"/>.</summary>
    public const string TriggerEvent = "trigger";
}

using NodaTime;

namespace SwingStudy.Pipeline.Tests.Support;

/// <summary>One capture of a test.</summary>
internal sealed record CaptureRow(string Source, int Row, Instant Struck)
{
    public string? Participant { get; init; } = "P01";

    /// <summary>First sample; as <see cref="Struck"/> unless the test says otherwise.</summary>
    public Instant? Recorded { get; init; }

    /// <summary>The device does not tell impact.</summary>
    public bool HasNoImpact { get; init; }

    public string? Purpose { get; init; }

    public string Original { get; init; } = "file";

    public bool? IsPractice { get; init; }

    public string? RevisionOf { get; init; }

    public Dictionary<string, object?> Values { get; init; } = [];

    public string Id => $"{Original}-{Row}";

    /// <summary>Captures of one source, struck at the given seconds after <see cref="Some.Morning"/>.</summary>
    public static IEnumerable<CaptureRow> At(string source, params double[] seconds) =>
        seconds.Select((second, i) => new CaptureRow(source, i + 1, Some.Morning + Duration.FromSeconds(second)) { Original = source });
}

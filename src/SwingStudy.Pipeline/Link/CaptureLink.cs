namespace SwingStudy.Pipeline.Link;

/// <summary>One capture's place.</summary>
/// <param name="Capture">The capture.</param>
/// <param name="Method">One of <see cref="LinkMethods"/>, or the capture's purpose where that is no swing.</param>
internal sealed record CaptureLink(Capture Capture, string Method)
{
    /// <summary>Its swing; null when none was found.</summary>
    public string? Swing { get; init; }

    /// <summary>The player: the capture's own, or where it names nobody the one whose swing or session it belongs to.</summary>
    public string? Participant { get; init; } = Capture.Participant;

    /// <summary>The session; null when none was found.</summary>
    public string? Session { get; init; }

    /// <summary>Moment of impact of the swing on the session's clock.</summary>
    public long? StruckMillis { get; init; }

    /// <summary>Time left between the devices after the clock model; null where clocks were not compared.</summary>
    public double? ResidualSeconds { get; init; }

    /// <summary>0 to 1; null where nothing was matched.</summary>
    public double? Confidence { get; init; }

    /// <summary>The capture that it would join, where no link was made.</summary>
    public string? Candidate { get; init; }
}

namespace SwingStudy.Statistics.Planning;

/// <summary>How large a study is meant to be.</summary>
public sealed record StudySize
{
    /// <summary>Number of players, at least 1.</summary>
    public required int Players { get; init; }

    /// <summary>Sessions of each phase (pre-post), or of the whole series (the other designs), for one player.</summary>
    public required int Sessions { get; init; }

    /// <summary>Swings of a session.</summary>
    public required int Swings { get; init; }

    /// <summary>Throws when a number is below 1.</summary>
    /// <exception cref="ArgumentException">A number is below 1.</exception>
    public void Validate()
    {
        PowerClosedForm.RequireAtLeast(Players, 1, nameof(Players));
        PowerClosedForm.RequireAtLeast(Sessions, 1, nameof(Sessions));
        PowerClosedForm.RequireAtLeast(Swings, 1, nameof(Swings));
    }
}

namespace SwingStudy.Reporting.Rows;

/// <summary>Words of the <c>verdict</c> column, from the strongest to the weakest.</summary>
public static class Verdict
{
    /// <summary>The change exceeds noise and worth.</summary>
    public const string Supported = "supported";

    /// <summary>Something speaks for a change, not enough.</summary>
    public const string Suggestive = "suggestive";

    /// <summary>A worthwhile change is not seen.</summary>
    public const string NotShown = "not shown";

    /// <summary>The data cannot answer.</summary>
    public const string CannotTell = "cannot tell";

    /// <summary>All, in that order.</summary>
    public static IReadOnlyList<string> All { get; } = [Supported, Suggestive, NotShown, CannotTell];
}

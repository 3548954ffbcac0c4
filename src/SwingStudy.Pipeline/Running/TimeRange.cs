namespace SwingStudy.Pipeline.Running;

/// <summary>A stretch of time, in milliseconds since 1970 UTC.</summary>
/// <param name="FromMillis">First moment.</param>
/// <param name="ToMillis">First moment after it.</param>
internal readonly record struct TimeRange(long FromMillis, long ToMillis)
{
    public bool Contains(long millis) => FromMillis <= millis && millis < ToMillis;

    /// <summary>Whether any moment from <paramref name="first"/> to <paramref name="last"/> lies in it.</summary>
    public bool Touches(long first, long last) => first < ToMillis && last >= FromMillis;
}

namespace SwingStudy.Pipeline.Link.Clocks;

/// <summary>One moment as one clock gives it: it lies somewhere in [<paramref name="Seconds"/>, <paramref name="Seconds"/> + <paramref name="Width"/>].</summary>
/// <param name="Seconds">Start of that span on the clock, in seconds from any origin.</param>
/// <param name="Width">Length of the span in seconds: 1 for times cut to whole seconds, 0 for exact ones.</param>
/// <param name="Who">The player, as a number; <see cref="Anybody"/> where the record names nobody.</param>
internal readonly record struct ClockReading(double Seconds, double Width = 0, int Who = ClockReading.Anybody)
{
    /// <summary>A record that names no player fits every player's.</summary>
    public const int Anybody = -1;

    /// <summary>The best single time.</summary>
    public double Middle => Seconds + (Width / 2);

    /// <summary>Whether both may be of one player.</summary>
    public bool MayBe(ClockReading other) => Who == Anybody || other.Who == Anybody || Who == other.Who;

    /// <summary>Seconds between the two spans, positive when this one comes later; 0 where they touch, so that what a cut time leaves open is no residual.</summary>
    public double After(ClockReading other)
    {
        if (Seconds > other.Seconds + other.Width)
            return Seconds - other.Seconds - other.Width;
        return Seconds + Width < other.Seconds ? Seconds + Width - other.Seconds : 0;
    }

    /// <summary>The reading as moved in time.</summary>
    public ClockReading Moved(double seconds) => this with { Seconds = Seconds + seconds };
}

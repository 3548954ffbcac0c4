using System.Globalization;
using SwingStudy.Pipeline.Link.Clocks;

namespace SwingStudy.Pipeline.Measure.Recordings;

/// <summary>How a device's triggers lie against the contacts that another device saw, over the swings of a session.</summary>
/// <remarks>
/// A single trigger wavers by milliseconds and is late now and then; a line through a session's triggers does neither. It is the line of
/// <see cref="ClockLineFit"/>, whose weights leave out late triggers; before any swing two quartzes are expected to run alike within
/// <see cref="QuartzDrift"/>, so that few swings within a short time make no drift out of their scatter.
/// </remarks>
/// <param name="Line">From the device's clock to that of the contacts, seconds.</param>
/// <param name="OriginMillis">Time from which both count.</param>
/// <param name="MiddleSeconds">Middle of the contacts.</param>
/// <param name="SpreadMillis">Standard deviation of the ordinary triggers about it.</param>
/// <param name="Swings">Swings with an ordinary trigger.</param>
internal sealed record ContactClock(ClockLine Line, double OriginMillis, double MiddleSeconds, double SpreadMillis, int Swings)
{
    private const int LeastSwings = 3;
    private const double MostSpreadMillis = 15;
    private const int Fitted = 2;

    /// <summary>Spreads within which a trigger is an ordinary one.</summary>
    private const double Ordinary = 4.685;

    /// <summary>Standard deviation of the drift of one quartz against another (common practice, no source).</summary>
    private const double QuartzDrift = 50e-6;

    private static readonly ClockLimits Limits = new() { Expected = new ClockDrift(0, QuartzDrift) };

    /// <summary>The clock of a device against contacts; null with too few swings or where triggers scatter by more than hundredths of a second.</summary>
    /// <param name="pairs">For each common swing, contact on the other device's clock and trigger on this device's, in milliseconds.</param>
    public static ContactClock? Of(IReadOnlyList<(double ContactMillis, double TriggerMillis)> pairs)
    {
        if (pairs.Count < LeastSwings)
            return null;
        var origin = pairs.Min(pair => pair.ContactMillis);
        ClockReading[] contacts = [.. pairs.Select(pair => new ClockReading((pair.ContactMillis - origin) / 1000))];
        ClockReading[] triggers = [.. pairs.Select(pair => new ClockReading((pair.TriggerMillis - origin) / 1000))];
        var fit = ClockLineFit.Of(contacts, triggers, [.. pairs.Select((_, i) => new ClockPair(i, i, 0))], Limits);
        if (1000 * fit.SpreadSeconds > MostSpreadMillis)
            return null;
        // Two numbers were fitted; what they leave of so few triggers is too little by that much.
        double[] left = [.. Enumerable.Range(0, pairs.Count).Select(i => fit.Line.Map(triggers[i].Seconds) - contacts[i].Seconds).Where(left => Math.Abs(left) <= Ordinary * fit.SpreadSeconds)];
        var spread = left.Length <= Fitted ? fit.SpreadSeconds : Math.Sqrt(left.Sum(own => own * own) / (left.Length - Fitted));
        return new ContactClock(fit.Line, origin, contacts.Average(contact => contact.Seconds), 1000 * spread, left.Length);
    }

    /// <summary>Standard error of the line in the middle of the swings, milliseconds.</summary>
    public double ErrorMillis => SpreadMillis / Math.Sqrt(Swings);

    /// <summary>Where the middle of the swings lies, milliseconds.</summary>
    public double MiddleMillis => OriginMillis + (1000 * MiddleSeconds);

    /// <summary>A contact on the device's clock, in milliseconds.</summary>
    public double Map(double contactMillis) => OriginMillis + (1000 * Line.Unmap((contactMillis - OriginMillis) / 1000));

    /// <summary>For the method of impact.</summary>
    public string Describe(string source) => string.Create(CultureInfo.InvariantCulture,
        $"contact of {source} on this device's clock, from {Swings} swings, standard error {ErrorMillis:0.0} ms");
}

using SwingStudy.Statistics.Chance;

namespace SwingStudy.Statistics.Planning;

/// <summary>Draws the session means of a player under a noise model. Not for use by two threads at once.</summary>
/// <remarks>Swings enter by their session's mean, whose distribution is exact, so that the number of swings costs no time.</remarks>
internal sealed class SessionMeans(NoiseModel noise, int swings, NormalStream normal)
{
    private readonly double _swingError = Math.Sqrt(noise.SwingVarianceOfMean(swings));
    private readonly double _innovation = noise.Session * Math.Sqrt(1 - (noise.SessionAutocorrelation * noise.SessionAutocorrelation));

    /// <summary>A player's true change.</summary>
    public double Change(double mean) => mean + (noise.ChangeBetweenPlayers * normal.Next());

    /// <summary>Fills the means of one series, without any change.</summary>
    public void Draw(Span<double> means)
    {
        var session = noise.Session * normal.Next();
        for (var i = 0; i < means.Length; i++)
        {
            if (i > 0)
                session = (noise.SessionAutocorrelation * session) + (_innovation * normal.Next());
            means[i] = session + (_swingError * normal.Next());
        }
    }
}

using SwingStudy.Statistics.Description;
using SwingStudy.Statistics.Distributions;

namespace SwingStudy.Statistics.Planning;

/// <summary>How many more swings, or sessions, until a player's change is decided against a limit, if it stays what it is now.</summary>
/// <remarks>
/// A change is decided when its interval no longer holds the limit (the smallest worthwhile change, or zero). The squared standard error is
/// session²(1/m₁ + 1/m₂) + swing²(1/n₁ + 1/n₂): more swings of the same day shrink only the second part, so there can be a distance that no number of
/// swings reaches and only further sessions do. Planning value alone: stopping when the answer pleases biases the estimate, so the rule for stopping
/// belongs into the protocol.
/// </remarks>
public sealed record DecisionForecast
{
    /// <summary>Whether the interval excludes the limit already.</summary>
    public required bool IsDecided { get; init; }

    /// <summary>Half-width of the interval now, in the outcome's unit.</summary>
    public required double HalfWidth { get; init; }

    /// <summary>Half-width that remains however many swings are added to the sessions there are.</summary>
    public required double Floor { get; init; }

    /// <summary>Further swings in the present session until decided; 0 when decided; null when swings alone cannot decide it.</summary>
    public int? MoreSwings { get; init; }

    /// <summary>Further sessions of the usual size until decided; 0 when decided; null when no number up to the limit does.</summary>
    public int? MoreSessions { get; init; }

    /// <summary>Forecast from variance components known beforehand (from the baseline or from all players).</summary>
    /// <param name="change">The change as it stands, in the outcome's unit.</param>
    /// <param name="limit">The value to decide against, in the same unit.</param>
    /// <param name="noise">Session and swing noise of the player; swings of a session count as independent.</param>
    /// <param name="before">Sessions and swings in all of the earlier phase.</param>
    /// <param name="after">Sessions and swings in all of the later phase so far.</param>
    /// <param name="swingsOfSession">Swings of a further session.</param>
    /// <param name="confidence">Level of the interval, a share.</param>
    /// <param name="most">Largest number of further swings or sessions to consider.</param>
    /// <exception cref="ArgumentException">A number is out of range.</exception>
    public static DecisionForecast Of(
        double change, double limit, NoiseModel noise, PhaseCounts before, PhaseCounts after, int swingsOfSession, double confidence = 0.95, int most = 1000)
    {
        Finite.Require([change, limit], nameof(change));
        Finite.RequireConfidence(confidence);
        noise.Validate();
        PowerClosedForm.RequireAtLeast(Math.Min(before.Sessions, after.Sessions), 1, nameof(after));
        PowerClosedForm.RequireAtLeast(Math.Min(before.Swings, after.Swings), 1, nameof(after));
        PowerClosedForm.RequireAtLeast(swingsOfSession, 1, nameof(swingsOfSession));
        var z = Normal.Critical(confidence);
        var distance = Math.Abs(change - limit);
        double session = noise.Session * noise.Session, swing = noise.Swing * noise.Swing;
        var now = Half(after.Sessions, after.Swings);
        return new DecisionForecast
        {
            IsDecided = now < distance,
            HalfWidth = now,
            Floor = z * Math.Sqrt((session * ((1.0 / before.Sessions) + (1.0 / after.Sessions))) + (swing / before.Swings)),
            MoreSwings = First(more => Half(after.Sessions, after.Swings + more)),
            MoreSessions = First(more => Half(after.Sessions + more, after.Swings + (more * swingsOfSession))),
        };

        double Half(double sessions, double swings) =>
            z * Math.Sqrt((session * ((1.0 / before.Sessions) + (1 / sessions))) + (swing * ((1.0 / before.Swings) + (1 / swings))));

        int? First(Func<double, double> half)
        {
            for (var more = 0; more <= most; more++)
            {
                if (half(more) < distance)
                    return more;
            }

            return null;
        }
    }
}

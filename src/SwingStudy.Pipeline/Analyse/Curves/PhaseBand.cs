using SwingStudy.Domain.Tables;
using SwingStudy.Statistics.Chance;
using SwingStudy.Statistics.Curves;

namespace SwingStudy.Pipeline.Analyse.Curves;

/// <summary>The mean curve of one phase with its bands.</summary>
/// <remarks>
/// Swings of a session share its day, so that bands come from session means where there are three or more; else from swings, and then they tell where
/// the mean of these very sessions lies. The band over all points together rests on resampled curves, standardized anew each time: of fewer than ten
/// curves too many resamples repeat the same few, and the band is several times too wide to say anything (of five independent curves its factor is above
/// 30, of ten about 6, of twenty 3.6), so that there is then only the band point by point.
/// </remarks>
internal static class PhaseBand
{
    /// <summary>Fewer session means than these say next to nothing of how sessions scatter.</summary>
    public const int FewestSessions = 3;

    /// <summary>Fewer curves than these have too few different resamples for a band over the whole curve.</summary>
    public const int FewestResampled = 10;

    /// <summary>Adds the row of a phase.</summary>
    public static void Add(RowSetBuilder rows, string participant, string channel, string phase, ChannelCurves curves, CurveSettings settings, Xoshiro256 chance)
    {
        var sessions = curves.Sessions(phase);
        if (curves.Axis is not { } axis || sessions.Count == 0)
        {
            rows.Add(
                ("participant", participant), ("channel", channel), ("phase", phase), ("unit", curves.Unit), ("swings", 0), ("sessions", 0), ("lost", curves.Lost(phase)),
                ("undefined", curves.Axis is null && curves.Lost(phase) > 0 ? "too few curves reach over a common stretch of time" : "no curve of a swing that counts"));
            return;
        }

        var isOverSessions = sessions.Count >= FewestSessions;
        double[][] over = isOverSessions ? [.. sessions.Select(MeanCurves.Of)] : [.. sessions.SelectMany(session => session)];
        var band = CurveBand.Of(over, chance, settings.Confidence, settings.Resamples);
        var together = over.Length < FewestResampled ? null : band.SimultaneousFactor;
        rows.Add(
            ("participant", participant),
            ("channel", channel),
            ("phase", phase),
            ("axis", axis.Name),
            ("first", axis.First),
            ("step", axis.Step),
            ("unit", curves.Unit),
            ("over", isOverSessions ? Exchange.Sessions : Exchange.Swings),
            ("swings", sessions.Sum(session => session.Count)),
            ("sessions", sessions.Count),
            ("lost", curves.Lost(phase)),
            ("level", band.Level),
            ("mean", band.Mean.ToArray()),
            ("swing_sd", MeanCurves.DeviationWithin(sessions)),
            ("pointwise_low", Limit(band, band.PointwiseFactor, -1)),
            ("pointwise_high", Limit(band, band.PointwiseFactor, 1)),
            ("simultaneous_low", Limit(band, together, -1)),
            ("simultaneous_high", Limit(band, together, 1)),
            ("method", CurveBand.Method),
            ("undefined", band.Undefined ?? (together is null ? "needs at least ten curves that vary for a band over all points" : null)));
    }

    private static double[]? Limit(CurveBand band, double? factor, int side) =>
        factor is { } multiple ? [.. band.Mean.Zip(band.HalfWidth(multiple), (mean, half) => mean + (side * half))] : null;
}

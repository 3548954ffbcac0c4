using CsCheck;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Analyse;

/// <summary>Invented players whose sessions and swings scatter as told, and the rows that the stages of the analysis make of them.</summary>
internal static class Players
{
    /// <summary>Club head speeds: session means given, swings ±0.2, ±0.4 around them.</summary>
    public static IEnumerable<PlayedSwing> Of(string participant, double[] before, double[] after, string variable = "club_head_speed") =>
        before.Select(mean => ("baseline", mean)).Concat(after.Select(mean => ("cue", mean)))
            .SelectMany((session, day) => PlayedSwing.Of(
                $"{participant}-{day + 1}", session.Item1, variable, [.. new[] { 0, 0.2, -0.2, 0.4, -0.4 }.Select(noise => session.mean + noise)]));

    /// <summary>Players of different height whose phases do not differ: what pooled noise is made of.</summary>
    public static IEnumerable<PlayedSwing> Others() =>
        new[] { 2, 3, 4, 5 }.SelectMany(i => Of($"P0{i}", [38 + i, 38.3 + i, 37.8 + i], [38.1 + i, 38.2 + i, 37.9 + i]));

    /// <summary>The noise table of all players.</summary>
    public static RowSet Noise(IEnumerable<PlayedSwing> swings)
    {
        var rows = new RowSetBuilder(StudyTables.Noise);
        foreach (var player in swings.GroupBy(swing => swing.Participant))
        {
            var noise = Body.Run("noise", "noise", [PlayedSwing.Swings(player)]);
            for (var i = 0; i < noise.Count; i++)
            {
                rows.Add(("participant", player.Key), ("outcome", noise.Texts("outcome")[i]), ("swings", noise.Integers("swings")[i]), ("sessions", noise.Integers("sessions")[i]),
                    ("phases", noise.Integers("phases")[i]), ("session_ss", noise.Numbers("session_ss")[i]), ("swing_ss", noise.Numbers("swing_ss")[i]),
                    ("square_counts", noise.Numbers("square_counts")[i]));
            }
        }

        return rows.Build();
    }

    /// <summary>Effects of P01.</summary>
    public static RowSet Effects(IEnumerable<PlayedSwing> swings, RowSet? flags = null, IEnumerable<PlayedSwing>? others = null) => Body.Run(
        "effects", "effects", [PlayedSwing.Swings(swings), flags ?? RowSet.Empty(StudyTables.Flags), Noise([.. swings, .. others ?? []])]);

    /// <summary>The row of one outcome, contrast and measure.</summary>
    public static int Row(this RowSet effects, string measure, string outcome = "club_head_speed", string contrast = "with-cue") =>
        Enumerable.Range(0, effects.Count).Single(i =>
            effects.Texts("outcome")[i] == outcome && effects.Texts("contrast")[i] == contrast && effects.Texts("measure")[i] == measure);

    /// <summary>Two lists of session means.</summary>
    public static Gen<(double[] Before, double[] After)> Means { get; } = Gen.Select(Gen.Double[35, 45].Array[2, 4], Gen.Double[35, 45].Array[2, 4]);
}

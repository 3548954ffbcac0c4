using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Tests.Support;
using SwingStudy.Statistics.Chance;

namespace SwingStudy.Pipeline.Tests.Analyse.Curves;

/// <summary>An invented player whose curves scatter smoothly from session to session and from swing to swing.</summary>
internal sealed class CurvePlayer
{
    public const string Channel = "total_force_y";
    public const double Rate = 100;
    private readonly List<PlayedSwing> _swings = [];
    private readonly RowSetBuilder _curves = new(StudyTables.SwingCurves);
    private readonly RowSetBuilder _events = new(StudyTables.SwingEvents);

    public static StudySetup Setup(int resamples = 1000) => Body.Setup with
    {
        Protocol = Some.Protocol with { Curves = [new CurvePlan(Channel, ["with-cue"])], Analysis = new AnalysisPlan { Resamples = resamples, Seed = 11 } },
    };

    /// <summary>A swing of a phase. Times run from −1.2 s to 0.2 s; the start lies at −1 s, the top at −0.3 s unless told otherwise.</summary>
    public CurvePlayer Swing(int session, string phase, int sequence, Func<double, double> force, double top = -0.3, bool hasEvents = true, bool included = true, double from = -1.2)
    {
        var swing = new PlayedSwing($"P01-{session}", phase, sequence) { Included = included };
        _swings.Add(swing);
        var count = (int)Math.Round((0.2 - from) * Rate) + 1;
        _curves.Add(("swing_id", swing.Id), ("participant", "P01"), ("channel", Channel), ("unit", "{BW}"), ("sample_rate_hz", Rate), ("t0_s", from),
            ("values", Enumerable.Range(0, count).Select(i => force(from + (i / Rate))).ToArray()), ("method", "low-pass"));
        if (!hasEvents)
            return this;
        foreach (var (name, time) in new[] { ("start", -1.0), ("top", top), ("impact", 0.0) })
            _events.Add(("swing_id", swing.Id), ("participant", "P01"), ("event", name), ("time_s", time), ("method", "test"), ("confidence", 1.0));
        return this;
    }

    /// <summary>Sessions of two phases with smooth scatter, and a change in the second.</summary>
    public static CurvePlayer Scattered(Xoshiro256 chance, int sessions, int swings, double sessionSd, double swingSd, Func<double, double>? change = null)
    {
        var player = new CurvePlayer();
        for (var session = 1; session <= 2 * sessions; session++)
        {
            var day = Wave(chance, sessionSd);
            for (var swing = 1; swing <= swings; swing++)
            {
                var own = Wave(chance, swingSd);
                var isAfter = session > sessions;
                player.Swing(session, isAfter ? "cue" : "baseline", swing, time => 1 + day(time) + own(time) + (isAfter && change is not null ? change(time) : 0));
            }
        }

        return player;
    }

    public RowSet Means(StudySetup? setup = null) => Run("curve_means", setup, 0);

    public RowSet Tests(StudySetup? setup = null) => Run("curve_tests", setup, 0);

    public RowSet Run(string table, StudySetup? setup, int shuffle)
    {
        RowSet[] inputs = [PlayedSwing.Swings(_swings), _curves.Build(), _events.Build()];
        return Body.Run("curves", table, shuffle == 0 ? inputs : inputs.Select(rows => rows.Shuffled(shuffle)), setup: setup ?? Setup());
    }

    /// <summary>A smooth random curve with that standard deviation at each moment.</summary>
    private static Func<double, double> Wave(Xoshiro256 chance, double sd)
    {
        var parts = Enumerable.Range(1, 4).Select(i => (Frequency: 0.6 * i, Sine: Normal(chance) * sd / 2, Cosine: Normal(chance) * sd / 2)).ToArray();
        return time => parts.Sum(part => (part.Sine * Math.Sin(2 * Math.PI * part.Frequency * time)) + (part.Cosine * Math.Cos(2 * Math.PI * part.Frequency * time)));
    }

    private static double Normal(Xoshiro256 chance) => Math.Sqrt(-2 * Math.Log(1 - chance.NextUnit())) * Math.Cos(2 * Math.PI * chance.NextUnit());
}

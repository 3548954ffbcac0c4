using System.Diagnostics;
using System.Globalization;
using System.Text;
using SwingStudy.Statistics.Group;

namespace SwingStudy.Calibrate;

/// <summary>Times REML of <c>value ~ phase + (1 | subject/session)</c> for each outcome of a long table, balanced and with rows left out.</summary>
/// <remarks>The file has the columns subject, session, phase (pre, post), trial, outcome, value.</remarks>
internal static class MixedModelTiming
{
    public static string Run(string file)
    {
        var watch = Stopwatch.StartNew();
        var outcomes = Read(file);
        var report = new StringBuilder();
        report.AppendLine(CultureInfo.InvariantCulture, $"read {outcomes.Count} outcomes in {watch.Elapsed.TotalSeconds:F3} s");
        foreach (var isBalanced in new[] { true, false })
        {
            watch.Restart();
            var before = Environment.CpuUsage.TotalTime;
            foreach (var (name, rows) in outcomes)
                report.AppendLine(Line(name, Fit(isBalanced ? rows : rows.FindAll(r => r.IsKept))));
            report.AppendLine(CultureInfo.InvariantCulture, $"{(isBalanced ? "balanced" : "unbalanced")}: {watch.Elapsed.TotalSeconds:F4} s, {(Environment.CpuUsage.TotalTime - before).TotalSeconds:F4} s of processor, for {outcomes.Count} fits");
        }

        return report.ToString();
    }

    private static MixedModelFit Fit(List<Row> rows)
    {
        var data = MixedModelData.Of(
            rows.Select(r => r.Value).ToArray(),
            [("intercept", [.. rows.Select(_ => 1.0)]), ("phase", [.. rows.Select(r => r.IsPost ? 1.0 : 0)])],
            rows.Select(r => r.Subject).ToArray(),
            rows.Select(r => r.Session).ToArray());
        return MixedModel.FitReml(data).Fit ?? throw new InvalidOperationException("The model is not defined on these data.");
    }

    private static string Line(string name, MixedModelFit fit) => string.Create(
        CultureInfo.InvariantCulture,
        $"{name} phase={fit.Coefficients[1]:F6} sd_subj={Math.Sqrt(fit.SubjectVariance):F6} sd_sess={Math.Sqrt(fit.SessionVariance ?? 0):F6} sd_res={Math.Sqrt(fit.ResidualVariance):F6} reml={fit.LogLikelihood:F6}");

    private static SortedDictionary<string, List<Row>> Read(string file)
    {
        var outcomes = new SortedDictionary<string, List<Row>>(StringComparer.Ordinal);
        var subjects = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var line in File.ReadLines(file).Skip(1))
        {
            var cells = line.Split(',');
            if (!subjects.TryGetValue(cells[0], out var subject))
                subjects[cells[0]] = subject = subjects.Count;
            if (!outcomes.TryGetValue(cells[4], out var rows))
                outcomes[cells[4]] = rows = [];
            rows.Add(new Row(
                subject,
                int.Parse(cells[1], CultureInfo.InvariantCulture),
                int.Parse(cells[3], CultureInfo.InvariantCulture),
                cells[2] == "post",
                double.Parse(cells[5], CultureInfo.InvariantCulture)));
        }

        return outcomes;
    }

    private readonly record struct Row(int Subject, int Session, int Trial, bool IsPost, double Value)
    {
        /// <summary>Whether the row stays in the unbalanced table: sessions lose from none to a quarter of their trials. As in mixed-model.R.</summary>
        public bool IsKept => ((7 * Trial) + (3 * Session) + (5 * Subject)) % 11 >= Session % 4;
    }
}

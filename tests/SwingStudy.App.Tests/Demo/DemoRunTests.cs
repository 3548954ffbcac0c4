using NodaTime;
using SwingStudy.App.Demo;
using SwingStudy.App.Studies;
using SwingStudy.Domain.Studies;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Pipeline;
using SwingStudy.Pipeline.Running;
using SwingStudy.Reporting.Documents;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.App.Tests.Demo;

/// <summary>The demo's files on their whole way, from inbox to report.</summary>
public sealed class DemoRunTests : IDisposable
{
    private readonly StudyFolder _folder = new(Directory.CreateTempSubdirectory("demo-run").FullName);
    private readonly PlantedTruth _truth;

    public DemoRunTests()
    {
        _truth = DemoStudy.Write(_folder);
        var dictionary = Directory.CreateDirectory(Path.Combine(_folder.Root, "data-dictionary")).FullName;
        foreach (var file in Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "share", "data-dictionary")))
            File.Copy(file, Path.Combine(dictionary, Path.GetFileName(file)));
    }

    public void Dispose() => Directory.Delete(_folder.Root, true);

    [Fact]
    public void EveryFileIsTakenAndThePlantedEffectsAreFound()
    {
        var opened = OpenedStudy.ToWrite(_folder, TimeProvider.System);
        Assert.True(opened.Succeeded(out var study), string.Join('\n', opened.Problems));
        using var open = study;
        Assert.Empty(DemoPeople.Enrol(study, "test", TimeProvider.System, _truth));

        var taken = new StudyIntake(new()
        {
            Folder = _folder, Zone = study.Setup.Declaration.Zone, Dictionary = study.Setup.Dictionary, Mappings = study.Setup.Mappings,
            Eligibility = study.Setup.Protocol.Eligibility,
            Registry = study.Registry, Identities = study.Identities, Tables = study.Tables, Settling = TimeSpan.Zero,
        }).Run();
        Assert.True(taken.Succeeded(out var intake), string.Join('\n', taken.Problems));
        Assert.Empty(intake.Files.SelectMany(file => file.Problems));
        Assert.Equal(_truth.Counts.Copies, intake.Files.Count(file => file.Outcome == FileOutcome.Duplicate));
        Assert.Equal(_truth.Counts.Files - _truth.Counts.Copies, intake.Files.Count(file => file.Outcome == FileOutcome.Taken));
        Assert.Equal(_truth.Counts.MendedMisreads, intake.Files.SelectMany(file => file.Revisions).Count());
        Assert.Equal(intake.LinesRead, intake.RowsTaken + intake.RowsRejected + intake.LinesNotData);
        Assert.Equal(_truth.Counts.Sessions, study.Registry.Sessions().Count);

        var ran = new PipelineRunner(Stages.All).BringUpToDate(study.Setup, study.Registry, new() { Actor = "test" });
        Assert.True(ran.Succeeded(out _), string.Join('\n', ran.Problems));
        var report = new StudyReport
        {
            Name = study.Setup.Declaration.Name,
            Zone = DateTimeZoneProviders.Tzdb[study.Setup.Declaration.Zone],
            Protocol = study.Setup.Protocol,
            Dictionary = study.Setup.Dictionary,
            Tables = ReportTables.Read(study.Tables, study.Setup.Dictionary, study.Setup.Protocol),
            Intake = study.Registry.IntakeCounts(),
            Versions = [.. study.Tables.Names().Select(name => (name, study.Tables.Existing(name)!.CurrentVersion))],
        };

        // Swings of the bay, and those of the gate that the bay missed.
        Assert.InRange(
            report.Tables.AllSwings,
            _truth.Counts.Swings + _truth.Counts.PracticeSwings - _truth.Counts.MissedByBay,
            _truth.Counts.Swings + _truth.Counts.PracticeSwings + _truth.Counts.FalsePasses);
        // Intervals of 95 % miss a planted effect now and then; with this seed none of the eight does.
        Assert.All(_truth.Players, player =>
        {
            var effect = Assert.Single(report.Tables.Effects, row =>
                row.Participant == player.Code && row.Outcome == _truth.Outcome && row.Contrast == "with-cue" && row.Measure == "difference");
            Assert.InRange(player.Effect, effect.Low, effect.High);
        });
        Assert.All(_truth.Players.Where(player => player.Effect == 0), player => Assert.DoesNotContain(
            report.Tables.Findings, finding => finding.Participant == player.Code && finding.Outcome == _truth.Outcome && finding.Verdict == Verdict.Supported));
        var html = ReportWriter.Study(report);
        Assert.Contains("The lines balance", html, StringComparison.Ordinal);
        Assert.DoesNotMatch(string.Join('|', _truth.Players.Select(player => player.Aliases[0])), System.Text.RegularExpressions.Regex.Replace(html, "base64,[^\"]+", ""));
    }
}

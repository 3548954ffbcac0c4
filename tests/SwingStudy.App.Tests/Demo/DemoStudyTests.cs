using System.Text.Json;
using SwingStudy.App.Demo;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Studies;
using SwingStudy.Pipeline.Draws;

namespace SwingStudy.App.Tests.Demo;

public sealed class DemoStudyTests : IDisposable
{
    private readonly StudyFolder _folder = new(Directory.CreateTempSubdirectory("demo-study").FullName);
    private readonly PlantedTruth _truth;

    public DemoStudyTests()
    {
        _truth = DemoStudy.Write(_folder);
        var dictionary = Directory.CreateDirectory(Path.Combine(_folder.Root, "data-dictionary")).FullName;
        foreach (var file in Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "share", "data-dictionary")))
            File.Copy(file, Path.Combine(dictionary, Path.GetFileName(file)));
    }

    public void Dispose() => Directory.Delete(_folder.Root, true);

    [Fact]
    public void AllDeclarationsAreReadWithoutAProblem()
    {
        var read = StudySetup.Read(_folder);

        Assert.True(read.Succeeded(out var setup), string.Join('\n', read.Problems));
        Assert.Equal([CoachLog.Source, BayExport.Source, MarkerExport.Source, PlateExport.Source, HeadbandExport.Source, GateExport.Source], setup.Mappings.Select(mapping => mapping.Source).OrderByDescending(source => source == CoachLog.Source).ThenBy(source => source, StringComparer.Ordinal));
        Assert.Equal(setup.Declaration.PreferredSources, [BayExport.Source, GateExport.Source]);
        Assert.Equal(DemoStudy.RandomizationSeed, setup.Protocol.Randomization!.Seed);
        Assert.Equal([DemoStudy.Baseline, DemoStudy.Cue, DemoStudy.FollowUp], setup.Protocol.Phases.Select(phase => phase.Name));
        Assert.Equal(6561, RandomizationSize.Of(setup.Protocol));
    }

    [Fact]
    public void ThePlantedStartsAreThoseThatTheProtocolDraws()
    {
        Assert.True(StudySetup.Read(_folder).Succeeded(out var setup));
        var players = DemoStudy.PlayersWithStarts;

        var draw = RandomDraw.Make(setup.Protocol, DrawPlan.Of(setup.Protocol)!, players.Select(player => player.Code), new DrawRecord(1, 1, default, "test"));
        Assert.Equal(players.Select(player => player.BaselineSessions), draw.Players.Select(player => player.Start));
    }

    [Fact]
    public void EveryFileOfTheInboxFitsThePatternOfItsSource()
    {
        Assert.True(StudySetup.Read(_folder).Succeeded(out var setup));
        var files = Directory.GetFiles(_folder.Inbox, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(_folder.Inbox, file)).ToList();

        Assert.Equal(_truth.Counts.Files, files.Count);
        Assert.All(files, file =>
        {
            var mapping = Assert.Single(setup.Mappings, mapping => file.StartsWith(mapping.Source + "/", StringComparison.Ordinal));
            Assert.Matches($"^(?:{mapping.Files})$", file[(mapping.Source.Length + 1)..]);
        });
    }

    [Fact]
    public void TheTruthStandsBesideTheStudyAndSaysThatItIsInvented()
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(_folder.Root, "truth.json")));

        Assert.Contains("invented", json.RootElement.GetProperty("note").GetString(), StringComparison.Ordinal);
        Assert.Equal(8, json.RootElement.GetProperty("players").GetArrayLength());
        Assert.Equal(_truth.Counts.Swings, json.RootElement.GetProperty("counts").GetProperty("swings").GetInt32());
    }
}

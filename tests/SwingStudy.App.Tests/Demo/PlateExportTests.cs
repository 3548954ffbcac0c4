using System.Globalization;
using System.Text;
using SwingStudy.App.Demo;

namespace SwingStudy.App.Tests.Demo;

public class PlateExportTests
{
    private static readonly IReadOnlyList<DemoStay> Stays = DemoSimulation.Draw(DemoStudy.PlayersWithStarts, DemoStudy.DefaultSeed);
    private static readonly IReadOnlyList<DemoFile> Files = PlateExport.Files(Stays, DemoStudy.DefaultSeed, out Counts);
    private static readonly (int Swings, int False) Counts;

    [Fact]
    public void EveryStayOnThePlatesHasItsRecordingsAndItsEmptyPlates()
    {
        var stays = Stays.Count(stay => stay.Sessions.Any(session => session.Player.Devices.HasFlag(MovementDevices.Plates)));

        Assert.Equal(stays, Files.Count(file => file.Path.StartsWith("floor-plates/floor ", StringComparison.Ordinal)));
        Assert.Equal(stays, Files.Count(file => file.Path.StartsWith("floor-plates/empty ", StringComparison.Ordinal)));
        Assert.InRange(Counts.False, 5, 40);
    }

    [Fact]
    public void WhoAndWhenStandOnTheFirstLineOfARecordingOnly()
    {
        var rows = Rows("floor-plates/floor 2026-03-02_0900.tsv");
        var firsts = rows.Where(row => row[1].Length > 0).ToList();

        Assert.Equal(rows.Select(row => row[0]).Distinct().Count(), firsts.Count);
        Assert.All(firsts, row => Assert.Matches(@"^02\.03\.2026 \d\d:\d\d:\d\d\.\d{3}$", row[2]));
        Assert.All(firsts, row => Assert.Equal("0", row[4]));
        Assert.Equal("", firsts[0][3]);
        Assert.All(firsts.Skip(1), row => Assert.Matches(@"^\d+,\d$", row[3]));
    }

    [Fact]
    public void QuietStandingLessTheEmptyPlatesIsBodyWeightUpward()
    {
        var empty = Rows("floor-plates/empty 2026-03-02_0900.tsv");
        var quiet = Rows("floor-plates/floor 2026-03-02_0900.tsv").Where(row => row[0] == "1").ToList();
        double Vertical(IEnumerable<string[]> rows) => rows.Average(row => Number(row[7]) + Number(row[13]));

        Assert.Equal(Stays[0].Sessions[0].Player.Body.Weight, Vertical(quiet) - Vertical(empty), 3.0);
        Assert.True(Math.Abs(Vertical(empty)) > 0.5);
    }

    [Fact]
    public void PlayersWhoTakeTurnsAreNamedAtStandingOnly()
    {
        var turns = Files.Where(file => file.Path.Contains("/floor ", StringComparison.Ordinal)).Select(file => Rows(file.Path).Where(row => row[1].Length > 0).Select(row => row[1]).ToList())
            .Where(names => names.Contains("-")).ToList();

        Assert.NotEmpty(turns);
        Assert.All(turns, names => Assert.Equal(2, names.Count(name => name != "-")));
    }

    private static List<string[]> Rows(string path) =>
        [.. Encoding.UTF8.GetString(Files.Single(file => file.Path == path).Bytes).Split("\r\n").Skip(5).Where(line => line.Length > 0).Select(line => line.Split('\t'))];

    private static double Number(string text) => double.Parse(text.Replace(',', '.'), CultureInfo.InvariantCulture);
}

using SwingStudy.Storage.Tables;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Tables;

public sealed class ConflictTests : IDisposable
{
    private readonly TemporaryStudy _study = new();

    public void Dispose() => _study.Dispose();

    [Fact]
    public async Task TwoWritersAtOnceBothGetTheirFilesIn()
    {
        await Task.WhenAll(new[] { "P01", "P02" }.Select(participant => Task.Run(() =>
        {
            var table = _study.Tables.Table(Some.Swings);
            for (var i = 0; i < 15; i++)
                table.Add(table.File(participant, $"{participant}-{i}", Some.Rows(participant, i + 1)));
        }, TestContext.Current.CancellationToken)));
        var both = _study.Tables.Table(Some.Swings);
        Assert.Equal(29, both.CurrentVersion);
        Assert.Equal(30, both.Files().Count);
        Assert.Equal(Enumerable.Range(0, 30).Select(version => (long)version), both.History().Select(version => version.Version));
    }

    [Fact]
    public void AChangeFromAnOutdatedVersionOfTheSameUnitIsRefused()
    {
        var table = _study.Tables.Table(Some.Swings);
        table.Add(table.File("P01", "u", Some.Rows("P01", 1)));
        Some.Value(table.Commit(Replace(table.File("P01", "u", Some.Rows("P01", 2)), basedOn: 0)));
        var late = Replace(table.File("P01", "u", Some.Rows("P01", 3)), basedOn: 0);
        Assert.Equal("table-conflict", Some.Problem(table.Commit(late)).Code);
        Assert.Equal(2, table.Read().Single().Count);
        Assert.Equal(2, Some.Value(table.Commit(late with { BasedOn = 1 })));
    }

    [Fact]
    public void AChangeOfAnotherUnitIsNoConflict()
    {
        var table = _study.Tables.Table(Some.Swings);
        table.Add(table.File("P01", "u", Some.Rows("P01", 1)));
        table.Add(table.File("P01", "v", Some.Rows("P01", 2)));
        Assert.Equal(2, Some.Value(table.Commit(Replace(table.File("P01", "u", Some.Rows("P01", 3)), basedOn: 0))));
        Assert.Equal(5, table.Read().Sum(rows => rows.Count));
    }

    private static TableChange Replace(DataFile file, long basedOn) => new() { Adds = [file], ReplacedUnits = ["u"], Info = Some.Info, BasedOn = basedOn };
}

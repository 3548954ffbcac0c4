using SwingStudy.Pipeline.Calculate;

namespace SwingStudy.Pipeline.Tests.Calculate;

public sealed class TidyFileTests : IDisposable
{
    private readonly string _file = Path.ChangeExtension(Path.GetTempFileName(), ".csv");

    [Fact]
    public void KeptConditionsAreSortedAsAskedAndRowsWithMissingCellsAreLeftOut()
    {
        File.WriteAllText(_file, "who,phase,v\na,cue,3\na,base,1\nb,other,9\nb,base,\nb,base,NA\nb,cue,4\n");
        Assert.True(TidyFile.Read(_file, new TidyColumns("v", "phase", "who", null, null, null, ["base", "cue"])).Succeeded(out var input));
        Assert.Equal([1, 3, 4], input.Values);
        Assert.Equal(["base", "cue", "cue"], input.Conditions!);
        Assert.Equal(["a", "a", "b"], input.Subjects!);
    }

    [Fact]
    public void ACellThatIsNoNumberIsNamedWithItsRowAndText()
    {
        File.WriteAllText(_file, "v\n1\n2,5\n\"3,5\"\n");
        var problems = TidyFile.Read(_file, new TidyColumns("v", null, null, null, null, null, [])).Problems;
        Assert.NotEmpty(problems);
        Assert.All(problems, problem => Assert.NotEmpty(problem.Mend));
    }

    [Fact]
    public void AColumnThatTheFileLacksIsNamedBesideThoseItHas()
    {
        File.WriteAllText(_file, "player,speed\na,40\n");
        var problem = Assert.Single(TidyFile.Read(_file, new TidyColumns("value", null, "player", null, null, null, [])).Problems);
        Assert.Equal("column-not-in-file", problem.Code);
        Assert.Contains("'value'", problem.Found, StringComparison.Ordinal);
        Assert.Contains("player, speed", problem.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileThatIsNotThereIsAProblem() =>
        Assert.Equal("file-not-found", Assert.Single(TidyFile.Read(_file + ".none", new TidyColumns("v", null, null, null, null, null, [])).Problems).Code);

    public void Dispose() => File.Delete(_file);
}

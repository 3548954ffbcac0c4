using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests;

public sealed class CalcTests : IDisposable
{
    private readonly string _file = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.csv");

    public CalcTests() => File.WriteAllText(_file, "who,phase,v\na,base,1.0\na,cue,2.5\nb,base,1.5\nb,cue,3\nc,base,2\nc,cue,2.2\nc,other,\n");

    [Fact]
    public void AStatisticOfATidyFileIsOneJsonDocument()
    {
        var result = Swingstudy.Run("calc", "mean", _file, "--value", "v", "--json").Expect(0).Json;
        Assert.Equal("mean", result.GetProperty("method").GetString());
        Assert.Equal(6, result.GetProperty("rows").GetInt32());
        Assert.Equal((1.0 + 2.5 + 1.5 + 3 + 2 + 2.2) / 6, result.GetProperty("estimate").GetDouble(), 12);
    }

    [Fact]
    public void EveryStatisticIsListedAndExplainsItself()
    {
        var list = Swingstudy.Run("calc", "--json").Expect(0).Json.GetProperty("statistics");
        Assert.All(list.EnumerateArray(), statistic =>
        {
            Assert.NotEmpty(statistic.GetProperty("what").GetString()!);
            Assert.NotEmpty(statistic.GetProperty("sources").EnumerateArray());
        });
    }

    [Fact]
    public void AStatisticOfSeveralNumbersGivesThemAllAsRows()
    {
        var result = Swingstudy.Run("calc", "bland-altman", _file, "--value", "v", "--condition", "phase", "--subject", "who", "--keep", "base", "cue", "--json").Expect(0).Json;
        var rows = result.GetProperty("results").EnumerateArray().ToDictionary(row => row.GetProperty("quantity").GetString()!, row => row.GetProperty("estimate"));
        Assert.Equal((1.0 + 1.5 + 2 - 2.5 - 3 - 2.2) / 3, rows["bias"].GetDouble(), 12);
        Assert.Equal(rows["bias"].GetDouble(), result.GetProperty("estimate").GetDouble());
        Assert.True(rows["lower-limit"].GetDouble() < rows["upper-limit"].GetDouble());
    }

    [Fact]
    public void AStatisticOfSettingsAloneNeedsNoFile()
    {
        // k r/(1 + (k − 1) r) with r = 0.7 and k = 3: 2.1/2.4.
        var result = Swingstudy.Run("calc", "spearman-brown", "--set", "reliability=0.7", "--set", "trials=3", "--json").Expect(0).Json;
        Assert.Equal(0.875, result.GetProperty("estimate").GetDouble(), 12);
    }

    [Fact]
    public void ASettingOfAnotherNameIsRefusedWithThoseThereAre()
    {
        var finished = Swingstudy.Run("calc", "spearman-brown", "--set", "trails=3").Expect(2);
        Assert.Contains("trails", finished.Output + finished.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AColumnThatIsNotThereIsNamedWithTheMend()
    {
        var finished = Swingstudy.Run("calc", "mean", _file, "--value", "speed").Expect(3);
        Assert.Contains("speed", finished.Output, StringComparison.Ordinal);
        Assert.Contains("--value", finished.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AnUnknownVerbIsWrongUsage() => Assert.Contains("--help", Swingstudy.Run("conquer").Expect(2).Error, StringComparison.Ordinal);

    public void Dispose() => File.Delete(_file);
}

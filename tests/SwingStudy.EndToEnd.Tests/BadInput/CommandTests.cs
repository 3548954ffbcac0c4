using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.BadInput;

/// <summary>Commands that cannot be carried out say why and change nothing.</summary>
public sealed class CommandTests
{
    [Theory]
    [InlineData("DELETE FROM captures")]
    [InlineData("CREATE TABLE mine AS SELECT 1")]
    [InlineData("SELECT 1; DROP VIEW captures")]
    [InlineData("COPY captures TO 'stolen.csv'")]
    [InlineData("SELECT * FROM read_text('study.yaml')")]
    [InlineData("SELEC 1")]
    public void AQueryThatIsNoReadingOfTablesIsRefused(string sql)
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", SensorMapping.File());
        study.Ingest();
        var before = study.Tables();
        var files = Directory.GetFiles(study.Root).Order().ToList();
        Assert.All(study.Run("query", sql, "--json").Expect(3).Json.GetProperty("problems").EnumerateArray(), problem => Assert.NotEmpty(problem.GetProperty("mend").GetString()!));
        Assert.Equal(before, study.Tables());
        Assert.Equal(files, Directory.GetFiles(study.Root).Order());
    }

    [Fact]
    public void ADecisionOnASwingThatIsNoneIsRefusedAndNotRecorded()
    {
        using var study = new TestStudy();
        var before = study.Run("audit", "log", "--json").Expect(0).Output;
        Assert.Contains("swing_id", study.Run("decide", "exclude", "P01-20260504-1-01", "--reason", "Slipped.").Expect(3).Output, StringComparison.Ordinal);
        Assert.Equal(before, study.Run("audit", "log", "--json").Expect(0).Output);
    }

    [Theory]
    [InlineData("ingest")]
    [InlineData("run")]
    [InlineData("status")]
    [InlineData("people", "list")]
    [InlineData("audit", "verify")]
    public void AFolderThatIsNoStudyIsNamedAndStaysEmpty(params string[] verb)
    {
        var folder = Directory.CreateTempSubdirectory("swingstudy-none-").FullName;
        try
        {
            var finished = Swingstudy.Run([.. verb, "--study", folder]).WithoutStackTrace().Expect(3);
            Assert.Contains(folder, finished.Output, StringComparison.Ordinal);
            Assert.Contains("to mend", finished.Output, StringComparison.Ordinal);
            Assert.Empty(Directory.EnumerateFileSystemEntries(folder));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void ASecondWriterIsToldWhoWrites()
    {
        using var study = new TestStudy(SensorMapping.With());
        using var watching = Swingstudy.Start(study.Root, "ingest", "--watch");
        try
        {
            while (!File.Exists(study.PathOf(".writer.holder")))
            {
                Assert.False(watching.HasExited);
                Thread.Sleep(20);
            }

            var refused = study.Run("people", "add", "P03").Expect(4);
            Assert.Contains($"process {watching.Id}", refused.Output, StringComparison.Ordinal);
            study.Run("status").WithoutStackTrace();
        }
        finally
        {
            watching.Kill();
            watching.WaitForExit();
        }

        study.Run("people", "add", "P03").Expect(0);
    }
}

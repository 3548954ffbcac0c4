using System.Diagnostics;
using System.Globalization;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.BadInput;

/// <summary>Files that cannot be taken are named with the mend, nothing of them is lost, and the files after them are taken.</summary>
public sealed class UnusableFileTests
{
    private const string After = "bay/z.csv";

    [Fact]
    public void AnEmptyFileStaysInTheInbox()
    {
        using var study = StudyWithAFileAfter();
        var path = study.Drop("bay/a.csv", "");
        study.Drop("bay/b.xlsx", []);
        var intake = study.Ingest(1);
        Assert.All((string[])["bay/a.csv", "bay/b.xlsx"], name =>
        {
            intake.Became(name, "not-read");
            intake.Problem(name, "file-empty");
        });
        intake.Counted(After, taken: 3);
        Assert.True(File.Exists(path));
    }

    [Fact]
    public void HeadingsWithoutRowsAreTakenAsNoSwings()
    {
        using var study = StudyWithAFileAfter();
        study.Drop("bay/a.csv", "Player,Time,No,Speed\n");
        study.Ingest(0).Counted(After, taken: 3);
    }

    [Fact]
    public void AFolderNamedLikeAnExportIsNoExport()
    {
        using var study = StudyWithAFileAfter();
        var folder = Directory.CreateDirectory(study.PathOf("inbox/bay/a.csv")).FullName;
        study.Ingest(1, folder, study.PathOf("inbox/" + After)).Counted(After, taken: 3);
        study.Ingest(1, folder).Problem("bay/a.csv", "file-is-folder");
        study.Ingest();
        Assert.True(Directory.Exists(folder));
    }

    [Fact]
    public void BytesThatAreNoWorkbookAreHeld()
    {
        using var study = StudyWithAFileAfter();
        study.Drop("sheet/a.xlsx", "no workbook");
        var whole = Workbook.Of([Workbook.Text("Player")]);
        study.Drop("sheet/b.xlsx", whole[..(whole.Length / 2)]);
        var intake = study.Ingest(1);
        intake.Became("sheet/a.xlsx", "held");
        intake.Became("sheet/b.xlsx", "held");
        intake.Counted(After, taken: 3);
        Assert.True(study.Keeps(whole[..(whole.Length / 2)]));
    }

    [Fact]
    public void AWorkbookThatUnpacksToFarMoreThanItsSizeIsHeld()
    {
        using var study = StudyWithAFileAfter();
        var row = $"<row>{string.Concat(Enumerable.Repeat(Workbook.Text(new string('a', 1 << 20)), 2))}</row>";
        var bomb = Workbook.Of(Enumerable.Repeat(row, 30));
        Assert.True(bomb.Length < 1_000_000, $"{bomb.Length} bytes are no bomb.");
        study.Drop("sheet/a.xlsx", bomb);
        var intake = study.Ingest(1);
        intake.Problem("sheet/a.xlsx", "workbook-too-large");
        intake.Counted(After, taken: 3);
        Assert.True(study.Keeps(bomb));
    }

    [Fact]
    public void AnEndlessLineIsRejectedInBoundedMemory()
    {
        const int Megabytes = 200;
        using var study = StudyWithAFileAfter();
        var path = study.Drop("bay/a.csv", SensorMapping.File() + "Ada Invented,2026-05-04 11:00:00,9,");
        using (var file = new FileStream(path, FileMode.Append))
        {
            var megabyte = Enumerable.Repeat((byte)'4', 1 << 20).ToArray();
            for (var i = 0; i < Megabytes; i++)
                file.Write(megabyte);
        }

        File.SetLastWriteTimeUtc(path, DateTime.UtcNow.AddHours(-1));
        using var process = Swingstudy.Start(study.Root, "ingest", "--json");
        var peak = PeakKilobytes(process.Id, () => process.HasExited);
        var intake = Intake.Of(Swingstudy.Await(process).WithoutStackTrace().Expect(0));
        intake.Counted("bay/a.csv", taken: 3, rejected: 1);
        intake.Became(After, "taken");
        Assert.True(peak < Megabytes * 1024 * 3 / 2, $"The run took {peak} kB.");
    }

    [Fact]
    public void AFileThatIsStillWrittenWaitsInTheInbox()
    {
        using var study = StudyWithAFileAfter();
        var path = study.Drop("bay/a.csv", SensorMapping.File(1));
        using var stop = new CancellationTokenSource();
        var writer = new Thread(() =>
        {
            for (var i = 1; !stop.IsCancellationRequested; i++)
            {
                File.AppendAllText(path, SensorMapping.Rows(1, from: i));
                stop.Token.WaitHandle.WaitOne(50);
            }
        });
        writer.Start();
        var intake = study.Ingest(1);
        stop.Cancel();
        writer.Join();
        intake.Became("bay/a.csv", "not-read");
        intake.Problem("bay/a.csv", "file-changing");
        intake.Counted(After, taken: 3);
        File.SetLastWriteTimeUtc(path, DateTime.UtcNow.AddHours(-1));
        var lines = File.ReadAllLines(path).Length;
        study.Ingest(0).Counted("bay/a.csv", taken: lines - 1 - 3, notData: 1 + 3);
    }

    [Fact]
    public void AFileWithoutTheRightToReadStaysInTheInbox()
    {
        using var study = StudyWithAFileAfter();
        var path = study.Drop("bay/a.csv", SensorMapping.File(day: "2026-05-05"));
        SetMode(path, "000");
        Assert.NotEqual(0, WithoutPrivilege.RunIn(study.Root, "cat", path).ExitCode);
        var intake = Intake.Of(WithoutPrivilege.RunIn(study.Root, Swingstudy.Executable, "ingest", "--json").Expect(1));
        intake.Became("bay/a.csv", "not-read");
        intake.Problem("bay/a.csv", "file-not-readable");
        intake.Counted(After, taken: 3);
        Assert.True(File.Exists(path));
    }

    [Fact]
    public void AnInboxFolderWithoutTheRightToReadIsNamed()
    {
        using var study = StudyWithAFileAfter();
        var folder = Path.GetDirectoryName(study.Drop("closed/a.csv", SensorMapping.File()))!;
        SetMode(folder, "000");
        Assert.NotEqual(0, WithoutPrivilege.RunIn(study.Root, "ls", folder).ExitCode);
        var intake = Intake.Of(WithoutPrivilege.RunIn(study.Root, Swingstudy.Executable, "ingest", "--json").Expect(1));
        SetMode(folder, "700");
        intake.Became("closed", "not-read");
        intake.Problem("closed", "folder-not-readable");
        intake.Counted(After, taken: 3);
    }

    private static void SetMode(string path, string mode) => Process.Start("chmod", [mode, path]).WaitForExit();

    private static TestStudy StudyWithAFileAfter()
    {
        var study = new TestStudy(SensorMapping.With(), SensorMapping.With(reader: "workbook", source: "sheet"));
        study.Drop(After, SensorMapping.File());
        return study;
    }

    /// <summary>Highest resident memory of a process until it ends.</summary>
    private static long PeakKilobytes(int process, Func<bool> hasEnded)
    {
        var peak = 0L;
        while (!hasEnded())
        {
            try
            {
                var line = File.ReadLines($"/proc/{process}/status").FirstOrDefault(line => line.StartsWith("VmHWM:", StringComparison.Ordinal));
                if (line is not null)
                    peak = long.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2].Replace("VmHWM:\t", "", StringComparison.Ordinal), CultureInfo.InvariantCulture);
            }
            catch (IOException)
            {
                // It ended between the question and the reading; the last figure stands.
            }

            Thread.Sleep(20);
        }

        Assert.NotEqual(0, peak);
        return peak;
    }
}

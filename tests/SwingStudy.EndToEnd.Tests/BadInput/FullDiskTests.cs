using System.Diagnostics;
using SwingStudy.EndToEnd.Tests.Running;

namespace SwingStudy.EndToEnd.Tests.BadInput;

/// <summary>A study on a disk without room: told with the mend, harmed in nothing, finished once there is room again.</summary>
public sealed class FullDiskTests
{
    /// <summary>Runs on a disk of its own, which the namespace takes with it: fills it up to some kilobytes, ingests, frees it, ingests, verifies, counts.</summary>
    private const string Script = """
        set -e
        mount -t tmpfs -o size=3m tmpfs "$3"
        cp -a "$2" "$3/study"
        dd if=/dev/zero of="$3/ballast" bs=1024 count=$(( $(df --output=avail "$3" | tail -1) - $4 )) 2>/dev/null
        cd "$3/study"
        set +e
        "$1" ingest > "$5/full" 2>&1; echo $? > "$5/full.code"
        rm "$3/ballast"
        "$1" ingest > "$5/again" 2>&1; echo $? > "$5/again.code"
        "$1" audit verify > "$5/verify" 2>&1; echo $? > "$5/verify.code"
        "$1" query "SELECT count(*), sum(club_head_speed) FROM captures" > "$5/rows" 2>&1; echo $? > "$5/rows.code"
        """;

    [Theory]
    [InlineData(0)]
    [InlineData(16)]
    [InlineData(48)]
    [InlineData(96)]
    [InlineData(160)]
    public void AFullDiskIsToldWithItsMendAndTheNextRunFinishes(int kilobytesLeft)
    {
        using var study = new TestStudy(SensorMapping.With());
        study.Drop("bay/a.csv", SensorMapping.File(40));
        var disk = Directory.CreateDirectory(study.PathOf("../disk")).FullName;
        var told = Directory.CreateDirectory(study.PathOf("../told")).FullName;
        var start = new ProcessStartInfo("unshare") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var word in (string[])["-rm", "sh", "-c", Script, "sh", Swingstudy.Executable, study.Root, disk, $"{kilobytesLeft}", told])
            start.ArgumentList.Add(word);
        using var process = Process.Start(start)!;
        Swingstudy.Await(process).Expect(0);

        var full = Told(told, "full");
        if (full.ExitCode != 0)
        {
            full.Expect(5);
            Assert.Contains("No space is left", full.Output, StringComparison.Ordinal);
            Assert.Contains("free space", full.Output, StringComparison.Ordinal);
        }

        Assert.True(full.ExitCode == 5 || kilobytesLeft >= 96, $"The disk was not full: {full.Output}");
        Told(told, "again").Expect(0);
        Told(told, "verify").Expect(0);
        Assert.Contains("40", Told(told, "rows").Expect(0).Output, StringComparison.Ordinal);
    }

    private static Finished Told(string folder, string step) => new Finished(
        int.Parse(File.ReadAllText(Path.Combine(folder, step + ".code")), System.Globalization.CultureInfo.InvariantCulture),
        File.ReadAllText(Path.Combine(folder, step)), "").WithoutStackTrace();
}

using System.Diagnostics;

namespace SwingStudy.EndToEnd.Tests.Running;

/// <summary>Runs the executable without the right of root to read everything, so that file modes hold whoever runs the tests.</summary>
internal static class WithoutPrivilege
{
    private const string Rights = "-dac_override,-dac_read_search";

    /// <summary>Runs one command line in <paramref name="folder"/>.</summary>
    public static Finished RunIn(string folder, params string[] commandLine)
    {
        string[] words = Environment.UserName == "root" ? ["setpriv", $"--inh-caps={Rights}", $"--bounding-set={Rights}", .. commandLine] : commandLine;
        var start = new ProcessStartInfo(words[0]) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var word in words.Skip(1))
            start.ArgumentList.Add(word);
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{words[0]} did not start.");
        return Swingstudy.Await(process).WithoutStackTrace();
    }
}
